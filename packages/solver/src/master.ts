import type { Goals } from '@flitchbook/plan';
import type { Highs, Model } from 'highs';
import { type MipLimits, modelData, solveMip } from './engine.ts';
import { Flow } from './flow.ts';
import { addMarket, type Market } from './market.ts';
import { type Pattern, patternKey } from './pattern.ts';
import type { Prices } from './pricing.ts';
import type { Problem } from './problem.ts';
import { readWhole, type Whole } from './read-whole.ts';
import { type Entry, goalOrder, SparseModel } from './sparse-model.ts';

const infinite = Number.POSITIVE_INFINITY;

/** How much each goal counts in one solve. */
export type Weights = Readonly<Goals>;

export interface MasterAnswer {
  readonly objective: number;
  readonly prices: Prices;
  /** what one more of a part would be worth, by class and node */
  readonly partPrice: (classIndex: number, node: number) => number;
  readonly values: Float64Array;
  /** what using each pattern once would cost at these prices */
  readonly losses: readonly number[];
}

/** Nothing keeps the limits, whatever pattern may still be found. */
export class NoRelaxation extends Error {}

/** A whole plan, with where the engine stood. */
export interface WholeAnswer extends Whole {
  readonly values: Float64Array;
}

/** First row of each kind. */
interface Rows {
  readonly products: number;
  readonly stocks: number;
  readonly bulks: number;
  /** by class and node; undefined where nothing is to be balanced */
  readonly parts: readonly (readonly (number | undefined)[])[];
  readonly goals: Readonly<Record<keyof Goals, number>>;
  readonly totals: number;
}

/** What a pattern not yet found could bring is lent at this price, minor units, while boxes are bounded. */
const loanMinor = 1e5;

/** Something that is whole in any plan: a column, or a sum of columns in a row of its own. */
type Quantity = { readonly column: number } | { readonly row: number; readonly columns: readonly number[] };

/**
 * The master of the decomposition: operations send units down their trees, patterns cut the bars that come of it, and the
 * yield goes to demand and counter. Kept warm in the engine; patterns are added as pricing finds them. Dispose of it.
 */
export class Master {
  readonly #highs: Highs;
  readonly #problem: Problem;
  readonly #base = new SparseModel();
  readonly #market: Market;
  readonly #flow: Flow;
  readonly #loans: number;
  readonly #rows: Rows;
  readonly #quantities: readonly Quantity[];
  readonly #solver: Model;
  readonly #known = new Set<string>();
  readonly #floors: Record<keyof Goals, number> = { promised: -infinite, wished: -infinite, rest: -infinite };
  readonly #patterns: Pattern[] = [];
  /** what is whole in any plan: first what concerns the day as a whole, then what one class does */
  readonly wholeQuantities: readonly (readonly number[])[];
  #weights: Weights = { promised: 1, wished: 1, rest: 1 };

  constructor(highs: Highs, problem: Problem) {
    this.#highs = highs;
    this.#problem = problem;
    this.#market = addMarket(problem, this.#base);
    this.#addUncut();
    this.#loans = this.#addLoans();
    this.#flow = new Flow(problem, this.#base, this.#market);
    const totals = this.#flow.totals();
    this.#rows = this.#addRows(totals);
    this.#quantities = [
      ...totals.map((columns, at) => ({ row: this.#rows.totals + at, columns })),
      ...this.#market.wholeColumns.map((column) => ({ column })),
      ...this.#flow.choiceColumns.flat(2).map((column) => ({ column })),
    ];
    const ofTheDay = totals.length + this.#market.wholeColumns.length;
    const all = this.#quantities.map((_, quantity) => quantity);
    this.wholeQuantities = [all.slice(0, ofTheDay), all.slice(ofTheDay)];
    this.#solver = highs.createModel(modelData(highs, this.#base, this.#cost(), true));
    this.#solver.options.set({ output_flag: false, simplex_strategy: 4 });
  }

  dispose(): void {
    this.#solver.dispose();
  }

  /** A piece that a pattern cuts and nobody takes stays uncut: its length goes back to the free stretch. */
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

  /** Columns that make any product or bulk out of nothing; shut unless `borrow` opens them. */
  #addLoans(): number {
    const first = this.#base.columns;
    const { productUses, bulkUses } = this.#market;
    for (const uses of [...productUses, ...bulkUses]) uses.push([this.#base.column({}, 0, 0, false), 1]);
    return first;
  }

  #addRows(totals: readonly (readonly number[])[]): Rows {
    const base = this.#base;
    const parts = this.#problem.classes.map((group) =>
      group.nodes.map((node, index) =>
        node.kind === 'primal' || node.kind === 'bar'
          ? this.#flow.balance(group, index, this.#flow.choiceColumns[group.index]?.[index] ?? [])
          : undefined,
      ),
    );
    const supply = (uses: readonly (readonly Entry[])[]): number => {
      const first = base.rows.length;
      for (const entries of uses) base.row(0, infinite, entries);
      return first;
    };
    const products = supply(this.#market.productUses);
    const stocks = supply(this.#market.stockUses);
    const bulks = supply(this.#market.bulkUses);
    const goal = (name: keyof Goals): number => base.row(-infinite, infinite, base.goalEntries(name));
    const goals = { promised: goal('promised'), wished: goal('wished'), rest: goal('rest') };
    const first = base.rows.length;
    for (const columns of totals)
      base.row(
        -infinite,
        infinite,
        columns.map((column) => [column, 1]),
      );
    return { products, stocks, bulks, parts, goals, totals: first };
  }

  get #loanColumns(): number[] {
    const count = this.#problem.products.length + this.#problem.outlets.bulks.length;
    return Array.from({ length: count }, (_, at) => this.#loans + at);
  }

  /** Lets the relaxation borrow what no pattern known yet brings, at a price that no plan would pay. */
  borrow(open: boolean): void {
    for (const column of this.#loanColumns) this.#solver.changeColBounds(column, 0, open ? infinite : 0);
  }

  /** Least and most of a quantity that must be whole, as the day has it. */
  rangeOf(quantity: number): readonly [least: number, most: number] {
    const what = this.#quantities[quantity] as Quantity;
    return 'row' in what
      ? [-infinite, infinite]
      : [this.#base.lower[what.column] as number, this.#base.upper[what.column] as number];
  }

  limit(quantity: number, least: number, most: number): void {
    const what = this.#quantities[quantity] as Quantity;
    if ('row' in what) this.#solver.changeRowBounds(what.row, least, most);
    else this.#solver.changeColBounds(what.column, least, most);
  }

  free(quantity: number): void {
    this.limit(quantity, ...this.rangeOf(quantity));
  }

  /** How much of each quantity an answer has. */
  amounts(values: ArrayLike<number>): Float64Array {
    return Float64Array.from(this.#quantities, (what) =>
      'row' in what
        ? what.columns.reduce((sum, column) => sum + (values[column] as number), 0)
        : (values[what.column] as number),
    );
  }

  /** Worth of the relaxation over the patterns known; minus infinity where there is none. */
  glance(): number {
    const optimal = this.#run() === this.#highs.constants.modelStatus.optimal;
    return optimal ? this.#solver.getObjectiveValue() : Number.NEGATIVE_INFINITY;
  }

  #cost(): number[] {
    const base = this.#base.lower.map((_, column) =>
      goalOrder.reduce(
        (sum, goal) => sum + this.#weights[goal] * (this.#base.costs[goal][column] as number),
        0,
      ),
    );
    for (const column of this.#loanColumns) base[column] = -loanMinor;
    return [...base, ...this.#patterns.map((pattern) => this.#weights.rest * this.#labour(pattern))];
  }

  #labour({ minutes }: Pattern): number {
    return (-minutes * this.#problem.day.counter.labourMinorPerHour) / 60;
  }

  setWeights(weights: Weights): void {
    this.#weights = weights;
    const cost = this.#cost();
    this.#solver.changeColsCost({ kind: 'range', from: 0, to: cost.length - 1 }, cost);
  }

  /** No plan may fall below this on the goal, or be above `most`. */
  setFloor(goal: keyof Goals, floor: number, most = infinite): void {
    this.#floors[goal] = floor;
    this.#solver.changeRowBounds(this.#rows.goals[goal], floor, most);
  }

  #entries(pattern: Pattern): Entry[] {
    const { products, stocks, bulks, parts, goals } = this.#rows;
    return [
      [parts[pattern.classIndex]?.[pattern.node] as number, 1],
      ...[...pattern.products].map(([index, count]): Entry => [products + index, count]),
      ...[...pattern.stockKg].map(([index, kg]): Entry => [stocks + index, kg]),
      ...[...pattern.bulkKg].map(([index, kg]): Entry => [bulks + index, kg]),
      [goals.rest, this.#labour(pattern)],
    ];
  }

  /** @returns false when the pattern was there already */
  add(pattern: Pattern): boolean {
    const key = patternKey(pattern);
    if (this.#known.has(key)) return false;
    this.#known.add(key);
    this.#patterns.push(pattern);
    const entries = this.#entries(pattern).sort(([left], [right]) => left - right);
    this.#solver.addCol(this.#weights.rest * this.#labour(pattern), 0, infinite, {
      indices: entries.map(([row]) => row),
      values: entries.map(([, value]) => value),
    });
    return true;
  }

  /**
   * Solves the relaxation over the patterns known.
   * @throws NoRelaxation when nothing keeps the limits
   * @throws Error when the engine gives no answer
   */
  solve(): MasterAnswer {
    const status = this.#run();
    if (status === this.#highs.constants.modelStatus.infeasible) throw new NoRelaxation();
    if (status !== this.#highs.constants.modelStatus.optimal)
      throw new Error(`the relaxation ended with status ${status}`);
    const { rowDual, colValue, colDual } = this.#solver.getSolution();
    const { products, stocks, bulks, parts, goals } = this.#rows;
    const part = (first: number, count: number): Float64Array =>
      Float64Array.from({ length: count }, (_, at) => Math.max(0, -(rowDual[first + at] as number)));
    return {
      objective: this.#solver.getObjectiveValue(),
      values: colValue,
      losses: this.#patterns.map((_, at) => Math.abs(colDual[this.#base.columns + at] ?? 0)),
      partPrice: (classIndex, node) => rowDual[parts[classIndex]?.[node] ?? -1] ?? 0,
      prices: {
        products: part(products, this.#problem.products.length),
        stocks: part(stocks, this.#problem.outlets.stocks.length),
        bulks: part(bulks, this.#problem.outlets.bulks.length),
        minute:
          ((this.#weights.rest - (rowDual[goals.rest] as number)) *
            this.#problem.day.counter.labourMinorPerHour) /
          60,
      },
    };
  }

  /** A warm start can leave the engine at a loss; it is then asked once more from nothing. */
  #run(): number {
    this.#solver.run();
    if (this.#solver.getModelStatus() === this.#highs.constants.modelStatus.unknown) {
      this.#solver.clearSolver();
      this.#solver.run();
    }
    return this.#solver.getModelStatus();
  }

  /** What an answer reaches on each goal. */
  goalsAt(values: ArrayLike<number>): Goals {
    const sum = (goal: keyof Goals): number =>
      this.#base.costs[goal].reduce(
        (running, cost, column) => running + cost * (values[column] as number),
        0,
      );
    const labour = this.#patterns.reduce(
      (running, pattern, at) => running + this.#labour(pattern) * (values[this.#base.columns + at] ?? 0),
      0,
    );
    return { promised: sum('promised'), wished: sum('wished'), rest: sum('rest') + labour };
  }

  /**
   * The best whole plan over the patterns known, at the present weights and floors.
   * @param takes whether a pattern takes part
   * @returns undefined when none was found in time
   */
  whole(limits: MipLimits, takes: (pattern: number) => boolean = () => true): WholeAnswer | undefined {
    const model = this.#wholeModel(takes);
    const start = limits.start && Float64Array.from(model.lower, (_, at) => limits.start?.[at] ?? 0);
    const found = solveMip(this.#highs, model, this.#cost(), { ...limits, ...(start ? { start } : {}) });
    return found.values.length === 0 ? undefined : this.#read(found.values);
  }

  /** For each bar the pattern that costs least, so that every bar can be cut somehow. */
  cheapest(losses: readonly number[]): ReadonlySet<number> {
    const best = new Map<string, number>();
    this.#patterns.forEach(({ classIndex, node }, at) => {
      const known = best.get(`${classIndex}/${node}`);
      if (known === undefined || (losses[at] as number) < (losses[known] as number))
        best.set(`${classIndex}/${node}`, at);
    });
    return new Set(best.values());
  }

  #wholeModel(takes: (pattern: number) => boolean): SparseModel {
    const base = this.#base;
    const model = new SparseModel();
    base.lower.forEach((lower, column) => {
      model.column({}, lower, base.upper[column] as number, base.integer[column] as boolean);
    });
    const perRow: Entry[][] = base.rows.map(({ indices, values }) =>
      indices.map((index, at): Entry => [index, values[at] as number]),
    );
    for (const [at, pattern] of this.#patterns.entries()) {
      const units = this.#problem.classes[pattern.classIndex]?.units.length ?? 0;
      const column = model.column({}, 0, takes(at) ? units : 0, true);
      for (const [row, value] of this.#entries(pattern)) perRow[row]?.push([column, value]);
    }
    perRow.forEach((entries, row) => {
      model.row(base.rowLower[row] as number, base.rowUpper[row] as number, entries);
    });
    for (const goal of goalOrder) model.rowLower[this.#rows.goals[goal]] = this.#floors[goal];
    return model;
  }

  #read(values: Float64Array): WholeAnswer {
    const first = this.#base.columns;
    return {
      ...readWhole(this.#flow, this.#market, values),
      patterns: this.#patterns
        .map((pattern, at) => ({ pattern, count: Math.round(values[first + at] ?? 0) }))
        .filter(({ count }) => count > 0),
      goals: this.goalsAt(values),
      values,
    };
  }
}
