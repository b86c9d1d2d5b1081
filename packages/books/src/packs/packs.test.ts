import { readFileSync } from 'node:fs';
import { parseDayFile } from '@flitchbook/contracts';
import { weightTimesPrice } from '@flitchbook/plan';
import { planDay } from '@flitchbook/solver';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { netWeight } from './net-weight.ts';
import { packPrice, shownPrice } from './pack-price.ts';
import { packsToMake } from './packs-to-make.ts';

const lb = (text: string) => ({ text, unit: 'lb' }) as const;
const kg = (text: string) => ({ text, unit: 'kg' }) as const;
const slipOf = (weight: ReturnType<typeof netWeight>) => (weight.ok ? undefined : weight.slips[0]);

describe('net weight', () => {
  it('is gross less tare, exactly, in the unit of the scale', () => {
    expect(netWeight(lb('1.24'), lb('0.04'))).toMatchObject({
      ok: true,
      value: { net: lb('1.20'), netGrams: 544 },
    });
    expect(netWeight(kg('0.512'), { text: '7', unit: 'g' })).toMatchObject({
      ok: true,
      value: { net: kg('0.505'), netGrams: 505 },
    });
    expect(netWeight(lb('2.00'), { text: '0.5', unit: 'oz' })).toMatchObject({
      ok: true,
      value: { net: lb('1.96875') },
    });
    // 0.3 - 0.1 is 0.19999999999999998 in binary.
    expect(netWeight(kg('0.3'), kg('0.1'))).toMatchObject({ ok: true, value: { net: kg('0.2') } });
  });

  it('keeps what the scale showed: 180 lb never becomes 179.9', () => {
    const weighed = netWeight(lb('180'), lb('0'));
    expect(weighed).toMatchObject({
      ok: true,
      value: { gross: lb('180'), net: lb('180'), netGrams: 81_647 },
    });
  });

  it.each([
    ['a tare above the gross', lb('0.50'), lb('0.60'), 'tare.text'],
    ['nothing but the wrap', lb('0.04'), lb('0.04'), 'gross.text'],
    ['units of two families', lb('1.00'), { text: '20', unit: 'g' } as const, 'tare.unit'],
    ['a negative reading', lb('-1.00'), lb('0'), 'gross.text'],
    ['words', lb('about 2'), lb('0'), 'gross.text'],
    ['an exponent', lb('1e3'), lb('0'), 'gross.text'],
    ['a tare finer than is kept', lb('1.00'), { text: '0.0001', unit: 'oz' } as const, 'tare.text'],
  ])('refuses %s and names the field', (_, gross, tare, at) => {
    expect(slipOf(netWeight(gross, tare))?.at).toBe(at);
  });

  it('and tare add up to the gross', () => {
    const grams = fc.integer({ min: 1, max: 50_000 });
    fc.assert(
      fc.property(grams, grams, (net, tare) => {
        const text = (value: number): string => (value / 1000).toFixed(3);
        expect(netWeight(kg(text(net + tare)), kg(text(tare)))).toMatchObject({
          ok: true,
          value: { net: kg(text(net)), netGrams: net },
        });
      }),
    );
  });
});

describe('the price of a pack', () => {
  // Decimal arithmetic by hand; binary floating point gives 1.03, 5.52 and 14.67 or 14.68.
  it.each([
    ['1.15', 90, 104],
    ['0.85', 650, 553],
    ['2.45', 599, 1468],
    ['2.445', 500, 1223],
  ])('%s lb at %i comes to %i', (text, minor, total) => {
    expect(packPrice(lb(text), { minor, per: 'lb' })).toBe(total);
  });

  it('is reckoned from the price that is printed', () => {
    expect(shownPrice(2000, 'lb')).toEqual({ minor: 907, per: 'lb' });
    expect(shownPrice(2000, 'kg')).toEqual({ minor: 2000, per: 'kg' });
    // 400 ounces at 1.00 a pound is 25.00 (NIST Handbook 44, appendix C: sixteen ounces to the pound).
    expect(weightTimesPrice({ text: '400', unit: 'oz' }, { minor: 100, per: 'lb' })).toBe(2500);
  });
});

describe('the packs that the demo day asks for', () => {
  const parsed = parseDayFile(
    readFileSync(new URL('../../../../examples/two-hogs.json', import.meta.url), 'utf8'),
  );
  if ('faults' in parsed) throw new Error('the example is faulty');
  const { day } = parsed;

  it('hold every gram of the plan but saw dust, shrink and what is set aside, and every piece once', async () => {
    const plan = await planDay(day, { deadlineSeconds: 2, gap: 0.05, seed: 1 });
    const packs = packsToMake(day, plan);
    const keys = packs.map(({ key }) => key);
    expect(new Set(keys).size).toBe(keys.length);
    for (const side of plan.sides) {
      const packed = packs
        .filter(({ sideId }) => sideId === side.sideId)
        .reduce((sum, { expectedMg }) => sum + expectedMg, 0);
      expect(packed).toBe(side.massMg - (side.bulkMg['loss'] ?? 0) - (side.bulkMg['lost'] ?? 0));
    }
    const pieces = packs.flatMap(({ pieceIds }) => pieceIds);
    expect(new Set(pieces).size).toBe(pieces.length);
    for (const { pieceIds, lineId, bulkGrams } of plan.lines) {
      const mine = packs.filter(({ owner }) => owner && 'lineId' in owner && owner.lineId === lineId);
      expect(mine.flatMap((pack) => pack.pieceIds).toSorted()).toEqual([...pieceIds].toSorted());
      if (bulkGrams > 0)
        expect(mine.reduce((sum, { expectedMg }) => sum + expectedMg, 0)).toBe(bulkGrams * 1000);
    }
    // Whatever belongs to a share has no price of its own; everything else has one.
    for (const { owner, priceMinorPerKg } of packs)
      expect(priceMinorPerKg === null).toBe(owner !== null && 'shareId' in owner);
  });
});
