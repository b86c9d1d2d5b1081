import { usableUmOf, type ZoneWay } from '@flitchbook/carcass';
import { addMarket } from './market.ts';
import type {
  BarNode,
  Decision,
  ItemOut,
  Layout,
  PrimalNode,
  Problem,
  RunChoice,
  ShareChoice,
  Unit,
  UnitClass,
  UnitDecision,
} from './problem.ts';
import { shareDecision } from './share-way.ts';
import { type Entry, SparseModel } from './sparse-model.ts';
import { releasesOf } from './tree.ts';

/**
 * The plain model: what one would write first. For each unit a binary for each operation and each way of cutting a zone,
 * and a whole number of pieces for each bar, stock and portion. Exact; the twin of the decomposition in tests and benchmarks.
 */
export interface PlainModel {
  readonly model: SparseModel;
  readonly read: (values: ArrayLike<number>) => Decision;
}

interface Supply {
  readonly product: Entry[][];
  readonly stock: Entry[][];
  readonly bulk: Entry[][];
}

/** One stock of one bar: where its pieces come from and what they may be. */
interface Pool {
  readonly stock: string;
  readonly choice: RunChoice;
  readonly usableMm: Entry[];
}

class UnitModel {
  readonly #problem: Problem;
  readonly #model: SparseModel;
  readonly #supply: Supply;
  readonly #group: UnitClass;
  readonly #presence: Entry[][];
  readonly choiceColumns = new Map<number, number[]>();
  readonly wayColumns = new Map<number, { readonly way: ZoneWay; readonly column: number }[][]>();
  readonly pieceColumns = new Map<
    number,
    Map<string, { readonly product: number; readonly column: number }[]>
  >();
  readonly labelColumns = new Map<string, { readonly product: number; readonly column: number }[]>();

  constructor(problem: Problem, model: SparseModel, supply: Supply, group: UnitClass) {
    this.#problem = problem;
    this.#model = model;
    this.#supply = supply;
    this.#group = group;
    this.#presence = group.nodes.map(() => []);
  }

  /** @param takenBy column and units of the class it takes, for each share that could be cut here */
  add(takenBy: readonly Entry[]): void {
    const here = this.#model.column({}, 1, 1, false);
    this.#presence[0]?.push([here, 1], ...takenBy.map(([column, takes]): Entry => [column, -takes]));
    for (const index of [...this.#group.order].reverse()) {
      const node = this.#group.nodes[index];
      if (node?.kind === 'primal') this.#primal(node, index);
      else if (node?.kind === 'bar') this.#bar(node, index);
      else if (node?.kind === 'singles') {
        const here = this.#presence[index] as Entry[];
        for (const item of node.items) this.#makeItem(item, index, here);
        for (const child of node.opens) this.#presence[child]?.push(...here);
      }
    }
  }

  #minutesCost(minutes: number) {
    return { rest: (-minutes * this.#problem.day.counter.labourMinorPerHour) / 60 };
  }

  /** Columns add up to one when the node exists, to nought when it does not. */
  #oneOf(columns: readonly number[], index: number): void {
    const presence = (this.#presence[index] as Entry[]).map(([column, value]): Entry => [column, -value]);
    this.#model.row(0, 0, [...columns.map((column): Entry => [column, 1]), ...presence]);
  }

  #primal(node: PrimalNode, index: number): void {
    const columns = node.choices.map((choice) => {
      const column = this.#model.column(this.#minutesCost(choice.operation.minutes), 0, 1, true);
      for (const child of choice.opens) this.#presence[child]?.push([column, 1]);
      for (const { index: bulk, grams } of choice.bulks)
        this.#supply.bulk[bulk]?.push([column, grams / 1000]);
      for (const item of choice.items) this.#makeItem(item, index, [[column, 1]]);
      return column;
    });
    this.choiceColumns.set(index, columns);
    this.#oneOf(columns, index);
  }

  /** An item counts as one product; where it could be several, the model says which. */
  #makeItem(out: ItemOut, index: number, made: readonly Entry[]): void {
    if (out.products.length === 1) {
      this.#supply.product[out.products[0] as number]?.push(...made);
      return;
    }
    const key = `${index}/${out.item}`;
    const known = this.labelColumns.get(key) ?? [];
    const labels = out.products.map((product) => ({ product, column: this.#model.column({}, 0, 1, true) }));
    for (const { product, column } of labels) this.#supply.product[product]?.push([column, 1]);
    this.labelColumns.set(key, [...known, ...labels]);
    this.#model.row(0, 0, [
      ...labels.map(({ column }): Entry => [column, 1]),
      ...made.map(([column, value]): Entry => [column, -value]),
    ]);
  }

  #bar(node: BarNode, index: number): void {
    const pools = new Map<string, Pool>();
    const zones = node.zones.map((_, zone) =>
      distinctWays(node, zone).map((way) => ({ way, column: this.#way(node, index, zone, way, pools) })),
    );
    this.wayColumns.set(index, zones);
    for (const zone of zones)
      this.#oneOf(
        zone.map(({ column }) => column),
        index,
      );
    this.#forbidPairs(node, zones);
    const pieces = new Map<string, { product: number; column: number }[]>();
    for (const pool of pools.values()) pieces.set(pool.stock, this.#pool(pool));
    this.pieceColumns.set(index, pieces);
  }

  #way(node: BarNode, index: number, zone: number, way: ZoneWay, pools: Map<string, Pool>): number {
    const column = this.#model.column(
      this.#minutesCost(way.reduce((sum, stretch) => sum + stretch.manner.minutes, 0)),
      0,
      1,
      true,
    );
    const shape = shapeOf(node, zone);
    for (const stretch of way.map((entry) => ({ ...entry, zone: shape }))) {
      const choice = node.runs.find(({ run }) => run.stock === stretch.manner.stock) as RunChoice;
      const pool = pools.get(choice.run.stock) ?? { stock: choice.run.stock, choice, usableMm: [] };
      pool.usableMm.push([column, usableUmOf(stretch) / 1000]);
      pools.set(choice.run.stock, pool);
      for (const release of releasesOf(stretch)) {
        if (release.to === 'bulk') {
          const bulk = this.#problem.outlets.bulks.findIndex(
            ({ key }) => key === `${this.#group.speciesId}:${release.id}`,
          );
          this.#supply.bulk[bulk]?.push([column, release.massMg / 1_000_000]);
        } else this.#makeItem(itemOutOf(node, release.id), index, [[column, 1]]);
      }
    }
    return column;
  }

  /** A joining stock stands in one run of a bar: pairs of ways that part it are out. */
  #forbidPairs(
    node: BarNode,
    zones: readonly (readonly { readonly way: ZoneWay; readonly column: number }[])[],
  ): void {
    zones.forEach((left, at) => {
      zones.slice(at + 1).forEach((right, offset) => {
        for (const first of left) {
          for (const second of right) {
            const together = node.layouts.some(
              ({ ways }) => ways[at] === first.way && ways[at + 1 + offset] === second.way,
            );
            if (!together)
              this.#model.row(0, 1, [
                [first.column, 1],
                [second.column, 1],
              ]);
          }
        }
      });
    });
  }

  #pool({ choice, usableMm }: Pool): { product: number; column: number }[] {
    const most = Math.max(...usableMm.map(([, mm]) => mm)) + usableMm.reduce((sum, [, mm]) => sum + mm, 0);
    const pieces = choice.options.map(({ product, takesUm }) => {
      const column = this.#model.column({}, 0, Math.floor((most * 1000) / takesUm), true);
      this.#supply.product[product]?.push([column, 1]);
      return { product, column, takesMm: takesUm / 1000 };
    });
    const free = this.#model.column({}, 0, Number.POSITIVE_INFINITY, false);
    this.#supply.stock[choice.outlet]?.push([free, choice.freeGramsPerUm]);
    this.#model.row(0, 0, [
      [free, 1],
      ...pieces.map(({ column, takesMm }): Entry => [column, takesMm]),
      ...usableMm.map(([column, mm]): Entry => [column, -mm]),
    ]);
    return pieces;
  }
}

function distinctWays(node: BarNode, zone: number): readonly ZoneWay[] {
  return [...new Set(node.layouts.map(({ ways }) => ways[zone] as ZoneWay))];
}

function shapeOf(node: BarNode, zone: number) {
  const stretch = node.runs
    .flatMap(({ run }) => run.stretches)
    .find((candidate) => candidate.zone.zone.id === node.zones[zone]);
  if (!stretch) throw new Error(`no run in zone ${node.zones[zone]} of ${node.partId}`);
  return stretch.zone;
}

const itemOutOf = (node: BarNode, item: string): ItemOut =>
  node.layouts.flatMap(({ items }) => items).find((candidate) => candidate.item === item) as ItemOut;

const isOn = (values: ArrayLike<number>, column: number): boolean => (values[column] ?? 0) > 0.5;

function readBar(node: BarNode, index: number, unit: UnitModel, values: ArrayLike<number>) {
  const ways = (unit.wayColumns.get(index) ?? []).map(
    (zone) => zone.find(({ column }) => isOn(values, column))?.way,
  );
  const layout = node.layouts.findIndex((candidate) => candidate.ways.every((way, at) => way === ways[at]));
  const chosen = node.layouts[layout] as Layout | undefined;
  if (!chosen) return undefined;
  return { layout, pieces: spreadOverRuns(node, chosen, unit.pieceColumns.get(index) ?? new Map(), values) };
}

/** Pieces of a stock are counted for the bar; its runs of that stock take them in turn, longest piece first. */
function spreadOverRuns(
  node: BarNode,
  layout: Layout,
  columns: ReadonlyMap<string, readonly { readonly product: number; readonly column: number }[]>,
  values: ArrayLike<number>,
): Map<number, Map<number, number>> {
  const pieces = new Map<number, Map<number, number>>();
  for (const index of layout.runs) {
    const { run } = node.runs[index] as RunChoice;
    const counts = (columns.get(run.stock) ?? []).map(
      ({ product, column }) => [product, Math.round(values[column] ?? 0)] as const,
    );
    pieces.set(index, new Map(counts.filter(([, count]) => count > 0)));
  }
  return pieces;
}

function readUnit(
  unit: Unit,
  group: UnitClass,
  unitModel: UnitModel,
  values: ArrayLike<number>,
): UnitDecision {
  const choices = new Map<number, number>();
  const pieces = new Map<number, Map<number, Map<number, number>>>();
  group.nodes.forEach((node, index) => {
    const choice = (unitModel.choiceColumns.get(index) ?? []).findIndex((column) => isOn(values, column));
    if (node.kind === 'primal' && choice >= 0) choices.set(index, choice);
    if (node.kind !== 'bar') return;
    const bar = readBar(node, index, unitModel, values);
    if (!bar) return;
    choices.set(index, bar.layout);
    pieces.set(index, bar.pieces);
  });
  const labels = new Map<string, number>();
  group.nodes.forEach((node, index) => {
    for (const { item, products } of itemsOf(node)) {
      const labelled = (unitModel.labelColumns.get(`${index}/${item}`) ?? []).find(({ column }) =>
        isOn(values, column),
      );
      const product = labelled?.product ?? (products.length === 1 ? products[0] : undefined);
      if (product !== undefined) labels.set(`${index}/${item}`, product);
    }
  });
  return { unit, classIndex: group.index, share: null, choices, pieces, labels };
}

function itemsOf(node: UnitClass['nodes'][number]): readonly ItemOut[] {
  if (node.kind === 'singles') return node.items;
  if (node.kind === 'primal') return node.choices.flatMap(({ items }) => items);
  return node.kind === 'bar' ? node.layouts.flatMap(({ items }) => items) : [];
}

interface Seat {
  readonly choice: ShareChoice;
  readonly column: number;
  readonly units: readonly Unit[];
}

/** One binary for each place a share could be cut at: a side, or an animal with its sides and singles. */
function addSeats(problem: Problem, shareColumns: readonly number[], model: SparseModel): Seat[] {
  return problem.shares.flatMap((choice, at) => {
    const candidates = problem.classes.flatMap((group) => group.units.map((unit) => ({ unit, group })));
    const inClass = candidates.filter(
      ({ unit, group }) => choice.takes.includes(group.index) && choice.animalIds.includes(unit.animalId),
    );
    const groups =
      choice.share.size === 'half'
        ? inClass.map(({ unit }) => [unit])
        : choice.animalIds.map((animalId) =>
            inClass.filter(({ unit }) => unit.animalId === animalId).map(({ unit }) => unit),
          );
    const seats = groups.map((units): Seat => ({ choice, units, column: model.column({}, 0, 1, true) }));
    model.row(0, 0, [...seats.map(({ column }): Entry => [column, 1]), [shareColumns[at] as number, -1]]);
    return seats;
  });
}

export function buildPlain(problem: Problem): PlainModel {
  const model = new SparseModel();
  const market = addMarket(problem, model);
  const supply: Supply = {
    product: [...market.productUses],
    stock: [...market.stockUses],
    bulk: [...market.bulkUses],
  };
  const units = problem.classes.flatMap((group) => group.units.map((unit) => ({ unit, group })));
  const seats = addSeats(problem, market.shareColumns, model);
  const unitModels = units.map(({ unit, group }) => {
    const unitModel = new UnitModel(problem, model, supply, group);
    unitModel.add(seats.filter((seat) => seat.units.includes(unit)).map(({ column }): Entry => [column, 1]));
    return unitModel;
  });
  for (const entries of [...supply.product, ...supply.stock, ...supply.bulk]) {
    if (entries.length > 0) model.row(0, Number.POSITIVE_INFINITY, entries);
  }
  return {
    model,
    read: (values) => ({
      assignment: market.read(values),
      units: units.map(({ unit, group }, at) => {
        const seat = seats.find(({ column, units: seated }) => seated.includes(unit) && isOn(values, column));
        return seat
          ? shareDecision(unit, group, seat.choice.share)
          : readUnit(unit, group, unitModels[at] as UnitModel, values);
      }),
    }),
  };
}
