import type { Goals } from '@flitchbook/plan';
import type { Highs } from 'highs';
import { solveMip } from './engine.ts';
import type { Budget } from './price-out.ts';
import type { Decision } from './problem.ts';
import { goalOrder, type SparseModel, sameWorth } from './sparse-model.ts';

/** A whole day as one mixed-integer programme. */
export interface Form {
  readonly model: SparseModel;
  readonly read: (values: ArrayLike<number>) => Decision;
}

interface FormAnswer {
  /** null when none was found in time */
  readonly decision: Decision | null;
  readonly goals: Goals;
  readonly bound: Goals;
}

interface Known {
  readonly goals: Goals;
  readonly bound: Goals;
}

const infinite = Number.POSITIVE_INFINITY;

/**
 * Solves a form goal by goal. Given what is known already it looks only for something better, and says that there is
 * nothing when there is not.
 */
export function solveGoalByGoal(
  highs: Highs,
  { model, read }: Form,
  budget: Budget,
  gap: number,
  known?: Known,
): FormAnswer {
  const goals = { ...(known?.goals ?? { promised: -infinite, wished: -infinite, rest: -infinite }) };
  const bound = { ...(known?.bound ?? { promised: infinite, wished: infinite, rest: infinite }) };
  let decision: Decision | null = null;
  let start: Float64Array | undefined;
  let better = known === undefined;
  for (const goal of goalOrder) {
    const costs = model.costs[goal];
    const entries = model.goalEntries(goal);
    const proven = !better && bound[goal] - goals[goal] < sameWorth;
    if (!proven && budget.secondsLeft() > 0) {
      const least = better ? -infinite : goals[goal] + sameWorth;
      const row = model.row(least, better ? infinite : bound[goal] + sameWorth, entries);
      const found = solveMip(highs, model, costs, {
        // What is found late for an early goal is worth little if no time is left for those after it.
        seconds: budget.secondsLeft() * (goal === 'rest' ? 1 : 0.5),
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
