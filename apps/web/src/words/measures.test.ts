import { expect, it } from 'vitest';
import { dateText } from './dates.ts';
import { inchesText, lengthText, moneyText, portionText, weightText } from './measures.ts';

/** Figures are held to their units by a space that does not break. */
const plain = (text: string): string => text.replaceAll('\u00a0', ' ');
const us = { weightUnit: 'lb', lengthUnit: 'in' } as const;
const metric = { weightUnit: 'kg', lengthUnit: 'mm' } as const;

it.each([
  [25_400, '1'],
  [31_750, '1¼'],
  [19_050, '¾'],
  [12_700, '½'],
  [4_763, '3⁄16'],
  [55_563, '2 3⁄16'],
  [25_399, '1'],
  [0, '0'],
])('%i um is %s in', (um, text) => {
  expect(plain(inchesText(um))).toBe(text);
});

it('keeps a figure and its unit on one line', () => {
  expect(weightText(1_360_777, us)).toBe('3\u00a0lb');
});

it('says lengths in the unit of the shop', () => {
  expect(plain(lengthText(31_750, us))).toBe('1¼ in');
  expect(plain(lengthText(31_750, metric))).toBe('32 mm');
});

// 1 lb = 453.592 37 g: NIST Handbook 44, appendix C.
it.each([
  [453_592, '1 lb'],
  [226_796, '8 oz'],
  [1_360_777, '3 lb'],
  [1_600_000, '3.53 lb'],
  [41_730_000, '92 lb'],
  [83_460_000, '184 lb'],
  [1, '1 oz'],
  [450_000, '0.99 lb'],
  [0, '0 lb'],
])('%i mg is %s', (mg, text) => {
  expect(plain(weightText(mg, us))).toBe(text);
});

it('says grams below a kilogram', () => {
  expect(plain(weightText(371_000, metric))).toBe('370 g');
  expect(plain(weightText(1_240_000, metric))).toBe('1.24 kg');
  expect(plain(weightText(41_730_000, metric))).toBe('41.7 kg');
});

it('says a portion as it was asked for', () => {
  expect(plain(portionText({ by: 'thickness', um: 31_750 }, us))).toBe('1¼ in');
  expect(plain(portionText({ by: 'ribs', ribs: 1 }, us))).toBe('1 rib');
  expect(plain(portionText({ by: 'weight', fromGrams: 1360, toGrams: 1815 }, us))).toBe('3 to 4 lb');
  expect(plain(portionText({ by: 'weight', fromGrams: 1000, toGrams: 1500 }, metric))).toBe('1 to 1.5 kg');
  expect(plain(portionText({ by: 'whole' }, us))).toBe('');
});

it('says money and dates', () => {
  expect(moneyText(123_456, 'USD')).toBe('$1,234.56');
  expect(moneyText(500, 'JPY')).toBe('¥500');
  expect(dateText('2026-11-26')).toBe('Thursday, November 26');
});
