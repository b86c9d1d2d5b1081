import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { goalsByGlpk } from './testing/glpk-twin.ts';
import { lineOf, tinyDay } from './testing/tiny-days.ts';
import { goalsBy, isSameWorth } from './testing/twins.ts';

// A few days of each, so that the tests stay quick; `npm run twins` compares hundreds.
describe('twins', () => {
  it('agree goal by goal: ways of cutting, and the plain model', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(lineOf, { minLength: 1, maxLength: 4 }), async (lines) => {
        const day = tinyDay(lines);
        const [columns, plain] = [await goalsBy('columns', day), await goalsBy('plain', day)];
        expect([columns, plain, isSameWorth(columns, plain)]).toEqual([columns, plain, true]);
      }),
      { numRuns: 20, seed: 20261125 },
    );
  }, 120_000);

  it('reach the optimum that GLPK finds, goal by goal', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(lineOf, { minLength: 1, maxLength: 3 }), async (lines) => {
        const day = tinyDay(lines);
        const [columns, byGlpk] = [await goalsBy('columns', day), goalsByGlpk(day)];
        expect([columns, byGlpk, isSameWorth(columns, byGlpk)]).toEqual([columns, byGlpk, true]);
      }),
      { numRuns: 15, seed: 20261125 },
    );
  }, 120_000);
});
