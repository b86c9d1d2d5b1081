import { describe, expect, it } from 'vitest';
import { viewBoard } from '../board/board-model.ts';
import { board, plan } from '../testing/two-hogs.ts';
import { watchOf } from './watch-model.ts';

const short = (rank: string): number =>
  board.cuttingDay.lines.filter(
    (line) =>
      line.rank === rank &&
      plan.lines.some(({ lineId, filled, asked }) => lineId === line.lineId && filled < asked),
  ).length;

describe('the watch over promises', () => {
  it('has every line that is short once, promises apart from wishes', () => {
    const { promised, wished } = watchOf(viewBoard(board, plan));
    const lines = (list: typeof promised): number =>
      list.reduce((sum, { lines: own }) => sum + own.length, 0);
    expect([lines(promised), lines(wished)]).toEqual([short('promised'), short('wished')]);
    expect(lines(promised) + lines(wished)).toBeGreaterThan(0);
  });

  it('names each customer once in a list, by order number, with who has the meat', () => {
    const { promised, wished } = watchOf(viewBoard(board, plan));
    for (const list of [promised, wished]) {
      const numbers = list.map(({ number }) => number);
      expect(numbers).toEqual([...new Set(numbers)].toSorted((a, b) => a - b));
      for (const { owner, others } of list) expect(others).not.toContain(owner);
    }
  });

  it('has nobody on it while there is no plan', () => {
    expect(watchOf(viewBoard({ ...board, plan: null }, null))).toEqual({ promised: [], wished: [] });
  });
});
