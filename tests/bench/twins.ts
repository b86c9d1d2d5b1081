import fc from 'fast-check';
import { goalsByGlpk } from '../../packages/solver/src/testing/glpk-twin.ts';
import { lineOf, tinyDay } from '../../packages/solver/src/testing/tiny-days.ts';
import { goalsBy, isSameWorth } from '../../packages/solver/src/testing/twins.ts';
import { readOptions } from './options.ts';

/** Hundreds of small random days, planned by patterns, by the plain model on HiGHS and by the plain model on GLPK. */
const { days, seed } = readOptions({ days: 300, seed: 20_261_125 });

const lines = fc.array(lineOf, { minLength: 1, maxLength: 5 });
const counted = { days: 0, proven: 0, unproven: 0 };

await fc.assert(
  fc.asyncProperty(lines, async (asked) => {
    const day = tinyDay(asked);
    const byPatterns = await goalsBy('columns', day);
    const byPlain = await goalsBy('plain', day);
    if (!isSameWorth(byPatterns, byPlain))
      throw new Error(`patterns ${JSON.stringify(byPatterns)}, plain model ${JSON.stringify(byPlain)}`);
    counted.days++;
    try {
      const byGlpk = goalsByGlpk(day);
      if (!isSameWorth(byPatterns, byGlpk))
        throw new TypeError(`patterns ${JSON.stringify(byPatterns)}, GLPK ${JSON.stringify(byGlpk)}`);
      counted.proven++;
    } catch (fault) {
      if (fault instanceof TypeError) throw fault;
      counted.unproven++;
    }
  }),
  { numRuns: days, seed, endOnFailure: true },
);
console.log(
  `${counted.days} days, one optimum by patterns and by the plain model on HiGHS; GLPK found it too on ${counted.proven}, and proved nothing in time on ${counted.unproven} (seed ${seed})`,
);
