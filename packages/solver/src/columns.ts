import type { Goals } from '@flitchbook/plan';
import type { Highs } from 'highs';
import { dive, type Incumbent, recut, unitsOf } from './improve.ts';
import { Master, type Weights } from './master.ts';
import { type Budget, priceOut, type Search } from './price-out.ts';
import { Pricer } from './pricing.ts';
import type { Decision, Problem } from './problem.ts';
import { readColumns } from './read-columns.ts';
import { goalOrder, sameWorth } from './sparse-model.ts';

export interface ColumnsAnswer {
  readonly decision: Decision;
  readonly goals: Goals;
  readonly bound: Goals;
}

/** Goals apart by far more than any one side is worth: for gathering ways and diving, never for comparing plans. */
const gathering: Weights = { promised: 3000, wished: 50, rest: 1 };

const only = (goal: keyof Goals): Weights => ({ promised: 0, wished: 0, rest: 0, [goal]: 1 });

/** Ways for nobody's orders, so that every unit has one from the start. */
function seedWays({ problem, master, pricer }: Search): void {
  const products = new Float64Array(problem.products.length);
  for (const { product, steps } of problem.outlets.items) products[product] = steps[0]?.worth ?? 0;
  const prices = {
    products,
    stocks: Float64Array.from(problem.outlets.stocks, ({ steps }) => (steps[0]?.worthPerGram ?? 0) * 1000),
    bulks: Float64Array.from(problem.outlets.bulks, ({ worthPerGram }) => worthPerGram * 1000),
    minute: problem.day.counter.labourMinorPerHour / 60,
  };
  for (const { column } of pricer.price(prices)) master.add(column);
}

/** Everything asked for on a goal: no plan can do better. The last goal has no such mark. */
function mostOf(problem: Problem, goal: keyof Goals): number {
  if (goal === 'rest') return Number.POSITIVE_INFINITY;
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

/** Worth of a plan all told. */
export const worthOf = (goals: Goals): number =>
  Math.max(1, goals.promised + goals.wished + Math.max(0, goals.rest));

/** First goal on which they differ decides. */
function isBetter(left: Goals, right: Goals): boolean {
  const goal = goalOrder.find((name) => Math.abs(left[name] - right[name]) > sameWorth);
  return goal !== undefined && left[goal] > right[goal];
}

/** Bounds goal by goal, the goals before held at what the plan reaches. */
function boundGoals(search: Search, goals: Goals, known: Goals): Goals {
  const bound = { ...known };
  for (const goal of goalOrder) {
    bound[goal] = Math.min(bound[goal], mostOf(search.problem, goal));
    if (bound[goal] - goals[goal] > sameWorth && search.budget.secondsLeft() > 0) {
      search.master.setWeights(only(goal));
      bound[goal] = Math.min(bound[goal], priceOut(search, sameWorth / 5).bound);
    }
    search.master.setFloor(goal, goals[goal] - 1e-3);
  }
  for (const goal of goalOrder) search.master.setFloor(goal, Number.NEGATIVE_INFINITY);
  search.master.setWeights(gathering);
  return bound;
}

/** A small generator with its state in one number, so that the same seed gives the same plan (mulberry32). */
function chance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

function freeSome(count: number, of: number, next: () => number): Set<number> {
  const freed = new Set<number>();
  while (freed.size < Math.min(count, of)) freed.add(Math.floor(next() * of));
  return freed;
}

/** Recuts a few units at a time while it helps, until the plan is near enough to its bound. */
function improve(
  search: Search,
  first: Incumbent,
  near: (goals: Goals) => boolean,
  tolerance: number,
  secondsToKeep: number,
): Incumbent {
  const next = chance(search.budget.seed);
  let best = first;
  let idle = 0;
  const units = unitsOf(first).length;
  for (
    let turn = 0;
    idle < 4 * units + 8 && search.budget.secondsLeft() > secondsToKeep && !near(best.goals);
    turn++
  ) {
    const found = recut(search, best, freeSome(2 + (turn % 3), units, next), tolerance);
    const better = found !== undefined && isBetter(found.goals, best.goals);
    if (better) best = found;
    idle = better ? 0 : idle + 1;
  }
  return best;
}

/**
 * Plans by ways of cutting: gathers ways at bid prices, dives to a whole plan, bounds each goal, and recuts a few units
 * at a time until the plan is `near` its bound, nothing helps any more, or time is up.
 * @returns undefined when no whole plan was reached in time
 */
export function solveByColumns(
  highs: Highs,
  problem: Problem,
  budget: Budget,
  near: (goals: Goals, bound: Goals) => boolean,
): ColumnsAnswer | undefined {
  const master = new Master(highs, problem);
  const search: Search = { highs, problem, master, pricer: new Pricer(problem), budget };
  try {
    seedWays(search);
    master.setWeights(gathering);
    const gathered = priceOut(search, 1e3).answer;
    const loose = 2e-4 * worthOf(master.goalsAt(gathered.values));
    const first = dive(search, loose);
    if (!first) return undefined;
    const bound = boundGoals(search, first.goals, {
      promised: Number.POSITIVE_INFINITY,
      wished: Number.POSITIVE_INFINITY,
      rest: Number.POSITIVE_INFINITY,
    });
    const toBound = budget.secondsLeft() * 0.3;
    const best = improve(search, first, (goals) => near(goals, bound), loose, toBound);
    return {
      decision: readColumns(search, best),
      goals: best.goals,
      bound: boundGoals(search, best.goals, bound),
    };
  } finally {
    master.dispose();
  }
}
