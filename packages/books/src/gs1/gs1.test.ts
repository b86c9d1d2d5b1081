import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkDigit, hasCheckDigit, priceVerifier, withCheckDigit } from './check-digit.ts';
import { bracketed, checkElements, readElements, separator } from './element-string.ts';
import { longDate, packElements, weightElement } from './pack-elements.ts';
import { checkLayout, retailNumber } from './retail-number.ts';

const digits = (length: number) =>
  fc
    .array(fc.integer({ min: 0, max: 9 }), { minLength: length, maxLength: length })
    .map((list) => list.join(''));

describe('check digits', () => {
  // GS1, check digit page (6291041500213); GS1 Sweden (7300011000017); examples of open-source GS1 libraries that
  // cite the General Specifications (9501101531000, 95012346); ZXing's test files (90012345678908, 90614141000015).
  it.each([
    ['629104150021', '3'],
    ['730001100001', '7'],
    ['501234567890', '0'],
    ['950110153100', '0'],
    ['9501234', '6'],
    ['9001234567890', '8'],
    ['9061414100001', '5'],
  ])('%s takes %s', (number, digit) => {
    expect(checkDigit(number)).toBe(digit);
    expect(hasCheckDigit(number + digit)).toBe(true);
  });

  it('shows any one digit that is wrong', () => {
    fc.assert(
      fc.property(digits(12), fc.nat(12), fc.integer({ min: 1, max: 9 }), (number, place, shift) => {
        const good = withCheckDigit(number);
        const wrong = String((Number(good[place]) + shift) % 10);
        expect(hasCheckDigit(good.slice(0, place) + wrong + good.slice(place + 1))).toBe(false);
      }),
    );
  });

  it('refuses what is not digits', () => {
    for (const bad of ['', '12a', '１２', '1'.repeat(18)]) expect(() => checkDigit(bad)).toThrow(RangeError);
  });

  // 2875 gives 9: GS1 General Specifications, section 7.9.3, the worked example. 14685 gives 6: section 7.9.4 (from memory).
  it('guards a price with the digit of the specification', () => {
    expect(priceVerifier('2875')).toBe('9');
    expect(priceVerifier('14685')).toBe('6');
    expect(() => priceVerifier('287')).toThrow(RangeError);
  });

  it('of five-digit prices is the one whose product fills the sum to the next ten', () => {
    const [five, two, less] = [
      [0, 5, 1, 6, 2, 7, 3, 8, 4, 9],
      [0, 2, 4, 6, 8, 9, 1, 3, 5, 7],
      [0, 5, 9, 4, 8, 3, 7, 2, 6, 1],
    ];
    fc.assert(
      fc.property(digits(5), (price) => {
        const sum = [five, two, less, five, two].reduce(
          (total, table, place) => total + (table?.[Number(price[place])] ?? 0),
          0,
        );
        expect((sum + (less?.[Number(priceVerifier(price))] ?? 0)) % 10).toBe(0);
      }),
    );
  });
});

describe('a number with the price inside', () => {
  const thirteen = { prefix: '20', itemDigits: 5, hasVerifier: true, priceDigits: 4 };
  const twelve = { prefix: '2', itemDigits: 5, hasVerifier: true, priceDigits: 4 };

  it('is built part by part', () => {
    expect(retailNumber(thirteen, '12345', 2875)).toEqual({ ok: true, value: '2012345928756' });
    expect(retailNumber(twelve, '12345', 1232)).toEqual({ ok: true, value: '212345212325' });
  });

  it('takes 99.99 and refuses 100.00: nothing is cut short', () => {
    expect(retailNumber(thirteen, '12345', 9999).ok).toBe(true);
    expect(retailNumber(thirteen, '12345', 10_000)).toMatchObject({
      ok: false,
      slips: [{ at: 'priceMinor', value: 10_000 }],
    });
    expect(retailNumber(thirteen, '1234', 100)).toMatchObject({ ok: false, slips: [{ at: 'item' }] });
    expect(retailNumber(thirteen, '12345', -1).ok).toBe(false);
  });

  it('has a layout that fits a symbol, or none', () => {
    expect(checkLayout({ prefix: '20', itemDigits: 5, hasVerifier: false, priceDigits: 5 }).ok).toBe(true);
    expect(checkLayout({ prefix: '20', itemDigits: 4, hasVerifier: true, priceDigits: 6 }).ok).toBe(false);
    expect(checkLayout({ prefix: '61', itemDigits: 5, hasVerifier: true, priceDigits: 4 }).ok).toBe(false);
    expect(checkLayout({ prefix: '20', itemDigits: 7, hasVerifier: true, priceDigits: 4 }).ok).toBe(false);
  });
});

const read = (scan: string) => {
  const found = readElements(scan);
  return found.ok ? Object.fromEntries(found.value.map(({ ai, value }) => [ai, value])) : found.slips;
};

describe('element strings', () => {
  // Test expectations of ZXing's expanded DataBar files.
  it('are read as published', () => {
    expect(read('(01)90012345678908(3103)001750')).toEqual({ '01': '90012345678908', '3103': '001750' });
    expect(read('(01)98898765432106(3202)012345(15)991231')).toEqual({
      '01': '98898765432106',
      '3202': '012345',
      '15': '991231',
    });
    expect(read('(01)90614141000015(3202)000150')).toMatchObject({ '3202': '000150' });
    expect(longDate('991231', 2026)).toBe('1999-12-31');
    expect(longDate('240200', 2026)).toBe('2024-02-29');
    expect(longDate('100224', 2026)).toBe('2010-02-24');
  });

  it('come from a scanner with separators and a prefix', () => {
    const raw = `]e00190012345678908310300175010LOT-7${separator}21000042`;
    expect(read(raw)).toEqual({ '01': '90012345678908', '3103': '001750', '10': 'LOT-7', '21': '000042' });
  });

  it.each([
    ['(01)90012345678908(3106)001750', '3106'], // 310n has n from 0 to 5: GS1 syntax dictionary
    ['(3103)001750', 'needs the item number'],
    ['(01)90012345678907(3103)001750', 'wrong check digit'],
    ['(01)90012345678908(13)261301', 'date'],
    ['(01)90012345678908(13)260230', 'date'],
    ['(01)90012345678908(10)', '1 to 20'],
    [`(01)90012345678908(10)${'A'.repeat(21)}`, '1 to 20'],
    ['(01)90012345678908(10)Größe', 'cannot hold'],
    ['(01)90012345678908(10)A(10)B', 'twice'],
    ['0190012345', '14 digits'],
    ['hello', 'not an identifier'],
    ['', 'nothing'],
  ])('%s is refused: %s', (scan, says) => {
    expect(JSON.stringify(read(scan))).toContain(says);
  });

  const pack = {
    gtin: withCheckDigit('9952000000001'),
    net: { text: '1.50', unit: 'lb' },
    packedOn: '2026-11-26',
    bestBefore: '2026-11-30',
    lot: '261126-3F9A1CL',
    serial: '42',
  } as const;

  it('say what is in a pack, with the decimals of the scale', () => {
    const elements = packElements(pack);
    expect(elements.ok && bracketed(elements.value)).toBe(
      `(01)${withCheckDigit('9952000000001')}(3202)000150(13)261126(15)261130(10)261126-3F9A1CL(21)42`,
    );
    expect(weightElement({ text: '1.750', unit: 'kg' })).toEqual({
      ok: true,
      value: { ai: '3103', value: '001750' },
    });
    expect(weightElement({ text: '0.4', unit: 'lb' })).toEqual({
      ok: true,
      value: { ai: '3201', value: '000004' },
    });
  });

  it('refuse what does not fit', () => {
    expect(weightElement({ text: '1000.000', unit: 'kg' })).toMatchObject({
      ok: false,
      slips: [{ at: 'net.text' }],
    });
    expect(weightElement({ text: '0.123456', unit: 'kg' }).ok).toBe(false);
    expect(weightElement({ text: '12', unit: 'oz' }).ok).toBe(false);
    expect(packElements({ ...pack, gtin: '12345678901231' }).ok).toBe(false);
    expect(packElements({ ...pack, lot: 'a(b)' }).ok).toBe(false);
  });

  it('come back as they were written, whatever lot and serial', () => {
    const text = fc.stringMatching(/^[A-Za-z0-9/._-]{1,20}$/);
    fc.assert(
      fc.property(text, text, fc.nat(999_999), (lot, serial, grams) => {
        const elements = [
          { ai: '01', value: withCheckDigit('9952000000001') },
          { ai: '3103', value: String(grams).padStart(6, '0') },
          { ai: '10', value: lot },
          { ai: '21', value: serial },
        ];
        expect(checkElements(elements)).toEqual([]);
        const raw = elements.map(({ ai, value }) => ai + value + (ai === '10' ? separator : '')).join('');
        expect(readElements(raw)).toEqual({ ok: true, value: elements });
        expect(readElements(bracketed(elements))).toEqual({ ok: true, value: elements });
      }),
    );
  });
});
