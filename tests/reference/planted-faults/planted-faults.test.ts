import { readFileSync } from 'node:fs';
import { parseDayFile } from '@flitchbook/contracts';
import { type CuttingDay, checkPlan } from '@flitchbook/plan';
import { planDay } from '@flitchbook/solver';
import { madeDay } from '@flitchbook/test-harness/days';
import { describe, expect, it } from 'vitest';
import { faultsInTheBooks } from './faults-in-the-books.ts';
import { faultsOfOwners } from './faults-of-owners.ts';
import { faultsOnTheBlock } from './faults-on-the-block.ts';
import type { Planned } from './planted.ts';

function readDay(name: string): CuttingDay {
  const read = parseDayFile(readFileSync(new URL(`../../../examples/${name}.json`, import.meta.url), 'utf8'));
  if ('faults' in read) throw new Error(JSON.stringify(read.faults));
  return read.day;
}

const days: readonly CuttingDay[] = [
  ...['two-hogs', 'five-hogs', 'two-lambs', 'goat-kid', 'beef-fore'].map(readDay),
  ...[11, 12, 13].map((seed) => madeDay({ seed, animals: 2, lines: 24, shares: 1 })),
];

// One after another: they share a thread, and each has its own seconds.
const good: Planned[] = [];
for (const day of days)
  good.push({ day, plan: await planDay(day, { deadlineSeconds: 4, gap: 0.05, seed: 1 }) });

describe('a fault planted in a plan that the solver made', () => {
  it('stands in a plan that is good without it', () => {
    expect(good.flatMap(({ day, plan }) => checkPlan(day, plan))).toEqual([]);
  });

  it.each([...faultsOnTheBlock, ...faultsInTheBooks, ...faultsOfOwners])(
    'is found by its rule wherever it is planted: $says ($rule)',
    ({ rule, plant }) => {
      const planted = good.flatMap(plant);
      const unseen = planted
        .map(({ day, plan }) => checkPlan(day, plan).map((fault) => fault.rule))
        .filter((rules) => !rules.includes(rule));
      expect(planted.length).toBeGreaterThan(0);
      expect(unseen).toEqual([]);
    },
  );
});
