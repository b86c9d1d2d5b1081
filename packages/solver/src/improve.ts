import type { Goals } from '@flitchbook/plan';
import { solveMip } from './engine.ts';
import { NoRelaxation } from './master.ts';
import { priceOut, type Search } from './price-out.ts';
import { sameWorth } from './sparse-model.ts';

/** A whole plan over the ways known: how often each is used, and where the engine stood. */
export interface Incumbent {
  readonly values: Float64Array;
  readonly uses: readonly number[];
  readonly goals: Goals;
}

const nearly = 1e-6;
const isWhole = (amount: number): boolean => Math.abs(amount - Math.round(amount)) < nearly;

/** What the dive has settled so far; everything is set free again at the end. */
class Settled {
  readonly #search: Search;
  readonly #ways = new Map<number, number>();
  readonly #choices = new Set<number>();

  constructor(search: Search) {
    this.#search = search;
  }

  way(column: number, least: number): void {
    this.#ways.set(column, least);
    this.#search.master.fix(column, least);
  }

  choice(column: number): void {
    this.#choices.add(column);
    this.#search.master.settle(column, true);
  }

  leastOf(column: number): number {
    return this.#ways.get(column) ?? 0;
  }

  free(): void {
    for (const column of this.#ways.keys()) this.#search.master.fix(column, 0);
    for (const column of this.#choices) this.#search.master.settle(column, false);
  }
}

function largest(
  amounts: readonly { readonly column: number; readonly amount: number }[],
): { readonly column: number; readonly amount: number } | undefined {
  return amounts.reduce<(typeof amounts)[number] | undefined>(
    (top, entry) => (top && top.amount >= entry.amount ? top : entry),
    undefined,
  );
}

/**
 * Settles one way after another, the surest first, pricing new ways for what is left each time, until everything is
 * whole.
 * @returns undefined when time ran out on the way, or what was settled can't be completed
 */
export function dive(search: Search, tolerance: number): Incumbent | undefined {
  const { master, problem, budget } = search;
  const settled = new Settled(search);
  const steps =
    problem.classes.reduce((sum, group) => sum + group.units.length, 0) + master.wholeChoices.length + 1;
  try {
    for (let step = 0; step < steps; step++) {
      const { answer } = priceOut(search, tolerance);
      const uses = master.uses(answer.values);
      const open = uses
        .map((used, column) => ({ column, used, amount: used - settled.leastOf(column) }))
        .filter(({ used, amount }) => amount > nearly && !isWhole(used));
      const choices = master.wholeChoices
        .map((column) => ({ column, amount: answer.values[column] as number }))
        .filter(({ amount }) => !isWhole(amount));
      if (open.length === 0 && choices.length === 0)
        return { values: answer.values, uses: uses.map(Math.round), goals: master.goalsAt(answer.values) };
      if (budget.secondsLeft() <= 0) return undefined;
      for (const [column, used] of uses.entries())
        if (used >= 1 - nearly && Math.floor(used + nearly) > settled.leastOf(column))
          settled.way(column, Math.floor(used + nearly));
      const way = largest(open);
      const choice = largest(choices);
      if (choice && (!way || choice.amount >= way.amount % 1)) settled.choice(choice.column);
      else if (way) settled.way(way.column, Math.ceil((uses[way.column] as number) - nearly));
    }
    return undefined;
  } catch (fault) {
    // What was settled can't be completed.
    if (fault instanceof NoRelaxation) return undefined;
    throw fault;
  } finally {
    settled.free();
  }
}

/** The ways in use, one entry for each unit that is cut so. */
export function unitsOf(incumbent: Incumbent): number[] {
  return incumbent.uses.flatMap((count, column) => Array<number>(Math.max(0, count)).fill(column));
}

/** Ways of a class that take part when a whole plan is put together: the likeliest at the present prices. */
const waysEach = 40;

function likeliest(search: Search, losses: readonly number[], classIndex: number): number[] {
  const mine = search.master.columns.flatMap((column, way) =>
    column.classIndex === classIndex ? [way] : [],
  );
  const loss = (way: number): number => losses[way] ?? 0;
  return mine.sort((left, right) => loss(left) - loss(right) || left - right).slice(0, waysEach);
}

/** Most that one putting-together may take. */
const secondsEach = 0.5;

/** Best whole plan over the likeliest ways: of the classes named any number, of the others just what is kept. */
function combine(
  search: Search,
  kept: ReadonlyMap<number, number>,
  losses: readonly number[],
  classes: ReadonlySet<number>,
): Incumbent | undefined {
  const { master, problem, budget, highs } = search;
  const mostOf = (way: number): number => {
    const classIndex = master.columns[way]?.classIndex ?? -1;
    return classes.has(classIndex) ? (problem.classes[classIndex]?.units.length ?? 0) : (kept.get(way) ?? 0);
  };
  const taking = [...[...classes].flatMap((index) => likeliest(search, losses, index)), ...kept.keys()];
  const ranges = new Map(taking.map((way) => [way, [kept.get(way) ?? 0, mostOf(way)] as const]));
  const { model, cost, ways } = master.restricted(ranges);
  const limits = {
    seconds: Math.min(secondsEach, budget.secondsLeft()),
    relativeGap: 0,
    absoluteGap: sameWorth,
    seed: budget.seed,
  };
  const found = solveMip(highs, model, cost, limits);
  if (found.values.length === 0) return undefined;
  const values = master.spread(found.values, ways);
  return { values, uses: master.uses(values), goals: master.goalsAt(values) };
}

/** Sets a few units free, keeps the rest as they are, prices ways for the free ones and puts a whole plan together again. */
export function recut(
  search: Search,
  incumbent: Incumbent,
  freed: ReadonlySet<number>,
  tolerance: number,
): Incumbent | undefined {
  const { master } = search;
  const kept = new Map<number, number>();
  const classes = new Set<number>();
  unitsOf(incumbent).forEach((column, unit) => {
    if (freed.has(unit)) classes.add(master.columns[column]?.classIndex ?? 0);
    else kept.set(column, (kept.get(column) ?? 0) + 1);
  });
  for (const [column, count] of kept) master.fix(column, count);
  try {
    const { answer } = priceOut(search, tolerance, classes);
    return combine(search, kept, answer.losses, classes);
  } finally {
    for (const column of kept.keys()) master.fix(column, 0);
  }
}
