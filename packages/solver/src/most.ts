import type { Goals } from '@flitchbook/plan';
import { type Prices, priceClasses } from './pricing.ts';
import type { Problem } from './problem.ts';

/** What the counter pays for the first of each. */
export function counterPrices(problem: Problem): Prices {
  const products = new Float64Array(problem.products.length);
  for (const { product, steps } of problem.outlets.items) products[product] = steps[0]?.worth ?? 0;
  return {
    products,
    stocks: Float64Array.from(problem.outlets.stocks, ({ steps }) => (steps[0]?.worthPerGram ?? 0) * 1000),
    bulks: Float64Array.from(problem.outlets.bulks, ({ worthPerGram }) => worthPerGram * 1000),
    minute: problem.day.counter.labourMinorPerHour / 60,
  };
}

function asked(problem: Problem, goal: 'promised' | 'wished'): number {
  const shares = new Map<string, number>();
  for (const { share, tier, worth } of problem.shares)
    if (tier === goal) shares.set(share.shareId, Math.max(worth, shares.get(share.shareId) ?? 0));
  return (
    problem.demands
      .filter(({ tier }) => tier === goal)
      .reduce((sum, { pieces, worth }) => sum + pieces * worth, 0) +
    problem.bulkDemands
      .filter(({ tier }) => tier === goal)
      .reduce((sum, { grams, worthPerGram }) => sum + grams * worthPerGram, 0) +
    [...shares.values()].reduce((sum, worth) => sum + worth, 0)
  );
}

/**
 * A bound that takes no search: everything asked for; on the last goal every unit cut for the counter, which pays for all
 * as for the first.
 */
export function mostOf(problem: Problem, goal: keyof Goals): number {
  if (goal !== 'rest') return asked(problem, goal);
  return priceClasses(problem, counterPrices(problem)).reduce(
    (sum, { group, unitValue }) => sum + Math.max(0, unitValue) * group.units.length,
    0,
  );
}
