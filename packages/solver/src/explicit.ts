import type { Goals } from '@flitchbook/plan';
import { Flow } from './flow.ts';
import { addMarket } from './market.ts';
import type { BarNode, BarWay, Problem, RunChoice, UnitClass } from './problem.ts';
import { readWhole, type Whole } from './read-whole.ts';
import { type Entry, goalOrder, SparseModel } from './sparse-model.ts';

const infinite = Number.POSITIVE_INFINITY;

/**
 * Everything said out loud: a column for each operation and each layout of a class, and a number of pieces for each bar,
 * stock and portion. Where a class has several units their bars are measured as one, so that it promises at least as much
 * as the units can give: its optimum bounds theirs. Where every class has one unit it is exact.
 */
export interface ExplicitModel {
  readonly model: SparseModel;
  /** rows that add up each goal */
  readonly goalRows: Readonly<Record<keyof Goals, number>>;
  /** @throws Error when a class has several units */
  readonly read: (values: ArrayLike<number>) => Whole;
}

interface PieceColumn {
  readonly product: number;
  readonly column: number;
}

/** One stock of one bar: what cuts it, and the portions that may come of it. */
interface Pool {
  /** the longest run: what fits none fits no other */
  longest: RunChoice;
  readonly usableMm: Entry[];
}

interface BarColumns {
  readonly group: UnitClass;
  readonly index: number;
  readonly node: BarNode;
  readonly layouts: readonly number[];
  readonly pieces: ReadonlyMap<string, readonly PieceColumn[]>;
}

class ExplicitBuilder {
  readonly #problem: Problem;
  readonly #wholePieces: boolean;
  readonly model = new SparseModel();
  readonly market;
  readonly flow;
  readonly bars: BarColumns[] = [];

  constructor(problem: Problem, wholePieces: boolean) {
    this.#problem = problem;
    this.#wholePieces = wholePieces;
    this.market = addMarket(problem, this.model, true);
    this.flow = new Flow(problem, this.model, this.market);
    for (const group of problem.classes) {
      group.nodes.forEach((node, index) => {
        if (node.kind === 'bar') this.#bar(group, index, node);
        else if (node.kind === 'primal')
          this.flow.balance(group, index, this.flow.choiceColumns[group.index]?.[index] ?? []);
      });
    }
    const { productUses, stockUses, bulkUses } = this.market;
    for (const entries of [...productUses, ...stockUses, ...bulkUses])
      if (entries.length > 0) this.model.row(0, infinite, entries);
  }

  #bar(group: UnitClass, index: number, node: BarNode): void {
    const perMinute = this.#problem.day.counter.labourMinorPerHour / 60;
    const pools = new Map<string, Pool>();
    const made = new Map<string, Entry[]>();
    const layouts = node.layouts.map(({ minutes, runs, items, bulks }) => {
      const column = this.model.column({ rest: -minutes * perMinute }, 0, group.units.length, true);
      for (const run of runs) this.#measure(node.runs[run] as RunChoice, column, pools);
      for (const { item } of items) made.set(item, [...(made.get(item) ?? []), [column, 1]]);
      for (const bulk of bulks) this.market.bulkUses[bulk.index]?.push([column, bulk.grams / 1000]);
      return column;
    });
    for (const [item, entries] of made) {
      const out = node.layouts.flatMap(({ items }) => items).find((candidate) => candidate.item === item);
      if (out) this.flow.makeItem(group, index, out, entries);
    }
    this.flow.balance(group, index, layouts);
    const pieces = new Map<string, readonly PieceColumn[]>();
    for (const [stock, pool] of pools) pieces.set(stock, this.#pieces(group, pool));
    this.bars.push({ group, index, node, layouts, pieces });
  }

  #measure(choice: RunChoice, layout: number, pools: Map<string, Pool>): void {
    const { stock, usableUm } = choice.run;
    const pool = pools.get(stock) ?? { longest: choice, usableMm: [] };
    pool.usableMm.push([layout, usableUm / 1000]);
    if (usableUm > pool.longest.run.usableUm) pool.longest = choice;
    pools.set(stock, pool);
  }

  #pieces(group: UnitClass, { longest, usableMm }: Pool): readonly PieceColumn[] {
    const free = this.model.column({}, 0, infinite, false);
    this.market.stockUses[longest.outlet]?.push([free, longest.freeGramsPerUm]);
    const row: Entry[] = [[free, 1], ...usableMm.map(([column, mm]): Entry => [column, -mm])];
    const pieces = longest.options.map(({ product, takesUm }) => {
      const most = group.units.length * Math.floor(longest.run.usableUm / takesUm);
      const column = this.model.column({}, 0, most, this.#wholePieces);
      this.market.productUses[product]?.push([column, 1]);
      row.push([column, takesUm / 1000]);
      return { product, column };
    });
    this.model.row(0, 0, row);
    return pieces;
  }
}

function readBar(
  { group, index, node, layouts, pieces }: BarColumns,
  whole: Whole,
  values: ArrayLike<number>,
) {
  const layout = layouts.findIndex((column) => (values[column] ?? 0) > 0.5);
  const laid = new Map<number, ReadonlyMap<number, number>>();
  for (const run of node.layouts[layout]?.runs ?? []) {
    const columns = pieces.get((node.runs[run] as RunChoice).run.stock) ?? [];
    const counts = columns.map(({ product, column }) => [product, Math.round(values[column] ?? 0)] as const);
    laid.set(run, new Map(counts.filter(([, count]) => count > 0)));
  }
  const labels = new Map<string, number>();
  for (const { item, products } of node.layouts[layout]?.items ?? []) {
    const key = `${index}/${item}`;
    const product = products.length === 1 ? products[0] : whole.labels[group.index]?.get(key)?.[0];
    if (product !== undefined) labels.set(key, product);
  }
  const pattern: BarWay = { classIndex: group.index, node: index, layout, pieces: laid, labels };
  return { pattern, count: layout < 0 ? 0 : 1 };
}

/** @param wholePieces pieces are whole numbers; without it the model is quicker and bounds a little less tightly */
export function buildExplicit(problem: Problem, wholePieces: boolean): ExplicitModel {
  const { model, market, flow, bars } = new ExplicitBuilder(problem, wholePieces);
  const goal = (name: keyof Goals): number => model.row(-infinite, infinite, model.goalEntries(name));
  const goalRows = { promised: goal('promised'), wished: goal('wished'), rest: goal('rest') };
  return {
    model,
    goalRows,
    read: (values) => {
      if (problem.classes.some(({ units }) => units.length > 1))
        throw new Error('units of one class have to be told apart before they can be read');
      const goals = { promised: 0, wished: 0, rest: 0 };
      for (const each of goalOrder)
        goals[each] = model.costs[each].reduce((sum, cost, at) => sum + cost * (values[at] ?? 0), 0);
      const whole = { ...readWhole(flow, market, values), goals, patterns: [] };
      return { ...whole, patterns: bars.map((bar) => readBar(bar, whole, values)) };
    },
  };
}
