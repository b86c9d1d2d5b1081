import type { Goals } from '@flitchbook/plan';
import type { Highs } from 'highs';
import { bound as boundByBranching } from './branch.ts';
import type { MipLimits } from './engine.ts';
import { Master, type Weights, type WholeAnswer } from './master.ts';
import { counterPrices, mostOf } from './most.ts';
import { type Budget, priceOut } from './price-out.ts';
import { priceClasses } from './pricing.ts';
import type { Decision, Problem } from './problem.ts';
import { handOut } from './read-whole.ts';
import { type Sought, seekBetter } from './seek.ts';
import { goalOrder, sameWorth } from './sparse-model.ts';
import { tighten } from './tighten.ts';

export interface ColumnsAnswer {
  readonly decision: Decision;
  readonly goals: Goals;
  readonly bound: Goals;
}

/** Goals apart by more than one piece is worth: for gathering patterns and a first plan, never for comparing plans. */
const gathering: Weights = { promised: 100, wished: 10, rest: 1 };

/** A pattern that costs more than this share of what the relaxation is worth at the bid prices takes no part in the first plan. */
const likelyLoss = 1e-4;

/** There is always a plan: however short the time, the first one is waited for this long. */
const firstPlanSeconds = 2;

const only = (goal: keyof Goals): Weights => ({ promised: 0, wished: 0, rest: 0, [goal]: 1 });

/** Patterns for nobody's orders, so that every bar has one from the start. */
function seedPatterns(problem: Problem, master: Master): void {
  for (const { bars } of priceClasses(problem, counterPrices(problem)))
    for (const bar of bars) master.add(bar.pattern());
}

/** Worth of a plan all told. */
const worthOf = (goals: Goals): number =>
  Math.max(1, goals.promised + goals.wished + Math.max(0, goals.rest));

/** Largest distance of a goal from its bound, as a share of the plan's worth. */
export function gapOf(goals: Goals, bound: Goals): number {
  return Math.max(...goalOrder.map((goal) => Math.max(0, bound[goal] - goals[goal]) / worthOf(goals)));
}

/** First goal on which they differ decides. */
export function isBetter(left: Goals, right: Goals): boolean {
  const goal = goalOrder.find((name) => Math.abs(left[name] - right[name]) > sameWorth);
  return goal !== undefined && left[goal] > right[goal];
}

class ColumnSearch {
  readonly #problem: Problem;
  readonly #master: Master;
  readonly #budget: Budget;
  readonly #gap: number;

  constructor(problem: Problem, master: Master, budget: Budget, gap: number) {
    this.#problem = problem;
    this.#master = master;
    this.#budget = budget;
    this.#gap = gap;
  }

  /** Distance from its bound at which a goal is good enough, minor units. */
  tolerance(goals: Goals): number {
    return Math.max(sameWorth, 0.99 * this.#gap * worthOf(goals));
  }

  #part(shareOfTime: number): Budget {
    const kept = this.#budget.secondsLeft() * (1 - shareOfTime);
    return { ...this.#budget, secondsLeft: () => this.#budget.secondsLeft() - kept };
  }

  #limits(shareOfTime: number, absoluteGap: number): MipLimits {
    return {
      seconds: this.#budget.secondsLeft() * shareOfTime,
      relativeGap: 0,
      absoluteGap,
      seed: this.#budget.seed,
    };
  }

  /** Patterns for all goals at once, and a whole plan of the likeliest of them. */
  first(): WholeAnswer | undefined {
    seedPatterns(this.#problem, this.#master);
    this.#master.setWeights(gathering);
    const { answer } = priceOut(this.#problem, this.#master, this.#budget, sameWorth);
    const goals = this.#master.goalsAt(answer.values);
    const likely = answer.objective * likelyLoss;
    const cheapest = this.#master.cheapest(answer.losses);
    const limits = this.#limits(0.5, this.tolerance(goals) / 4);
    return this.#master.whole(
      { ...limits, seconds: Math.max(firstPlanSeconds, limits.seconds) },
      (pattern) => (answer.losses[pattern] as number) <= likely || cheapest.has(pattern),
    );
  }

  /** Bounds one goal after another, those before held at what the plan reaches. */
  bounds(goals: Goals): Goals {
    const tolerance = this.tolerance(goals);
    const bound = { promised: 0, wished: 0, rest: 0 };
    for (const goal of goalOrder) {
      bound[goal] = mostOf(this.#problem, goal);
      if (bound[goal] - goals[goal] > sameWorth) {
        this.#master.setWeights(only(goal));
        const target = goals[goal] + tolerance;
        const precision = Math.max(sameWorth / 5, tolerance / 50);
        const most = boundByBranching(this.#problem, this.#master, this.#part(0.4), target, precision);
        bound[goal] = Math.min(bound[goal], most);
      }
      this.#master.setFloor(goal, goals[goal] - 1e-3, goals[goal] + sameWorth);
    }
    this.#freeFloors();
    return bound;
  }

  /** Once more, with every pattern, those included that the bounds brought in. @returns undefined when nothing better was found */
  again(best: WholeAnswer): WholeAnswer | undefined {
    this.#master.setWeights(gathering);
    this.#master.setFloor('promised', best.goals.promised - 1e-3);
    return this.#better(best);
  }

  /** A plan at least as good as what was sought out on a goal and those before it, good on the goals after it as well. */
  take({ goals, patterns }: Sought, goal: keyof Goals, best: WholeAnswer): WholeAnswer | undefined {
    for (const pattern of patterns) this.#master.add(pattern);
    this.#master.setWeights(gathering);
    for (const held of goalOrder.slice(0, goalOrder.indexOf(goal) + 1))
      this.#master.setFloor(held, goals[held] - 1e-3);
    return this.#better(best);
  }

  #better(best: WholeAnswer): WholeAnswer | undefined {
    const found = this.#master.whole({ ...this.#limits(0.5, sameWorth), start: best.values });
    this.#freeFloors();
    return found && isBetter(found.goals, best.goals) ? found : undefined;
  }

  #freeFloors(): void {
    for (const goal of goalOrder) this.#master.setFloor(goal, Number.NEGATIVE_INFINITY);
  }
}

/** A plan and how far from the best it could be. */
interface Standing {
  readonly best: WholeAnswer;
  readonly bound: Goals;
}

/** Puts the plan together again and bounds it again while that helps. */
function repeat(search: ColumnSearch, first: WholeAnswer, isDone: (standing: Standing) => boolean): Standing {
  let standing: Standing = { best: first, bound: search.bounds(first.goals) };
  while (!isDone(standing)) {
    const best = search.again(standing.best);
    if (!best) break;
    standing = { best, bound: search.bounds(best.goals) };
  }
  return standing;
}

/** Seeks beyond the patterns at hand, on the first goal that is not near its bound, then on those after it. */
function seek(
  highs: Highs,
  problem: Problem,
  search: ColumnSearch,
  budget: Budget,
  standing: Standing,
): Standing {
  let { best, bound } = standing;
  for (const goal of goalOrder) {
    if (bound[goal] - best.goals[goal] <= search.tolerance(best.goals) || budget.secondsLeft() <= 0) continue;
    const sought = seekBetter(highs, problem, goal, best.goals, budget, budget.secondsLeft() / 3);
    if (sought === undefined) continue;
    const better = sought === 'none' ? undefined : search.take(sought, goal, best);
    if (sought === 'none') bound = { ...bound, [goal]: best.goals[goal] };
    if (better) {
      best = better;
      bound = search.bounds(best.goals);
    }
  }
  return { best, bound };
}

/**
 * Plans by patterns: gathers ways to cut each bar at bid prices, puts the best whole plan of them together, and bounds
 * each goal, until the plan is within `gap` of its bound, nothing helps any more or time is up.
 * @returns undefined when no whole plan was reached in time
 */
export function solveByColumns(
  highs: Highs,
  problem: Problem,
  budget: Budget,
  gap: number,
): ColumnsAnswer | undefined {
  const master = new Master(highs, problem);
  const search = new ColumnSearch(problem, master, budget, gap);
  const isDone = ({ best, bound }: Standing): boolean =>
    gapOf(best.goals, bound) <= gap || budget.secondsLeft() <= 0;
  try {
    const first = search.first();
    if (!first) return undefined;
    let standing = repeat(search, first, isDone);
    if (!isDone(standing)) standing = seek(highs, problem, search, budget, standing);
    const { best, bound } = standing;
    return {
      decision: handOut(problem, best),
      goals: best.goals,
      bound: isDone(standing)
        ? bound
        : tighten(highs, problem, best.goals, bound, search.tolerance(best.goals), budget),
    };
  } finally {
    master.dispose();
  }
}
