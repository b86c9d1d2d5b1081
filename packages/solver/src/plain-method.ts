import type { Goals } from '@flitchbook/plan';
import type { Highs } from 'highs';
import { solveMip } from './engine.ts';
import { buildPlain } from './plain.ts';
import type { Budget } from './price-out.ts';
import type { Decision, Problem } from './problem.ts';
import { type Entry, goalOrder, sameWorth } from './sparse-model.ts';

export interface MethodAnswer {
  /** null when none was found in time */
  readonly decision: Decision | null;
  readonly goals: Goals;
  readonly bound: Goals;
}

export interface Known {
  readonly goals: Goals;
  readonly bound: Goals;
}

const infinite = Number.POSITIVE_INFINITY;

/**
 * The plain model solved goal by goal. Given what is known already it looks only for something better, and says that
 * there is nothing when there is not.
 */
export function solvePlain(
  highs: Highs,
  problem: Problem,
  budget: Budget,
  gap: number,
  known?: Known,
): MethodAnswer {
  const { model, read } = buildPlain(problem);
  const goals = { ...(known?.goals ?? { promised: -infinite, wished: -infinite, rest: -infinite }) };
  const bound = { ...(known?.bound ?? { promised: infinite, wished: infinite, rest: infinite }) };
  let decision: Decision | null = null;
  let start: Float64Array | undefined;
  let better = known === undefined;
  for (const goal of goalOrder) {
    const costs = model.costs[goal];
    const entries = costs.flatMap((cost, column): Entry[] => (cost === 0 ? [] : [[column, cost]]));
    const proven = !better && bound[goal] - goals[goal] < sameWorth;
    if (!proven && budget.secondsLeft() > 0) {
      const least = better ? -infinite : goals[goal] + sameWorth;
      const row = model.row(least, better ? infinite : bound[goal] + sameWorth, entries);
      const found = solveMip(highs, model, costs, {
        seconds: budget.secondsLeft(),
        relativeGap: gap,
        absoluteGap: sameWorth,
        seed: budget.seed,
        ...(start ? { start } : {}),
      });
      if (found.outcome === 'infeasible') bound[goal] = goals[goal];
      else bound[goal] = Math.min(bound[goal], found.bound);
      if (found.values.length > 0) {
        start = found.values;
        decision = read(found.values);
        for (const each of goalOrder)
          goals[each] = model.costs[each].reduce(
            (sum, cost, column) => sum + cost * (found.values[column] as number),
            0,
          );
        better = true;
      }
      model.rowLower[row] = -infinite;
      model.rowUpper[row] = infinite;
    }
    model.row(goals[goal] - 1e-3, infinite, entries);
  }
  return { decision, goals, bound };
}
