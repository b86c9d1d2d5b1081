import type { Goals } from '@flitchbook/plan';
import type { Highs } from 'highs';
import { solveMip } from './engine.ts';
import { Master, type MasterAnswer, type Weights } from './master.ts';
import { Pricer } from './pricing.ts';
import type { Decision, Problem, Unit, UnitClass, UnitDecision } from './problem.ts';
import { shareDecision } from './share-way.ts';
import { goalOrder } from './sparse-model.ts';

/** Time left and who asked to stop. */
export interface Budget {
  readonly secondsLeft: () => number;
  readonly seed: number;
}

export interface ColumnsAnswer {
  readonly decision: Decision;
  readonly goals: Goals;
  readonly bound: Goals;
}

/** Goals apart by far more than any one side is worth: used to gather good ways, never to compare plans. */
const gathering: Weights = { promised: 400, wished: 20, rest: 1 };

const only = (goal: keyof Goals): Weights => ({ promised: 0, wished: 0, rest: 0, [goal]: 1 });

/**
 * Prices ways in until none would help, or time is up.
 * @returns the last relaxation and a bound on it that holds at any point
 */
function price(master: Master, pricer: Pricer, problem: Problem, budget: Budget): { readonly answer: MasterAnswer; readonly bound: number } {
  let bound = Number.POSITIVE_INFINITY;
  for (;;) {
    const answer = master.solve();
    let slack = 0;
    let added = 0;
    for (const { column, value } of pricer.price(answer.prices)) {
      const group = problem.classes[column.classIndex] as UnitClass;
      const gain = value - (answer.classPrices[column.classIndex] as number);
      slack += Math.max(0, gain) * group.units.length;
      if (gain > 1e-6 * Math.max(1, Math.abs(value)) && master.add(column)) added++;
    }
    bound = Math.min(bound, answer.objective + slack);
    if (added === 0 || budget.secondsLeft() <= 0) return { answer, bound };
  }
}

/**
 * Settles one way after another, the surest first, pricing new ways for what is left each time. It leaves behind ways
 * that fit together; the whole plan is put together from them afterwards.
 */
function dive(master: Master, pricer: Pricer, problem: Problem, budget: Budget): void {
  const fixed = new Map<number, number>();
  const units = problem.classes.reduce((sum, group) => sum + group.units.length, 0);
  try {
    for (let step = 0; step < units && budget.secondsLeft() > 0; step++) {
      const { answer } = price(master, pricer, problem, budget);
      const uses = master.uses(answer.values).map((used, column) => ({ column, used, rest: used - (fixed.get(column) ?? 0) }));
      const sure = uses.filter(({ rest }) => rest >= 1 - 1e-6);
      const [likeliest] = uses.filter(({ rest }) => rest > 1e-6).sort((left, right) => right.rest - left.rest || left.column - right.column);
      if (!likeliest) return;
      for (const { column, used } of sure.length > 0 ? sure : [{ ...likeliest, used: Math.ceil(likeliest.used - 1e-6) }]) {
        const least = Math.floor(used + 1e-6);
        fixed.set(column, least);
        master.fix(column, least);
      }
    }
  } finally {
    for (const column of fixed.keys()) master.fix(column, 0);
  }
}

/** Ways for nobody's orders, so that every unit has one from the start. */
function seed(master: Master, pricer: Pricer, problem: Problem): void {
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

interface Incumbent {
  readonly values: Float64Array;
  readonly goals: Goals;
}

const valueOf = (costs: readonly number[], values: ArrayLike<number>): number => costs.reduce((sum, cost, column) => sum + cost * (values[column] as number), 0);

/** Best whole plan over the ways known, goal by goal from `from` on. */
function combine(highs: Highs, master: Master, goal: keyof Goals, budget: Budget, start?: Float64Array): Incumbent | undefined {
  const { model } = master.restricted();
  const padded = start && Float64Array.from({ length: model.columns }, (_, at) => start[at] ?? 0);
  const weights = goalOrder.slice(goalOrder.indexOf(goal));
  const cost = model.costs[goal].map((own, column) => own + weights.slice(1).reduce((sum, later) => sum + (model.costs[later][column] as number) * 1e-6, 0));
  const found = solveMip(highs, model, cost, {
    seconds: budget.secondsLeft(),
    relativeGap: 1e-4,
    absoluteGap: 0.5,
    seed: budget.seed,
    ...(padded ? { start: padded } : {}),
  });
  if (found.values.length === 0) return undefined;
  const goals = { promised: valueOf(model.costs.promised, found.values), wished: valueOf(model.costs.wished, found.values), rest: valueOf(model.costs.rest, found.values) };
  return { values: found.values, goals };
}

function readDecision(problem: Problem, master: Master, firstColumn: number, values: Float64Array): Decision {
  const free = problem.classes.map((group) => [...group.units]);
  const units: UnitDecision[] = [];
  const take = (classIndex: number, fits: (unit: Unit) => boolean): Unit => {
    const queue = free[classIndex] as Unit[];
    const at = queue.findIndex(fits);
    return queue.splice(Math.max(0, at), 1)[0] as Unit;
  };
  const counts = master.shareCounts(values);
  const order = problem.shares.map((_, at) => at).sort((left, right) => (problem.shares[right]?.takes.length ?? 0) - (problem.shares[left]?.takes.length ?? 0));
  for (const at of order) {
    const choice = problem.shares[at] as Problem['shares'][number];
    for (let nth = 0; nth < (counts[at] ?? 0); nth++) {
      const animalId = choice.animalIds.find((candidate) =>
        [...new Set(choice.takes)].every((index) => (free[index] as Unit[]).filter((unit) => unit.animalId === candidate).length >= choice.takes.filter((taken) => taken === index).length),
      );
      for (const index of choice.takes) {
        const unit = take(index, (candidate) => candidate.animalId === animalId);
        units.push(shareDecision(unit, problem.classes[index] as UnitClass, choice.share));
      }
    }
  }
  master.columns.forEach((column, at) => {
    for (let nth = 0; nth < Math.round(values[firstColumn + at] ?? 0); nth++) {
      const unit = take(column.classIndex, () => true);
      units.push({ unit, classIndex: column.classIndex, share: null, choices: column.choices, pieces: column.pieces, labels: column.labels });
    }
  });
  const place = new Map<Unit, number>(problem.classes.flatMap((group) => group.units).map((unit) => [unit, 0] as const));
  const inOrder = problem.day.animals.flatMap((animal) => [...animal.sides.map((side) => side.sideId), animal.animalId]);
  for (const unit of place.keys()) place.set(unit, inOrder.indexOf(unit.unitId));
  units.sort((left, right) => (place.get(left.unit) ?? 0) - (place.get(right.unit) ?? 0));
  return { units, assignment: master.readMarket(values) };
}

const mostOf = (problem: Problem, goal: keyof Goals): number => {
  const shares = new Map(problem.shares.filter(({ tier }) => tier === goal).map(({ share, worth }) => [share.shareId, worth] as const));
  for (const { share, worth } of problem.shares) if (shares.has(share.shareId)) shares.set(share.shareId, Math.max(worth, shares.get(share.shareId) ?? 0));
  return (
    problem.demands.filter(({ tier }) => tier === goal).reduce((sum, { pieces, worth }) => sum + pieces * worth, 0) +
    problem.bulkDemands.filter(({ tier }) => tier === goal).reduce((sum, { grams, worthPerGram }) => sum + grams * worthPerGram, 0) +
    [...shares.values()].reduce((sum, worth) => sum + worth, 0)
  );
};

/** Column generation, goal by goal: a bound for each, and a whole plan over the ways found. */
export function solveByColumns(highs: Highs, problem: Problem, budget: Budget, trace: (says: string) => void = () => undefined): ColumnsAnswer {
  const master = new Master(highs, problem);
  const pricer = new Pricer(problem);
  try {
    seed(master, pricer, problem);
    master.setWeights(gathering);
    price(master, pricer, problem, budget);
    trace(`gathered ${master.columns.length}`);
    dive(master, pricer, problem, budget);
    trace(`dived ${master.columns.length}`);
    const bound = { promised: 0, wished: 0, rest: 0 };
    let best: Incumbent | undefined;
    for (const goal of goalOrder) {
      const most = goal === 'rest' ? Number.POSITIVE_INFINITY : mostOf(problem, goal);
      best = combine(highs, master, goal, budget, best?.values) ?? best;
      trace(`${goal}: first ${best?.goals[goal]} of ${most}`);
      bound[goal] = most;
      if (!best || best.goals[goal] < most - 0.01) {
        master.setWeights(only(goal));
        bound[goal] = Math.min(most, price(master, pricer, problem, budget).bound);
        trace(`${goal}: bound ${bound[goal]} with ${master.columns.length}`);
        if (!best || best.goals[goal] < bound[goal] - 0.01) best = combine(highs, master, goal, budget, best?.values) ?? best;
        trace(`${goal}: then ${best?.goals[goal]}`);
      }
      if (best) master.setFloor(goal, best.goals[goal] - 1e-3);
    }
    if (!best) throw new Error('no plan over the ways found');
    const { firstColumn } = master.restricted();
    return { decision: readDecision(problem, master, firstColumn, best.values), goals: best.goals, bound };
  } finally {
    master.dispose();
  }
}
