import type { Master } from './master.ts';
import { NoRelaxation } from './master.ts';
import { type Budget, priceOut } from './price-out.ts';
import type { Problem } from './problem.ts';

/** Least and most of each quantity that a box limits. */
type Limits = ReadonlyMap<number, readonly [least: number, most: number]>;

/** A part of all plans: those within the limits. None of them is worth more than the bound. */
interface Box {
  readonly limits: Limits;
  readonly bound: number;
  readonly amounts: Float64Array;
}

/** What parting on a quantity has brought so far: products of both losses. */
interface Record {
  sum: number;
  times: number;
}

const nearly = 1e-5;
const isWhole = (amount: number): boolean => Math.abs(amount - Math.round(amount)) < nearly;

/** Looked at afresh in one box. */
const looks = 10;
/** After so many looks what a quantity brought before is believed. */
const enough = 2;

/**
 * Branch and price: parts the plans on what must be whole and concerns the day as a whole: how often an operation is
 * used over all sides, and how many pieces a line gets. Sides of like hogs stand in for one another, so that parting on
 * one side moves no bound; parting on their sum does. Pricing stays as it is: what is limited are columns and rows that
 * the master has from the start.
 */
class Branching {
  readonly #problem: Problem;
  readonly #master: Master;
  readonly #budget: Budget;
  readonly #target: number;
  readonly #tolerance: number;
  readonly #records = new Map<number, Record>();
  #applied: Limits = new Map();

  constructor(problem: Problem, master: Master, budget: Budget, target: number, tolerance: number) {
    this.#problem = problem;
    this.#master = master;
    this.#budget = budget;
    this.#target = target;
    this.#tolerance = tolerance;
  }

  /** @returns a bound on the present goal, no lower than the target */
  run(): number {
    const first = this.#evaluate(new Map());
    const open = first ? [first] : [];
    while (open.length > 0) {
      open.sort((left, right) => left.bound - right.bound);
      const box = open.pop() as Box;
      const quantity = this.#budget.secondsLeft() > 0 ? this.#choose(box) : undefined;
      if (quantity === undefined) {
        this.#apply(new Map());
        return box.bound;
      }
      open.push(...this.#part(box, quantity));
    }
    this.#apply(new Map());
    return this.#target;
  }

  #apply(limits: Limits): void {
    for (const quantity of this.#applied.keys()) if (!limits.has(quantity)) this.#master.free(quantity);
    for (const [quantity, range] of limits)
      if (this.#applied.get(quantity) !== range) this.#master.limit(quantity, ...range);
    this.#applied = limits;
  }

  /** @returns undefined when the box holds nothing better than the target */
  #evaluate(limits: Limits, atMost = Number.POSITIVE_INFINITY): Box | undefined {
    this.#apply(limits);
    try {
      const { answer, bound } = priceOut(
        this.#problem,
        this.#master,
        this.#budget,
        this.#tolerance,
        this.#target,
      );
      return bound > this.#target
        ? { limits, bound: Math.min(bound, atMost), amounts: this.#master.amounts(answer.values) }
        : undefined;
    } catch (fault) {
      if (fault instanceof NoRelaxation) return undefined;
      throw fault;
    }
  }

  #half({ limits, amounts }: Box, quantity: number, upper: boolean): Limits {
    const amount = amounts[quantity] as number;
    const [least, most] = limits.get(quantity) ?? this.#master.rangeOf(quantity);
    const range: readonly [number, number] = upper ? [Math.ceil(amount), most] : [least, Math.floor(amount)];
    return new Map(limits).set(quantity, range);
  }

  #part(box: Box, quantity: number): Box[] {
    return [true, false].flatMap(
      (upper) => this.#evaluate(this.#half(box, quantity, upper), box.bound) ?? [],
    );
  }

  /** The quantity whose parting promises most. @returns undefined when all are whole */
  #choose(box: Box): number | undefined {
    const broken = this.#master.wholeQuantities
      .map((quantities) => quantities.filter((quantity) => !isWhole(box.amounts[quantity] as number)))
      .find((quantities) => quantities.length > 0);
    if (!broken) return undefined;
    const hope = (quantity: number): number => {
      const record = this.#records.get(quantity);
      return record ? record.sum / record.times : Number.POSITIVE_INFINITY;
    };
    const likely = broken.sort((left, right) => hope(right) - hope(left) || left - right).slice(0, looks);
    let best: number | undefined;
    let most = Number.NEGATIVE_INFINITY;
    for (const quantity of likely) {
      const known = this.#records.get(quantity);
      const gain = known && known.times >= enough ? hope(quantity) : this.#look(box, quantity);
      if (gain > most) [best, most] = [quantity, gain];
    }
    return best;
  }

  /** Parts on a quantity with the patterns at hand. @returns product of what both halves lose */
  #look(box: Box, quantity: number): number {
    const loss = (upper: boolean): number => {
      this.#apply(this.#half(box, quantity, upper));
      return Math.min(Math.max(box.bound - this.#master.glance(), 1e-3), 10 * (box.bound - this.#target));
    };
    const gain = loss(true) * loss(false);
    const record = this.#records.get(quantity) ?? { sum: 0, times: 0 };
    record.sum += gain;
    record.times++;
    this.#records.set(quantity, record);
    return gain;
  }
}

/**
 * Bounds the goal that the master is set to, floors kept, as closely as time allows or `target` asks.
 * @param tolerance how near to its own bound each box is priced
 */
export function bound(
  problem: Problem,
  master: Master,
  budget: Budget,
  target: number,
  tolerance: number,
): number {
  master.borrow(true);
  try {
    return new Branching(problem, master, budget, target, tolerance).run();
  } finally {
    master.borrow(false);
  }
}
