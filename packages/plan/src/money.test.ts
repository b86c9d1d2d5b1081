import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addMinor, lineWorth, type Weight, weightTimesPrice } from './money.ts';

const lb = (text: string): Weight => ({ text, unit: 'lb' });

describe('weight times price', () => {
  // Arithmetic of exact decimals: 1.15 x 0.90 = 1.0350, 0.85 x 6.50 = 5.5250, 2.45 x 5.99 = 14.6755; half a cent goes up.
  it.each<[string, number, number]>([
    ['1.15', 90, 104],
    ['0.85', 650, 553],
    ['2.45', 599, 1468],
    ['0', 599, 0],
    ['0.001', 499, 0],
    ['0.001', 500, 1],
  ])('%s lb at %i cents a pound is %i cents', (text, minor, cents) => {
    expect(weightTimesPrice(lb(text), { minor, per: 'lb' })).toBe(cents);
  });

  it('is where binary fractions go wrong', () => {
    expect((1.15 * 0.9).toFixed(2)).toBe('1.03');
    expect((0.85 * 6.5).toFixed(2)).toBe('5.52');
  });

  // NIST Handbook 44, appendix C: 1 lb = 453.592 37 g exactly, 1 oz = 1/16 lb.
  it('converts exactly, and rounds only the money', () => {
    expect(weightTimesPrice(lb('100000'), { minor: 100, per: 'kg' })).toBe(4_535_924);
    expect(weightTimesPrice({ text: '45359.237', unit: 'kg' }, { minor: 1, per: 'lb' })).toBe(100_000);
    expect(weightTimesPrice({ text: '24', unit: 'oz' }, { minor: 333, per: 'lb' })).toBe(500);
    expect(weightTimesPrice({ text: '500', unit: 'g' }, { minor: 1999, per: 'kg' })).toBe(1000);
    expect(weightTimesPrice({ grams: 1001 }, { minor: 1500, per: 'kg' })).toBe(1502);
    expect(lineWorth(1001, 1500)).toBe(1502);
  });

  it.each<[string, Weight]>([
    ['an exponent', lb('1e3')],
    ['a sign', lb('-1')],
    ['a blank', lb('1 ')],
    ['no number', lb('NaN')],
    ['nothing', lb('')],
    ['half a gram', { grams: 0.5 }],
    ['grams below nothing', { grams: -1 }],
    ['grams that are no number', { grams: Number.NaN }],
  ])('refuses %s', (_, weight) =>
    expect(() => weightTimesPrice(weight, { minor: 100, per: 'kg' })).toThrow(RangeError),
  );

  it.each([0.5, -1, Number.NaN, Number.POSITIVE_INFINITY])('refuses a price of %s', (minor) => {
    expect(() => weightTimesPrice(lb('1'), { minor, per: 'lb' })).toThrow(RangeError);
  });

  it('refuses money beyond what can be counted exactly', () => {
    expect(() => weightTimesPrice(lb('999999999'), { minor: Number.MAX_SAFE_INTEGER, per: 'lb' })).toThrow(
      RangeError,
    );
  });

  it('is never more than half a cent from the exact product, and goes up on the half', () => {
    const hundredths = fc.integer({ min: 0, max: 100_000 });
    fc.assert(
      fc.property(hundredths, fc.integer({ min: 0, max: 100_000 }), (weight, minor) => {
        const text = `${Math.floor(weight / 100)}.${String(weight % 100).padStart(2, '0')}`;
        const exact = BigInt(weight) * BigInt(minor);
        const cents = BigInt(weightTimesPrice(lb(text), { minor, per: 'lb' })) * 100n;
        expect(cents - exact).toBeLessThanOrEqual(50n);
        expect(cents - exact).toBeGreaterThan(-50n);
      }),
      { seed: 20_310_314 },
    );
  });
});

describe('totals', () => {
  it('add what was rounded line by line', () => {
    expect(addMinor([104, 553, 1468])).toBe(2125);
    expect(addMinor([500, -500])).toBe(0);
    expect(addMinor([])).toBe(0);
  });
  it.each([[[0.5]], [[Number.NaN]], [[Number.MAX_SAFE_INTEGER, 1]]])('refuse %s', (amounts) => {
    expect(() => addMinor(amounts)).toThrow(RangeError);
  });
});
