import { expect, it } from 'vitest';
import { setWord } from './glyphs.ts';
import { letterAt } from './order-marks.ts';

it('has a drawn letter for every order and for the name of the product', () => {
  for (let index = 0; index < 600; index++) {
    const letter = letterAt(index);
    expect(setWord(letter).glyphs).toHaveLength(letter.length);
  }
  expect(setWord('FLITCHBOOK').glyphs).toHaveLength(10);
});

it('sets letters side by side without overlap', () => {
  const { glyphs, width } = setWord('HIT');
  expect(glyphs.map(({ x }) => x)).toEqual([0, 19, 38]);
  expect(width).toBe(58);
});
