import type { Goals } from '@flitchbook/plan';
import type { Highs } from 'highs';
import { compile } from './compile.ts';
import { solveMip } from './engine.ts';
import { buildExplicit } from './explicit.ts';
import { type Pattern, patternOf } from './pattern.ts';
import type { Budget } from './price-out.ts';
import type { BarNode, Problem } from './problem.ts';
import { goalOrder, sameWorth } from './sparse-model.ts';

/** Columns of an explicit form that the engine gets anywhere with in seconds: two hogs with some thirty lines. */
const seekable = 4500;

export interface Sought {
  readonly goals: Goals;
  /** how the bars of the better plan are cut, in the classes of the problem asked about */
  readonly patterns: readonly Pattern[];
}

/**
 * Looks among all ways of cutting, not only the patterns at hand, for a plan that is better on one goal and holds those
 * before it: every unit apart, pieces whole.
 * @returns 'none' when there is no such plan, undefined when none was found in time or the day is too large
 */
export function seekBetter(
  highs: Highs,
  problem: Problem,
  goal: keyof Goals,
  goals: Goals,
  budget: Budget,
  seconds: number,
): Sought | 'none' | undefined {
  const apart = compile(problem.day, true);
  const { model, goalRows, read } = buildExplicit(apart, true);
  if (model.columns > seekable) return undefined;
  for (const before of goalOrder.slice(0, goalOrder.indexOf(goal))) {
    model.rowLower[goalRows[before]] = goals[before] - 1e-3;
    model.rowUpper[goalRows[before]] = goals[before] + sameWorth;
  }
  model.rowLower[goalRows[goal]] = goals[goal] + sameWorth;
  const found = solveMip(highs, model, model.costs[goal], {
    seconds,
    relativeGap: 0,
    absoluteGap: sameWorth,
    seed: budget.seed,
  });
  if (found.outcome === 'infeasible') return 'none';
  if (found.values.length === 0) return undefined;
  const whole = read(found.values);
  const classOf = new Map(
    problem.classes
      .filter(({ isSide }) => isSide)
      .flatMap(({ index, units }) => units.map(({ unitId }) => [unitId, index] as const)),
  );
  const patterns = whole.patterns.flatMap(({ pattern, count }) => {
    const group = apart.classes[pattern.classIndex];
    const classIndex = classOf.get(group?.units[0]?.unitId ?? '');
    return count === 0 || !group || classIndex === undefined
      ? []
      : [patternOf(group.nodes[pattern.node] as BarNode, { ...pattern, classIndex })];
  });
  return { goals: whole.goals, patterns };
}
