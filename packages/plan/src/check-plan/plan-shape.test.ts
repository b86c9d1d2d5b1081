import { describe, expect, it } from 'vitest';
import { checkPlan } from '../check-plan.ts';
import type { CuttingPlan } from '../cutting-plan.ts';
import { busyDay, busyPlan } from '../test-days/busy-day.ts';

/** Every place in a plan that holds a value, as keys from the top. */
function placesIn(value: unknown, keys: readonly (string | number)[] = []): (readonly (string | number)[])[] {
  if (typeof value !== 'object' || value === null) return [keys];
  const own = Object.entries(value).flatMap(([key, entry]) =>
    placesIn(entry, [...keys, Array.isArray(value) ? Number(key) : key]),
  );
  return keys.length === 0 ? own : [keys, ...own];
}

function withValueAt(plan: CuttingPlan, keys: readonly (string | number)[], value: unknown): CuttingPlan {
  const copy = structuredClone(plan) as unknown as Record<string | number, never>;
  let at = copy;
  for (const key of keys.slice(0, -1)) at = at[key] as never;
  at[keys.at(-1) as string] = value as never;
  return copy as unknown as CuttingPlan;
}

describe('P0: the form of a plan', () => {
  it.each([null, undefined, 5, 'plan', [], {}, { dayId: 'day-1' }, Number.NaN])(
    'takes %s for no plan, and does not throw',
    (value) => {
      const faults = checkPlan(busyDay, value as unknown as CuttingPlan);
      expect(faults.length).toBeGreaterThan(0);
      expect(new Set(faults.map(({ rule }) => rule))).toEqual(new Set(['P0']));
    },
  );

  it('answers for every value of a plan that is turned into something else', () => {
    const small = { ...busyPlan, sides: busyPlan.sides.slice(0, 1), singles: busyPlan.singles.slice(0, 1) };
    const strange = [
      undefined,
      Number.NaN,
      -1,
      0.5,
      '',
      'x'.repeat(5000),
      Number.POSITIVE_INFINITY,
      { by: 'torn' },
      [null],
      true,
    ];
    let refused = 0;
    for (const keys of placesIn(small)) {
      for (const value of strange) {
        const faults = checkPlan(busyDay, withValueAt(small, keys, value));
        expect(
          faults.every(({ says, at }) => says.length > 0 && at.length > 0),
          `${keys.join('.')} = ${String(value)}`,
        ).toBe(true);
        if (faults.some(({ rule }) => rule === 'P0')) refused++;
      }
    }
    expect(refused).toBeGreaterThan(1000);
  });

  it('names the place and the value', () => {
    const faults = checkPlan(busyDay, withValueAt(busyPlan, ['sides', 0, 'items', 2, 'massMg'], Number.NaN));
    expect(faults).toEqual([
      { rule: 'P0', at: 'sides[0].items[2].massMg', says: 'must be a whole number of 0 or more, got NaN' },
    ]);
  });

  it('sees a hole in a list', () => {
    const holed = [...busyPlan.singles];
    delete holed[1];
    expect(checkPlan(busyDay, { ...busyPlan, singles: holed }).map(({ at }) => at)).toEqual(['singles[1]']);
  });
});
