import type { Goals } from '@flitchbook/plan';
import type { Highs } from 'highs';
import { solveMip } from './engine.ts';
import { buildExplicit } from './explicit.ts';
import type { Budget } from './price-out.ts';
import type { Problem } from './problem.ts';
import { goalOrder, sameWorth } from './sparse-model.ts';

/** Columns of an explicit form that the engine gets anywhere with in seconds: five hogs. */
const tightenable = 6000;

/**
 * Tightens the bounds of a plan by the explicit form, pieces allowed in parts: asks of each goal, those before held at
 * what the plan reaches, whether it could be better by more than `tolerance`. "No" is quick to prove, and enough.
 */
export function tighten(
  highs: Highs,
  problem: Problem,
  goals: Goals,
  known: Goals,
  tolerance: number,
  budget: Budget,
): Goals {
  const { model, goalRows } = buildExplicit(problem, false);
  const bound = { ...known };
  const open = goalOrder.filter((goal) => bound[goal] > goals[goal] + tolerance);
  if (model.columns > tightenable) return bound;
  for (const goal of goalOrder) {
    const better = goals[goal] + tolerance;
    if (open.includes(goal) && budget.secondsLeft() > 0) {
      model.rowLower[goalRows[goal]] = better;
      const found = solveMip(highs, model, model.costs[goal], {
        seconds: budget.secondsLeft() / (open.length - open.indexOf(goal)),
        relativeGap: 0,
        absoluteGap: sameWorth,
        seed: budget.seed,
      });
      const most = found.outcome === 'infeasible' ? better : Math.max(better, found.bound);
      bound[goal] = Math.min(bound[goal], most);
    }
    model.rowLower[goalRows[goal]] = goals[goal] - 1e-3;
    model.rowUpper[goalRows[goal]] = goals[goal] + sameWorth;
  }
  return bound;
}
