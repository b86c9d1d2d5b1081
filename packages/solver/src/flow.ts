import type { Market } from './market.ts';
import type { ItemOut, PrimalNode, Problem, UnitClass } from './problem.ts';
import type { Entry, SparseModel } from './sparse-model.ts';

const infinite = Number.POSITIVE_INFINITY;

/** A column that says as which of several products an item counts. */
export interface Label {
  readonly classIndex: number;
  /** "node/item" */
  readonly key: string;
  readonly product: number;
  readonly column: number;
}

/**
 * The side of the model that gives: how many units of each class go which way down their tree. Operations are columns;
 * how a bar is cut is left to the form of the model that is built on it.
 */
export class Flow {
  readonly #problem: Problem;
  readonly #model: SparseModel;
  readonly #market: Market;
  readonly #presence: readonly (readonly Entry[][])[];
  readonly #labels: Label[] = [];
  /** column of each operation, by class, node and choice */
  readonly choiceColumns: readonly number[][][];

  constructor(problem: Problem, model: SparseModel, market: Market) {
    this.#problem = problem;
    this.#model = model;
    this.#market = market;
    this.#presence = problem.classes.map((group) => group.nodes.map((): Entry[] => []));
    this.choiceColumns = problem.classes.map((group) => group.nodes.map((): number[] => []));
    for (const group of problem.classes) this.#open(group);
  }

  get labels(): readonly Label[] {
    return this.#labels;
  }

  #open(group: UnitClass): void {
    const units = group.units.length;
    const root = this.#presence[group.index]?.[0] as Entry[];
    root.push([this.#model.column({}, units, units, false), 1]);
    this.#problem.shares.forEach(({ takes }, at) => {
      const taken = takes.filter((index) => index === group.index).length;
      if (taken > 0) root.push([this.#market.shareColumns[at] as number, -taken]);
    });
    for (const index of group.order.toReversed()) {
      const node = group.nodes[index];
      if (node?.kind === 'primal') this.#operate(group, index, node);
      if (node?.kind === 'singles') {
        const here = this.presenceOf(group, index);
        for (const item of node.items) this.makeItem(group, index, item, here);
        for (const child of node.opens) this.#presence[group.index]?.[child]?.push(...here);
      }
    }
  }

  #operate(group: UnitClass, index: number, node: PrimalNode): void {
    const perMinute = this.#problem.day.counter.labourMinorPerHour / 60;
    for (const { operation, opens, bulks, items } of node.choices) {
      // No upper bound: it would take a share of the part's price.
      const column = this.#model.column({ rest: -operation.minutes * perMinute }, 0, infinite, true);
      this.choiceColumns[group.index]?.[index]?.push(column);
      for (const child of opens) this.#presence[group.index]?.[child]?.push([column, 1]);
      for (const bulk of bulks) this.#market.bulkUses[bulk.index]?.push([column, bulk.grams / 1000]);
      for (const item of items) this.makeItem(group, index, item, [[column, 1]]);
    }
  }

  /** For each operation of each part: its columns in all classes. */
  totals(): readonly (readonly number[])[] {
    const columns = new Map<string, number[]>();
    for (const { index: classIndex, speciesId, nodes } of this.#problem.classes) {
      nodes.forEach((node, index) => {
        if (node.kind !== 'primal' || node.choices.length < 2) return;
        node.choices.forEach(({ operation }, at) => {
          const key = `${speciesId}/${node.partId}/${operation.id}`;
          const column = this.choiceColumns[classIndex]?.[index]?.[at] as number;
          columns.set(key, [...(columns.get(key) ?? []), column]);
        });
      });
    }
    return [...columns.values()];
  }

  /** What makes a part exist, and how often. */
  presenceOf(group: UnitClass, index: number): readonly Entry[] {
    return this.#presence[group.index]?.[index] ?? [];
  }

  /** An item counts as one product; where it could be several, the model says which. */
  makeItem(group: UnitClass, index: number, { item, products }: ItemOut, made: readonly Entry[]): void {
    if (products.length === 1) {
      this.#market.productUses[products[0] as number]?.push(...made);
      return;
    }
    const columns = products.map((product) => {
      const column = this.#model.column({}, 0, infinite, true);
      this.#market.productUses[product]?.push([column, 1]);
      this.#labels.push({ classIndex: group.index, key: `${index}/${item}`, product, column });
      return column;
    });
    this.#model.row(0, 0, [
      ...columns.map((column): Entry => [column, 1]),
      ...made.map(([column, value]): Entry => [column, -value]),
    ]);
  }

  /**
   * A part is broken down as often as it is made.
   * @returns the row; ways to cut a bar are entered with 1
   */
  balance(group: UnitClass, index: number, ways: readonly number[]): number {
    return this.#model.row(0, 0, [
      ...ways.map((column): Entry => [column, 1]),
      ...this.presenceOf(group, index).map(([column, value]): Entry => [column, -value]),
    ]);
  }
}
