import { expect, it } from 'vitest';
import { letterAt, markOrders } from './order-marks.ts';

const orders = (count: number) =>
  Array.from({ length: count }, (_, index) => ({ orderId: `o${index}`, number: 100 + index }));

it('letters without I and O, then in pairs', () => {
  expect(letterAt(0)).toBe('A');
  expect(letterAt(8)).toBe('J');
  expect(letterAt(23)).toBe('Z');
  expect(letterAt(24)).toBe('AA');
  expect(letterAt(25)).toBe('AB');
});

it('letters follow the order numbers, whatever the order they came in', () => {
  const marks = markOrders(orders(5).reverse());
  expect([...marks.entries()].map(([id, mark]) => `${id}${mark.letter}`)).toEqual([
    'o0A',
    'o1B',
    'o2C',
    'o3D',
    'o4E',
  ]);
});

it('a new order leaves the marks of the others as they were', () => {
  const before = markOrders(orders(20));
  const after = markOrders(orders(21));
  for (const [id, mark] of before) expect(after.get(id)).toEqual(mark);
});

it('no two of 84 orders share letter, or ink and pattern together', () => {
  const marks = [...markOrders(orders(84)).values()];
  expect(new Set(marks.map(({ letter }) => letter)).size).toBe(84);
  expect(new Set(marks.map(({ ink, pattern }) => `${ink}${pattern}`)).size).toBe(84);
});
