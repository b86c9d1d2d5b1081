import { Knapsack, type KnapsackOption } from './knapsack.ts';
import { type Pattern, patternOf } from './pattern.ts';
import type { Amount, BarNode, ItemOut, OperationChoice, Problem, RunChoice, UnitClass } from './problem.ts';

/** Bid prices: what the day would pay for one more of each. Bulk and stock by the kilogram, labour by the minute. */
export interface Prices {
  readonly products: Float64Array;
  readonly stocks: Float64Array;
  readonly bulks: Float64Array;
  readonly minute: number;
}

/** What one class is worth at given prices. */
export interface ClassPrice {
  readonly group: UnitClass;
  /** the best way to cut one unit, all told */
  readonly unitValue: number;
  /** pieces of each product which that way yields */
  readonly unitProducts: () => ReadonlyMap<number, number>;
  readonly bars: readonly {
    readonly node: number;
    readonly value: number;
    readonly pattern: () => Pattern;
  }[];
}

interface PricedRun {
  readonly value: number;
  readonly knapsack: Knapsack | undefined;
  /** option index in the run for each option of the knapsack */
  readonly kept: readonly number[];
}

const add = <K>(into: Map<K, number>, key: K, amount: number): void => {
  into.set(key, (into.get(key) ?? 0) + amount);
};

/**
 * Finds, for any bid prices, the best way to cut each bar, one knapsack for like runs, and from there up the tree what a
 * unit is worth: exactly.
 */
export function priceClasses(problem: Problem, prices: Prices): readonly ClassPrice[] {
  const tables = new Map<string, PricedRun>();
  return problem.classes.map((group) => new ClassPricing(group, prices, tables).price());
}

/** The same for one class. */
export const priceClass = (group: UnitClass, prices: Prices): ClassPrice =>
  new ClassPricing(group, prices, new Map()).price();

class ClassPricing {
  readonly #group: UnitClass;
  readonly #prices: Prices;
  readonly #tables: Map<string, PricedRun>;
  readonly #values: Float64Array;
  readonly #choices: Int32Array;
  readonly #runs = new Map<number, readonly PricedRun[]>();

  constructor(group: UnitClass, prices: Prices, tables: Map<string, PricedRun>) {
    this.#group = group;
    this.#prices = prices;
    this.#tables = tables;
    this.#values = new Float64Array(group.nodes.length);
    this.#choices = new Int32Array(group.nodes.length);
  }

  price(): ClassPrice {
    for (const index of this.#group.order) {
      const node = this.#group.nodes[index];
      if (node?.kind === 'primal') this.#bestOf(index, node.choices, (choice) => this.#choiceValue(choice));
      else if (node?.kind === 'bar') this.#barValue(node, index);
      else if (node?.kind === 'singles')
        this.#values[index] = node.opens.reduce(
          (sum, child) => sum + (this.#values[child] as number),
          this.#itemsValue(node.items),
        );
    }
    return {
      group: this.#group,
      unitValue: this.#values[0] as number,
      unitProducts: () => this.#unitProducts(),
      bars: this.#group.nodes.flatMap((node, index) =>
        node.kind === 'bar'
          ? [
              {
                node: index,
                value: this.#values[index] as number,
                pattern: () => this.#pattern(node, index),
              },
            ]
          : [],
      ),
    };
  }

  #bestOf<T>(index: number, choices: readonly T[], worthOf: (choice: T) => number): void {
    let top = Number.NEGATIVE_INFINITY;
    for (let at = 0; at < choices.length; at++) {
      const value = worthOf(choices[at] as T);
      if (value > top) {
        top = value;
        this.#choices[index] = at;
      }
    }
    this.#values[index] = top;
  }

  #choiceValue(choice: OperationChoice): number {
    let value =
      this.#itemsValue(choice.items) +
      this.#bulkValue(choice.bulks) -
      choice.operation.minutes * this.#prices.minute;
    for (const child of choice.opens) value += this.#values[child] as number;
    return value;
  }

  #itemsValue(items: readonly ItemOut[]): number {
    let value = 0;
    for (const item of items) value += this.#prices.products[this.#label(item)] as number;
    return value;
  }

  #label({ products }: ItemOut): number {
    let label = products[0] as number;
    for (const product of products)
      if ((this.#prices.products[product] as number) > (this.#prices.products[label] as number))
        label = product;
    return label;
  }

  #bulkValue(bulks: readonly Amount[]): number {
    let value = 0;
    for (const { index, grams } of bulks) value += ((this.#prices.bulks[index] as number) * grams) / 1000;
    return value;
  }

  #barValue(node: BarNode, index: number): void {
    const runs = node.runs.map((run) => this.#priceRun(run));
    this.#runs.set(index, runs);
    this.#bestOf(index, node.layouts, (layout) => {
      let value =
        this.#itemsValue(layout.items) + this.#bulkValue(layout.bulks) - layout.minutes * this.#prices.minute;
      for (const run of layout.runs) value += (runs[run] as PricedRun).value;
      return value;
    });
  }

  #priceRun(choice: RunChoice): PricedRun {
    const freePerUm = ((this.#prices.stocks[choice.outlet] as number) * choice.freeGramsPerUm) / 1000;
    const key = `${choice.tableKey}@${freePerUm}`;
    const known = this.#tables.get(key);
    const priced = known ?? this.#table(choice, freePerUm);
    if (!known) this.#tables.set(key, priced);
    return {
      ...priced,
      value: freePerUm * choice.run.usableUm + (priced.knapsack?.fill(choice.run.usableUm).worth ?? 0),
    };
  }

  #table(choice: RunChoice, freePerUm: number): PricedRun {
    const kept: number[] = [];
    const options: KnapsackOption[] = [];
    choice.options.forEach(({ product, takesUm }, at) => {
      const worth = (this.#prices.products[product] as number) - freePerUm * takesUm;
      if (worth <= 1e-9) return;
      kept.push(at);
      options.push({ takes: takesUm, worth });
    });
    return { value: 0, knapsack: kept.length === 0 ? undefined : new Knapsack(options), kept };
  }

  #pattern(node: BarNode, index: number): Pattern {
    const layout = this.#choices[index] as number;
    const { items, runs } = node.layouts[layout] as BarNode['layouts'][number];
    return patternOf(node, {
      classIndex: this.#group.index,
      node: index,
      layout,
      pieces: new Map(runs.map((at) => [at, this.#pieces(node.runs[at] as RunChoice, index, at)])),
      labels: new Map(items.map((item) => [`${index}/${item.item}`, this.#label(item)])),
    });
  }

  #unitProducts(): Map<number, number> {
    const products = new Map<number, number>();
    const open = [0];
    for (let index = open.pop(); index !== undefined; index = open.pop()) {
      const node = this.#group.nodes[index];
      if (node?.kind === 'singles') {
        for (const item of node.items) add(products, this.#label(item), 1);
        open.push(...node.opens);
      }
      if (node?.kind === 'bar')
        for (const [product, count] of this.#pattern(node, index).products) add(products, product, count);
      if (node?.kind === 'primal') {
        const choice = node.choices[this.#choices[index] as number] as OperationChoice;
        for (const item of choice.items) add(products, this.#label(item), 1);
        open.push(...choice.opens);
      }
    }
    return products;
  }

  #pieces({ run, options }: RunChoice, index: number, at: number): ReadonlyMap<number, number> {
    const { knapsack, kept } = (this.#runs.get(index) as readonly PricedRun[])[at] as PricedRun;
    const counts = knapsack?.fill(run.usableUm).counts ?? [];
    return new Map(
      counts.flatMap((count, option) =>
        count === 0
          ? []
          : [[(options[kept[option] as number] as RunChoice['options'][number]).product, count]],
      ),
    );
  }
}
