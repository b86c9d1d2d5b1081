import type { Master, MasterAnswer } from './master.ts';
import { priceClasses } from './pricing.ts';
import type { Problem } from './problem.ts';

/** Time left, and what chance starts from. */
export interface Budget {
  readonly secondsLeft: () => number;
  readonly seed: number;
}

export interface Relaxation {
  readonly answer: MasterAnswer;
  /** no plan that keeps the present floors is worth more than this */
  readonly bound: number;
}

/**
 * Prices patterns in until the relaxation is within `tolerance` of its bound, the bound falls to `target`, or time is up.
 * @throws NoRelaxation when nothing keeps the limits
 */
export function priceOut(
  problem: Problem,
  master: Master,
  budget: Budget,
  tolerance: number,
  target = Number.NEGATIVE_INFINITY,
): Relaxation {
  let bound = Number.POSITIVE_INFINITY;
  for (;;) {
    const answer = master.solve();
    let slack = 0;
    let added = 0;
    for (const { group, unitValue, bars } of priceClasses(problem, answer.prices)) {
      const root = group.nodes[0];
      if (root?.kind === 'primal' || root?.kind === 'bar')
        slack += Math.max(0, unitValue - answer.partPrice(group.index, 0)) * group.units.length;
      for (const { node, value, pattern } of bars) {
        const gain = value - answer.partPrice(group.index, node);
        if (gain > 1e-6 * Math.max(1, Math.abs(value)) && master.add(pattern())) added++;
      }
    }
    bound = Math.min(bound, answer.objective + slack);
    if (added === 0 || slack <= tolerance || bound <= target || budget.secondsLeft() <= 0)
      return { answer, bound };
  }
}
