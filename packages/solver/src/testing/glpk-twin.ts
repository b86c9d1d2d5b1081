import type { CuttingDay, Goals } from '@flitchbook/plan';
import GLPK from 'glpk.js/node';
import { compile } from '../compile.ts';
import { buildPlain, type PlainModel } from '../plain.ts';

const glpk = await GLPK();

/**
 * Best of one goal on the plain model, those before it held, by GLPK: an engine that shares nothing with HiGHS. For tests
 * only: it is GPL and never shipped.
 * @throws Error when it is not proven within 20 s
 */
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
  if (answer.result.status !== glpk.GLP_OPT) throw new Error(`GLPK proved nothing: ${answer.result.status}`);
  return answer.result.z;
}

/** The best plan of a day by GLPK, goal by goal. Worth of pieces is whole: a fraction is the engine's tolerance and not held. */
export function goalsByGlpk(day: CuttingDay): Goals {
  const plain = buildPlain(compile(day));
  const promised = Math.round(bestByGlpk(plain, 'promised', {}));
  const wished = Math.round(bestByGlpk(plain, 'wished', { promised }));
  return { promised, wished, rest: bestByGlpk(plain, 'rest', { promised, wished }) };
}
