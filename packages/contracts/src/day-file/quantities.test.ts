import { describe, expect, it } from 'vitest';
import { readLength, readMoney, readPrice, readReading, readWeight, readWeightRange } from './quantities.ts';

describe('lengths (1 in = 25.4 mm: NIST Handbook 44, appendix C)', () => {
  it.each([
    ['1 in', 25_400],
    ['1 1/4 in', 31_750],
    ['1-1/4 in', 31_750],
    ['1¼″', 31_750],
    ['1/2"', 12_700],
    ['0.375 inches', 9525],
    ['32 mm', 32_000],
    ['3.2cm', 32_000],
    ['9.525 mm', 9525],
  ])('%s', (text, um) => expect(readLength(text)).toEqual({ value: um }));

  it('says where a text has no whole number of micrometres', () => {
    expect(readLength('1/16 in')).toMatchObject({ value: 1588, remark: expect.stringContaining('1.588 mm') });
  });

  it.each(['1', 'in', '1,5 mm', '-1 in', '1e3 mm', '1/0 in', 'NaN', 'Infinity mm', '1 ft', '', '1 in thick'])(
    'refuses %j',
    (text) => expect(readLength(text)).toHaveProperty('says'),
  );
});

describe('weights (1 lb = 453.592 37 g: NIST Handbook 44, appendix C)', () => {
  it.each([
    ['1 lb', 454],
    ['5 lb', 2268],
    ['2 1/2 lb', 1134],
    ['16 oz', 454],
    ['900 g', 900],
    ['2.2 kg', 2200],
  ])('%s', (text, grams) => expect(readWeight(text)).toEqual({ value: grams }));

  it.each(['0 lb', '-1 lb', '5', '1e3 g', 'NaN kg', '5 stone', '99999999 g'])('refuses %j', (text) =>
    expect(readWeight(text)).toHaveProperty('says'),
  );

  it.each([
    ['3-4 lb', 1361, 1814],
    ['3 – 4 lb', 1361, 1814],
    ['3 to 4 lb', 1361, 1814],
    ['1.4 kg - 1.8 kg', 1400, 1800],
    ['900 g-2 lb', 900, 907],
  ])('a range: %s', (text, fromGrams, toGrams) =>
    expect(readWeightRange(text)).toEqual({ value: { fromGrams, toGrams } }),
  );

  it.each(['4-3 lb', '3 lb', '0-4 lb', '3--4 lb', '3-4'])('refuses the range %j', (text) =>
    expect(readWeightRange(text)).toHaveProperty('says'),
  );

  it('keeps a reading as the scale showed it', () => {
    expect(readReading('184.0 lb')).toEqual({ value: { text: '184.0', unit: 'lb' } });
    expect(readReading('1/2 lb')).toHaveProperty('says');
  });
});

describe('money (decimals of a currency: ISO 4217)', () => {
  it.each([
    ['24.00', 'USD', 2400],
    ['24', 'USD', 2400],
    ['24.5', 'USD', 2450],
    ['240', 'JPY', 240],
    ['2.400', 'KWD', 2400],
  ])('%s %s', (text, currency, minor) => expect(readMoney(text, currency)).toEqual({ value: minor }));

  it.each([
    ['24.001', 'USD'],
    ['24.5', 'JPY'],
    ['-1', 'USD'],
    ['1e3', 'USD'],
    ['$24', 'USD'],
  ])('refuses %s %s', (text, currency) => expect(readMoney(text, currency)).toHaveProperty('says'));

  it('turns a price a pound into one a kilogram, rounded once', () => {
    // 8.50 / 0.453 592 37 = 18.739 2...
    expect(readPrice('8.50/lb', 'USD')).toEqual({ value: 1874 });
    expect(readPrice('18.74 per kg', 'USD')).toEqual({ value: 1874 });
    expect(readPrice('8.50', 'USD')).toHaveProperty('says');
  });
});
