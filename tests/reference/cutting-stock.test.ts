import type { Species } from '@flitchbook/carcass';
import { askedPieces, type CuttingDay, checkPlan, nominalOf, pieceWorth } from '@flitchbook/plan';
import { planDay } from '@flitchbook/solver';
import { describe, expect, it } from 'vitest';
import { animal, day, line } from '../../packages/plan/src/test-days/test-day.ts';

// A bar alone is a roll of paper: one-dimensional cutting stock, whose best counts are known. The species here is a log
// and nothing else, one to a side, cut with a knife that takes nothing away.

interface Instance {
  readonly source: string;
  readonly rollLength: number;
  /** length and how many of it */
  readonly pieces: readonly (readonly [length: number, count: number])[];
  readonly fewestRolls: number;
}

const instances: readonly Instance[] = [
  {
    source: 'paper machine, 13 widths: Wikipedia, "Cutting stock problem", section Illustration: 73 rolls',
    rollLength: 5600,
    pieces: [
      [1380, 22],
      [1520, 25],
      [1560, 12],
      [1710, 14],
      [1820, 18],
      [1880, 18],
      [1930, 20],
      [2000, 10],
      [2050, 12],
      [2100, 14],
      [2140, 16],
      [2150, 18],
      [2200, 20],
    ],
    fewestRolls: 73,
  },
  {
    // The relaxation is 452.25; by length alone 416 would do.
    source: 'Chvátal, Linear Programming, 1983, chapter 13 (data also at neos-guide.org): 453 rolls',
    rollLength: 100,
    pieces: [
      [45, 97],
      [36, 610],
      [31, 395],
      [14, 211],
    ],
    fewestRolls: 453,
  },
  {
    source: 'Fourer, Gay, Kernighan, AMPL, 2nd edition, chapter 15.2 (from memory): 47 rolls',
    rollLength: 110,
    pieces: [
      [20, 48],
      [45, 35],
      [50, 24],
      [55, 10],
      [75, 8],
    ],
    fewestRolls: 47,
  },
];

const from = 'practice';

/** One part, one way to open it, one bar of one zone: nothing to choose but where to cut. */
const logOf = (lengthMm: number): Species => ({
  id: 'log',
  name: 'Log',
  hangingGrams: { min: 1, max: 1_000_000, source: from },
  ribs: { min: 1, max: 1, usual: 1, source: from },
  lengthGrowth: { referenceGrams: 1000, exponent: 0, source: from },
  sideRoot: 'side',
  regions: {},
  bench: [],
  parts: {
    side: {
      kind: 'primal',
      id: 'side',
      name: 'Side',
      operations: [
        {
          id: 'bark',
          name: 'Bark',
          says: 'Bark it.',
          minutes: 0,
          minutesSource: from,
          outputs: [{ to: 'part', id: 'roll', parts: 1, source: from }],
        },
      ],
    },
    roll: {
      kind: 'bar',
      id: 'roll',
      name: 'Roll',
      zones: [
        {
          id: 'all',
          name: 'All',
          stations: { fixed: 1 },
          lengthMm,
          lengthSource: from,
          mass: { parts: 1, source: from },
          maySplit: false,
          manners: [
            {
              id: 'across',
              name: 'Across',
              stock: 'wood',
              tool: 'knife',
              joins: false,
              lengthPpm: 1_000_000,
              lengthSource: from,
              keeps: { parts: 1, source: from },
              releases: [],
              minutes: 0,
              minutesSource: from,
            },
          ],
        },
      ],
    },
  },
  items: {},
  stocks: { wood: { id: 'wood', name: 'Wood', worthMinorPerKg: 0 } },
  bulks: {
    loss: { id: 'loss', name: 'Loss', worthMinorPerKg: 0 },
    lost: { id: 'lost', name: 'Set aside', worthMinorPerKg: 0 },
  },
  singles: [],
  cuts: {
    piece: {
      id: 'piece',
      name: 'Piece',
      says: 'A piece.',
      sources: [{ from: 'stock', id: 'wood' }],
      portions: [{ by: 'thickness', minUm: 1000, maxUm: lengthMm * 1000 }],
      usual: { by: 'thickness', um: 1000 },
    },
  },
});

/** A day with so many rolls, and the pieces promised. */
function rollsDay({ rollLength, pieces }: Instance, rolls: number): CuttingDay {
  return day({
    species: { log: logOf(rollLength) },
    animals: Array.from({ length: rolls }, (_, at) => {
      const log = animal({ animalId: `log-${at}`, speciesId: 'log', carcassGrams: 20_000 });
      return { ...log, sides: log.sides.slice(0, 1) };
    }),
    lines: pieces.map(([length, count]) =>
      line({
        lineId: `${length}`,
        speciesId: 'log',
        cut: 'piece',
        portion: { by: 'thickness', um: length * 1000 },
        ask: { pieces: count },
      }),
    ),
  });
}

const options = { deadlineSeconds: 8, gap: 0, seed: 1 } as const;

describe.each(instances)('$source', (instance) => {
  const { pieces, fewestRolls } = instance;

  it('is cut from the fewest rolls known', async () => {
    const of = rollsDay(instance, fewestRolls);
    const plan = await planDay(of, options);
    expect(checkPlan(of, plan)).toEqual([]);
    expect(plan.lines.map(({ filled }) => filled)).toEqual(pieces.map(([, count]) => count));
  });

  it('is proven not to come out of one roll fewer', async () => {
    const of = rollsDay(instance, fewestRolls - 1);
    const plan = await planDay(of, options);
    const nominal = nominalOf(of, 'log');
    const worthOfAll = of.lines.reduce(
      (sum, asked) => sum + askedPieces(asked) * pieceWorth(of, nominal, asked),
      0,
    );
    expect(checkPlan(of, plan)).toEqual([]);
    expect(plan.proof?.bound.promised).toBeLessThan(worthOfAll);
  });
});
