import type { Highs } from 'highs';
import type { Master, MasterAnswer } from './master.ts';
import type { Pricer } from './pricing.ts';
import type { Problem } from './problem.ts';

/** Time left, and what chance starts from. */
export interface Budget {
  readonly secondsLeft: () => number;
  readonly seed: number;
}

export interface Relaxation {
  readonly answer: MasterAnswer;
  /** no plan that keeps the present limits is worth more than this */
  readonly bound: number;
}

/** A search over the ways of cutting: its master, its pricer and its time. */
export interface Search {
  readonly highs: Highs;
  readonly problem: Problem;
  readonly master: Master;
  readonly pricer: Pricer;
  readonly budget: Budget;
}

/**
 * Prices ways in until the relaxation is within `tolerance` of its bound, or time is up.
 * @param classes the classes to price; a bound over some of them holds only while the others stand still
 */
export function priceOut(
  { problem, master, pricer, budget }: Search,
  tolerance: number,
  classes?: ReadonlySet<number>,
): Relaxation {
  let bound = Number.POSITIVE_INFINITY;
  for (;;) {
    const answer = master.solve();
    let slack = 0;
    let added = 0;
    for (const { column, value } of pricer.price(answer.prices, classes)) {
      const units = problem.classes[column.classIndex]?.units.length ?? 0;
      const gain = value - (answer.classPrices[column.classIndex] as number);
      slack += Math.max(0, gain) * units;
      if (gain > 1e-6 * Math.max(1, Math.abs(value)) && master.add(column)) added++;
    }
    bound = Math.min(bound, answer.objective + slack);
    if (added === 0 || slack <= tolerance || budget.secondsLeft() <= 0) return { answer, bound };
  }
}
