import { hog, type Portion } from '@flitchbook/carcass';
import type { CuttingDay, DemandLine, Goals } from '@flitchbook/plan';
import { checkPlan, goalsOf } from '@flitchbook/plan';
import fc from 'fast-check';
import GLPK from 'glpk.js/node';
import { describe, expect, it } from 'vitest';
import { compile } from './compile.ts';
import { planDay } from './index.ts';
import { buildPlain, type PlainModel } from './plain.ts';

const wanted: readonly { readonly cut: string; readonly portion: Portion }[] = [
  { cut: 'tenderloin', portion: { by: 'whole' } },
  { cut: 'back-ribs', portion: { by: 'whole' } },
  { cut: 'spareribs', portion: { by: 'whole' } },
  { cut: 'coppa', portion: { by: 'whole' } },
  { cut: 'porchetta', portion: { by: 'whole' } },
  { cut: 't-bone-chop', portion: { by: 'thickness', um: 31_750 } },
  { cut: 'rib-chop', portion: { by: 'thickness', um: 25_400 } },
  { cut: 'boneless-chop', portion: { by: 'thickness', um: 38_100 } },
  { cut: 'long-bone-chop', portion: { by: 'ribs', ribs: 1 } },
  { cut: 'slab-bacon', portion: { by: 'weight', fromGrams: 1400, toGrams: 1900 } },
];

const lineOf = fc.record({
  which: fc.integer({ min: 0, max: wanted.length - 1 }),
  pieces: fc.integer({ min: 1, max: 6 }),
  price: fc.integer({ min: 300, max: 3000 }),
  promised: fc.boolean(),
});

/** A day of a single side with a few lines: small enough to be proven by any of the engines. */
function tinyDay(
  lines: readonly { which: number; pieces: number; price: number; promised: boolean }[],
): CuttingDay {
  return {
    dayId: 'tiny',
    date: '2026-11-26',
    species: { hog },
    animals: [
      {
        animalId: 'hog',
        name: 'hog',
        speciesId: 'hog',
        lostItems: [],
        sides: [
          {
            sideId: 'left',
            animalId: 'hog',
            hand: 'left',
            massMg: 41_776_000,
            carcassGrams: 83_552,
            ribs: 15,
            facts: ['skin-on', 'head', 'feet', 'organs'],
            lostParts: [],
          },
        ],
      },
    ],
    lines: lines.map(
      ({ which, pieces, price, promised }, nth): DemandLine => ({
        lineId: `line ${nth}`,
        orderId: `order ${nth}`,
        owner: `customer ${nth}`,
        speciesId: 'hog',
        ...(wanted[which] as (typeof wanted)[number]),
        ask: { pieces },
        rank: promised ? 'promised' : 'wished',
        priceMinorPerKg: price,
        sameAnimal: false,
        substitutes: [],
      }),
    ),
    shares: [],
    locks: [],
    tools: { saw: true, kerfUm: 1000 },
    counter: {
      itemSteps: [{ pieces: null, worthPercent: 100 }],
      stockSteps: [
        { grams: 3000, worthPercent: 100 },
        { grams: null, worthPercent: 50 },
      ],
      worthMinorPerKg: {},
      labourMinorPerHour: 3000,
    },
  };
}

const glpk = await GLPK();

/** Best of one goal on the plain model, those before it held, by GLPK: an engine that shares nothing with HiGHS. */
function bestByGlpk({ model }: PlainModel, goal: keyof Goals, held: Partial<Goals>): number {
  const name = (column: number): string => `x${column}`;
  const bounds = (lower: number, upper: number) => {
    if (lower === upper) return { type: glpk.GLP_FX, lb: lower, ub: upper };
    if (upper === Number.POSITIVE_INFINITY)
      return lower === Number.NEGATIVE_INFINITY
        ? { type: glpk.GLP_FR, lb: 0, ub: 0 }
        : { type: glpk.GLP_LO, lb: lower, ub: 0 };
    return lower === Number.NEGATIVE_INFINITY
      ? { type: glpk.GLP_UP, lb: 0, ub: upper }
      : { type: glpk.GLP_DB, lb: lower, ub: upper };
  };
  const columns = model.lower.map((_, column) => column);
  const answer = glpk.solve(
    {
      name: goal,
      objective: {
        direction: glpk.GLP_MAX,
        name: goal,
        vars: columns.map((column) => ({ name: name(column), coef: model.costs[goal][column] as number })),
      },
      subjectTo: [
        ...model.rows.map(({ indices, values }, row) => ({
          name: `r${row}`,
          vars: indices.map((column, at) => ({ name: name(column), coef: values[at] as number })),
          bnds: bounds(model.rowLower[row] as number, model.rowUpper[row] as number),
        })),
        ...Object.entries(held).map(([before, least]) => ({
          name: `held ${before}`,
          vars: model
            .goalEntries(before as keyof Goals)
            .map(([column, coef]) => ({ name: name(column), coef })),
          bnds: bounds(least - 1e-3, Number.POSITIVE_INFINITY),
        })),
      ],
      bounds: columns.map((column) => ({
        name: name(column),
        ...bounds(model.lower[column] as number, model.upper[column] as number),
      })),
      generals: columns.filter((column) => model.integer[column]).map(name),
    },
    { msglev: glpk.GLP_MSG_OFF, presol: true, tmlim: 20 },
  );
  expect(answer.result.status).toBe(glpk.GLP_OPT);
  return answer.result.z;
}

const proven = { deadlineSeconds: 20, gap: 0, seed: 1 } as const;

describe('twins', () => {
  it('agree goal by goal: ways of cutting, and the plain model', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(lineOf, { minLength: 1, maxLength: 4 }), async (lines) => {
        const day = tinyDay(lines);
        const columns = await planDay(day, proven);
        const plain = await planDay(day, { ...proven, method: 'plain' });
        expect(checkPlan(day, columns)).toEqual([]);
        expect(checkPlan(day, plain)).toEqual([]);
        expect(goalsOf(day, columns).promised).toBe(goalsOf(day, plain).promised);
        expect(goalsOf(day, columns).wished).toBe(goalsOf(day, plain).wished);
        expect(Math.abs(goalsOf(day, columns).rest - goalsOf(day, plain).rest)).toBeLessThanOrEqual(2);
      }),
      { numRuns: 20, seed: 20261125 },
    );
  }, 120_000);

  // GLPK is a reference for tests only: it is GPL and never shipped.
  it('reach the optimum that GLPK finds, goal by goal', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(lineOf, { minLength: 1, maxLength: 3 }), async (lines) => {
        const day = tinyDay(lines);
        const plain = buildPlain(compile(day));
        const found = goalsOf(day, await planDay(day, proven));
        const promised = bestByGlpk(plain, 'promised', {});
        const wished = bestByGlpk(plain, 'wished', { promised });
        const rest = bestByGlpk(plain, 'rest', { promised, wished });
        expect(found.promised).toBeCloseTo(promised, 0);
        expect(found.wished).toBeCloseTo(wished, 0);
        expect(Math.abs(found.rest - rest)).toBeLessThanOrEqual(2);
      }),
      { numRuns: 15, seed: 20261125 },
    );
  }, 120_000);
});
