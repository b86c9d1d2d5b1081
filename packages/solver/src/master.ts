import type { Goals } from '@flitchbook/plan';
import type { Highs, Model } from 'highs';
import { modelData } from './engine.ts';
import { addMarket, type Market } from './market.ts';
import { type Column, columnKey, type Prices } from './pricing.ts';
import type { Assignment, Problem } from './problem.ts';
import { type Entry, goalOrder, SparseModel } from './sparse-model.ts';

const infinite = Number.POSITIVE_INFINITY;

/** How much each goal counts in one solve. */
export type Weights = Readonly<Goals>;

export interface MasterAnswer {
  readonly objective: number;
  readonly prices: Prices;
  /** dual of each class: what one more unit of it would be worth */
  readonly classPrices: Float64Array;
  readonly values: Float64Array;
  /** what using each way once would cost at these prices */
  readonly losses: readonly number[];
}

/** The engine found no relaxation of what is settled. */
export class NoRelaxation extends Error {}

/** First row of each kind. */
interface Rows {
  readonly products: number;
  readonly stocks: number;
  readonly bulks: number;
  readonly classes: number;
  readonly goals: Readonly<Record<keyof Goals, number>>;
}

/**
 * The master of the decomposition: it picks ways of cutting for each class of units and hands their yield to demand and
 * counter. Kept warm in the engine; ways are added as pricing finds them. Dispose of it.
 */
export class Master {
  readonly #highs: Highs;
  readonly #problem: Problem;
  readonly #base = new SparseModel();
  readonly #market: Market;
  readonly #rows: Rows;
  readonly #solver: Model;
  readonly #known = new Set<string>();
  readonly columns: Column[] = [];
  #weights: Weights = { promised: 1, wished: 1, rest: 1 };

  constructor(highs: Highs, problem: Problem) {
    this.#highs = highs;
    this.#problem = problem;
    this.#market = addMarket(problem, this.#base);
    this.#addUncut();
    this.#rows = this.#addRows();
    this.#solver = highs.createModel(modelData(highs, this.#base, this.#cost(), true));
    this.#solver.options.set({ output_flag: false, simplex_strategy: 4 });
  }

  dispose(): void {
    this.#solver.dispose();
  }

  /** A piece that a way cuts and nobody takes stays uncut: its length goes back to the free stretch. */
  #addUncut(): void {
    const kept = new Map<number, { outlet: number; kg: number }>();
    for (const node of this.#problem.classes.flatMap((group) => group.nodes)) {
      if (node.kind !== 'bar') continue;
      for (const { options, outlet, freeGramsPerUm } of node.runs) {
        for (const { product, takesUm } of options) {
          const kg = (takesUm * freeGramsPerUm) / 1000;
          if (kg < (kept.get(product)?.kg ?? infinite)) kept.set(product, { outlet, kg });
        }
      }
    }
    for (const [product, { outlet, kg }] of kept) {
      const column = this.#base.column({}, 0, infinite, false);
      this.#market.productUses[product]?.push([column, -1]);
      this.#market.stockUses[outlet]?.push([column, kg]);
    }
  }

  #addRows(): Rows {
    const base = this.#base;
    const supply = (uses: readonly (readonly Entry[])[]): number => {
      const first = base.rows.length;
      for (const entries of uses) base.row(0, infinite, entries);
      return first;
    };
    const products = supply(this.#market.productUses);
    const stocks = supply(this.#market.stockUses);
    const bulks = supply(this.#market.bulkUses);
    const classes = base.rows.length;
    for (const group of this.#problem.classes) {
      const taken = this.#problem.shares.flatMap(({ takes }, at): Entry[] => {
        const units = takes.filter((index) => index === group.index).length;
        return units === 0 ? [] : [[this.#market.shareColumns[at] as number, units]];
      });
      base.row(group.units.length, group.units.length, taken);
    }
    const goal = (name: keyof Goals): number =>
      base.row(
        -infinite,
        infinite,
        base.costs[name].map((cost, column): Entry => [column, cost]).filter(([, cost]) => cost !== 0),
      );
    return {
      products,
      stocks,
      bulks,
      classes,
      goals: { promised: goal('promised'), wished: goal('wished'), rest: goal('rest') },
    };
  }

  #cost(): number[] {
    const base = this.#base.lower.map((_, column) =>
      goalOrder.reduce(
        (sum, goal) => sum + this.#weights[goal] * (this.#base.costs[goal][column] as number),
        0,
      ),
    );
    return [...base, ...this.columns.map((column) => this.#columnCost(column))];
  }

  #columnCost(column: Column): number {
    return this.#weights.rest * this.#labour(column);
  }

  #labour(column: Column): number {
    return (-column.minutes * this.#problem.day.counter.labourMinorPerHour) / 60;
  }

  setWeights(weights: Weights): void {
    this.#weights = weights;
    const cost = this.#cost();
    this.#solver.changeColsCost({ kind: 'range', from: 0, to: cost.length - 1 }, cost);
  }

  /** No plan may fall below this on the goal. */
  setFloor(goal: keyof Goals, floor: number): void {
    this.#solver.changeRowBounds(this.#rows.goals[goal], floor, infinite);
  }

  #entries(column: Column): Entry[] {
    const { products, stocks, bulks, classes, goals } = this.#rows;
    return [
      ...[...column.products].map(([index, count]): Entry => [products + index, count]),
      ...[...column.stockKg].map(([index, kg]): Entry => [stocks + index, kg]),
      ...[...column.bulkKg].map(([index, kg]): Entry => [bulks + index, kg]),
      [classes + column.classIndex, 1],
      [goals.rest, this.#labour(column)],
    ];
  }

  /** @returns false when the way was there already */
  add(column: Column): boolean {
    const key = columnKey(column);
    if (this.#known.has(key)) return false;
    this.#known.add(key);
    this.columns.push(column);
    const entries = this.#entries(column).sort(([left], [right]) => left - right);
    this.#solver.addCol(this.#columnCost(column), 0, infinite, {
      indices: entries.map(([row]) => row),
      values: entries.map(([, value]) => value),
    });
    return true;
  }

  /** At least `least` units cut this way; 0 sets it free again. */
  fix(column: number, least: number): void {
    this.#solver.changeColBounds(this.#base.columns + column, least, infinite);
  }

  /** Choices of the market that must be whole: shares, and which animal a one-animal line takes. */
  get wholeChoices(): readonly number[] {
    return this.#base.integer.flatMap((whole, column) => (whole ? [column] : []));
  }

  /** Settles a choice of the market at 1, or sets it free again. */
  settle(choice: number, taken: boolean): void {
    this.#solver.changeColBounds(
      choice,
      taken ? 1 : (this.#base.lower[choice] as number),
      this.#base.upper[choice] as number,
    );
  }

  /** What an answer reaches on each goal. */
  goalsAt(values: ArrayLike<number>): Goals {
    const sum = (goal: keyof Goals): number =>
      this.#base.costs[goal].reduce(
        (running, cost, column) => running + cost * (values[column] as number),
        0,
      );
    const labour = this.columns.reduce(
      (running, column, at) => running + this.#labour(column) * (values[this.#base.columns + at] ?? 0),
      0,
    );
    return { promised: sum('promised'), wished: sum('wished'), rest: sum('rest') + labour };
  }

  /** How often each way is used in an answer, whole or not. */
  uses(values: ArrayLike<number>): number[] {
    return this.columns.map((_, at) => values[this.#base.columns + at] ?? 0);
  }

  /** Solves the relaxation. @throws NoRelaxation when nothing keeps what is settled, or the engine gives no answer */
  solve(): MasterAnswer {
    this.#solver.run();
    const status = this.#solver.getModelStatus();
    if (status !== this.#highs.constants.modelStatus.optimal)
      throw new NoRelaxation(`the relaxation ended with status ${status}`);
    const { rowDual, colValue, colDual } = this.#solver.getSolution();
    const part = (first: number, count: number): Float64Array =>
      Float64Array.from({ length: count }, (_, at) => Math.max(0, -(rowDual[first + at] as number)));
    const restDual = rowDual[this.#rows.goals.rest] as number;
    return {
      objective: this.#solver.getObjectiveValue(),
      values: colValue,
      losses: this.columns.map((_, at) => Math.abs(colDual[this.#base.columns + at] ?? 0)),
      classPrices: rowDual.slice(this.#rows.classes, this.#rows.classes + this.#problem.classes.length),
      prices: {
        products: part(this.#rows.products, this.#problem.products.length),
        stocks: part(this.#rows.stocks, this.#problem.outlets.stocks.length),
        bulks: part(this.#rows.bulks, this.#problem.outlets.bulks.length),
        minute: ((this.#weights.rest - restDual) * this.#problem.day.counter.labourMinorPerHour) / 60,
      },
    };
  }

  /**
   * The master over some of the ways as a mixed-integer programme.
   * @param ranges least and most units for each way that takes part; the others are not used
   * @returns the model, its cost at the present weights, and the ways in the order of their columns
   */
  restricted(ranges: ReadonlyMap<number, readonly [least: number, most: number]>): {
    readonly model: SparseModel;
    readonly cost: number[];
    readonly ways: readonly number[];
  } {
    const model = new SparseModel();
    const base = this.#base;
    base.lower.forEach((lower, column) => {
      model.column({}, lower, base.upper[column] as number, base.integer[column] as boolean);
    });
    const perRow: Entry[][] = base.rows.map(({ indices, values }) =>
      indices.map((index, at): Entry => [index, values[at] as number]),
    );
    const ways = [...ranges.keys()];
    for (const [way, [least, most]] of ranges) {
      const column = this.columns[way] as Column;
      const index = model.column({}, least, most, true);
      for (const [row, value] of this.#entries(column)) perRow[row]?.push([index, value]);
    }
    perRow.forEach((entries, row) => {
      model.row(base.rowLower[row] as number, base.rowUpper[row] as number, entries);
    });
    const cost = [
      ...this.#cost().slice(0, base.columns),
      ...ways.map((way) => this.#columnCost(this.columns[way] as Column)),
    ];
    return { model, cost, ways };
  }

  /** Engine values of an answer to `restricted`, as if every way had taken part. */
  spread(values: ArrayLike<number>, ways: readonly number[]): Float64Array {
    const all = new Float64Array(this.#base.columns + this.columns.length);
    for (let column = 0; column < this.#base.columns; column++) all[column] = values[column] as number;
    ways.forEach((way, at) => {
      all[this.#base.columns + way] = Math.round(values[this.#base.columns + at] as number);
    });
    return all;
  }

  readMarket(values: ArrayLike<number>): Assignment {
    return this.#market.read(values);
  }

  /** How many times each share choice is taken. */
  shareCounts(values: ArrayLike<number>): number[] {
    return this.#market.shareColumns.map((column) => Math.round(values[column] ?? 0));
  }
}
