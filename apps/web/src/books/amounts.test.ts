import { expect, it } from 'vitest';
import { amountText, readAmount } from './amounts.ts';

it('money that is typed is read exactly, and what is none is not', () => {
  for (const [text, minor] of [
    ['14.68', 1468],
    ['14,6', 1460],
    ['14', 1400],
    ['0.07', 7],
  ] as const)
    expect(readAmount(text, 'USD')).toBe(minor);
  for (const bad of ['', '-1', '1.005', '1e3', 'ten', '1.2.3']) expect(readAmount(bad, 'USD')).toBeNull();
  expect(readAmount('1468', 'JPY')).toBe(1468);
  expect(readAmount('14.5', 'JPY')).toBeNull();
  expect([amountText(7, 'USD'), amountText(1468, 'USD'), amountText(1468, 'JPY')]).toEqual([
    '0.07',
    '14.68',
    '1468',
  ]);
});
