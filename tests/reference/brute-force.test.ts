import type { Portion } from '@flitchbook/carcass';
import {
  askedPieces,
  type CuttingDay,
  type CuttingPlan,
  checkPlan,
  type DemandLine,
  type Goals,
  goalsOf,
} from '@flitchbook/plan';
import { planDay } from '@flitchbook/solver';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layPlan, type PlanWish } from '../../packages/plan/src/test-days/lay-plan.ts';
import type { PieceWish, SideWish } from '../../packages/plan/src/test-days/lay-side.ts';
import { animal, day, line } from '../../packages/plan/src/test-days/test-day.ts';

// The outside check is enumeration itself: every plan of a tiny day is laid with the measures of the carcass package,
// held to the rules of checkPlan and weighed by goalsOf. Nothing of the solver takes part. Figures are made up.

interface Wanted {
  readonly cut: string;
  readonly stock: string | null;
  readonly portion: Portion;
}

const menu: readonly Wanted[] = [
  { cut: 'slice', stock: 'ribbed-bone-in', portion: { by: 'ribs', ribs: 2 } },
  { cut: 'slice', stock: 'ribbed-bone-in', portion: { by: 'thickness', um: 9_000 } },
  { cut: 'slice', stock: 'ribbed-bone-in', portion: { by: 'thickness', um: 23_000 } },
  { cut: 'steak', stock: 'meat', portion: { by: 'thickness', um: 11_000 } },
  { cut: 'steak', stock: 'meat', portion: { by: 'thickness', um: 17_000 } },
  { cut: 'rack', stock: null, portion: { by: 'whole' } },
  { cut: 'knob', stock: null, portion: { by: 'whole' } },
];

const orders = fc.array(
  fc.record({
    which: fc.nat(menu.length - 1),
    pieces: fc.integer({ min: 1, max: 3 }),
    price: fc.integer({ min: 20, max: 30_000 }),
    promised: fc.boolean(),
  }),
  { minLength: 1, maxLength: 3 },
);

interface Asked {
  readonly line: DemandLine;
  readonly stock: string | null;
}

function tinyDay(wanted: readonly { which: number; pieces: number; price: number; promised: boolean }[]) {
  const asked = wanted.map(({ which, pieces, price, promised }, at): Asked => {
    const { cut, stock, portion } = menu[which] as Wanted;
    const rank = promised ? 'promised' : 'wished';
    return {
      stock,
      line: line({
        lineId: `line-${at}`,
        speciesId: 'plank',
        cut,
        portion,
        ask: { pieces },
        rank,
        priceMinorPerKg: price,
      }),
    };
  });
  const whole = animal({ animalId: 'a', speciesId: 'plank', carcassGrams: 20_000 });
  const theDay: CuttingDay = day({
    animals: [{ ...whole, sides: whole.sides.slice(0, 1) }],
    lines: asked.map((entry) => entry.line),
    counter: {
      itemSteps: [
        { pieces: 1, worthPercent: 90 },
        { pieces: null, worthPercent: 50 },
      ],
      stockSteps: [
        { grams: 2000, worthPercent: 90 },
        { grams: null, worthPercent: 40 },
      ],
      worthMinorPerKg: { meat: 900, 'ribbed-bone-in': 700, rack: 600, knob: 80, scrap: 60 },
      labourMinorPerHour: 2000,
    },
  });
  return { theDay, asked };
}

/** One of each list, in every way. */
function* oneOfEach<T>(lists: readonly (readonly T[])[]): Generator<readonly T[]> {
  const [first, ...others] = lists;
  if (!first) {
    yield [];
    return;
  }
  for (const choice of first) for (const rest of oneOfEach(others)) yield [choice, ...rest];
}

const upTo = (most: number): number[] => Array.from({ length: most + 1 }, (_, count) => count);

function* zoneWays(): Generator<SideWish['zones']> {
  for (const manner of ['bone-in', 'boned']) yield { ribbed: manner };
  for (let station = 1; station < 8; station++) yield { ribbed: ['bone-in', station, 'boned'] };
}

/** Nobody, or any line that asks for the item. */
const takersOf = (asked: readonly Asked[], item: string): (string | null)[] => [
  null,
  ...asked.filter(({ line: { cut } }) => cut === item).map(({ line: { lineId } }) => lineId),
];

const owner = (lineId: string | null) => (lineId === null ? null : { lineId });

/** Pieces counted in ribs lie first: they start and end between bones. */
function piecesOf(asked: readonly Asked[], counts: readonly number[]): PieceWish[] {
  return asked
    .flatMap(({ line: { lineId, cut, portion }, stock }, at) =>
      stock === null
        ? []
        : Array.from({ length: counts[at] ?? 0 }, () => ({ stock, cut, portion, owner: { lineId } })),
    )
    .sort((left, right) => Number(right.portion.by === 'ribs') - Number(left.portion.by === 'ribs'));
}

function* wishesOf(asked: readonly Asked[]): Generator<PlanWish> {
  const counts = asked.map(({ line: ask, stock }) => (stock === null ? [0] : upTo(askedPieces(ask))));
  for (const single of takersOf(asked, 'knob')) {
    const singles = { 'a/knob': owner(single) };
    yield { singles, sides: { 'a-left': { operations: { side: 'grind' } } } };
    for (const knob of takersOf(asked, 'knob'))
      for (const rack of takersOf(asked, 'rack'))
        for (const zones of zoneWays())
          for (const laidOut of oneOfEach(counts))
            yield {
              singles,
              sides: {
                'a-left': {
                  operations: { side: 'open' },
                  ...(zones ? { zones } : {}),
                  pieces: piecesOf(asked, laidOut),
                  items: { knob: owner(knob), rack: owner(rack) },
                },
              },
            };
  }
}

const isBetter = (left: Goals, right: Goals): boolean =>
  (left.promised - right.promised || left.wished - right.wished || left.rest - right.rest) > 0;

/** @returns undefined when the pieces are longer than what they are to be cut from */
function laid(theDay: CuttingDay, wish: PlanWish): CuttingPlan | undefined {
  try {
    return layPlan(theDay, wish);
  } catch (fault) {
    // A free stretch of less than nothing has no weight.
    if (fault instanceof RangeError) return undefined;
    throw fault;
  }
}

function bestByEnumeration(theDay: CuttingDay, asked: readonly Asked[]): Goals {
  let best: Goals = { promised: -1, wished: -1, rest: 0 };
  for (const wish of wishesOf(asked)) {
    const plan = laid(theDay, wish);
    if (!plan) continue;
    const goals = goalsOf(theDay, plan);
    if (isBetter(goals, best) && checkPlan(theDay, plan).length === 0) best = goals;
  }
  return best;
}

describe('the best of every plan there is', () => {
  it('is what the solver finds, on three hundred tiny days', async () => {
    await fc.assert(
      fc.asyncProperty(orders, async (wanted) => {
        const { theDay, asked } = tinyDay(wanted);
        const best = bestByEnumeration(theDay, asked);
        const plan = await planDay(theDay, { deadlineSeconds: 20, gap: 0, seed: 1 });
        const { promised, wished, rest } = goalsOf(theDay, plan);
        expect(checkPlan(theDay, plan)).toEqual([]);
        expect({ promised, wished }).toEqual({ promised: best.promised, wished: best.wished });
        // Goals are rounded to whole minor units, each by itself.
        expect(Math.abs(rest - best.rest)).toBeLessThanOrEqual(1);
      }),
      { numRuns: 300, seed: 20261125 },
    );
  }, 240_000);
});
