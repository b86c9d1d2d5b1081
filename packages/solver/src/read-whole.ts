import type { Goals } from '@flitchbook/plan';
import type { Flow } from './flow.ts';
import type { Market } from './market.ts';
import type {
  Assignment,
  BarWay,
  Decision,
  ItemOut,
  PrimalNode,
  Problem,
  ShareChoice,
  Unit,
  UnitClass,
  UnitDecision,
} from './problem.ts';
import { shareDecision } from './share-way.ts';

/** A whole plan before it is handed out to the units: what the units of each class do, taken together. */
export interface Whole {
  readonly goals: Goals;
  /** units that take each operation, by class, node and choice */
  readonly choices: readonly (readonly (readonly number[])[])[];
  readonly patterns: readonly { readonly pattern: BarWay; readonly count: number }[];
  /** for items that could count as several products: one product for each item made, by class, then "node/item" */
  readonly labels: readonly ReadonlyMap<string, readonly number[]>[];
  /** how often each share choice is taken */
  readonly shares: readonly number[];
  readonly assignment: Assignment;
}

/** What an answer of the engine says of operations, labels, shares and lines. */
export function readWhole(
  flow: Flow,
  market: Market,
  values: ArrayLike<number>,
): Pick<Whole, 'choices' | 'labels' | 'shares' | 'assignment'> {
  const count = (column: number): number => Math.round(values[column] ?? 0);
  const labels = flow.choiceColumns.map(() => new Map<string, number[]>());
  for (const { classIndex, key, product, column } of flow.labels) {
    const mine = labels[classIndex];
    mine?.set(key, [...(mine.get(key) ?? []), ...Array<number>(count(column)).fill(product)]);
  }
  return {
    choices: flow.choiceColumns.map((nodes) => nodes.map((columns) => columns.map(count))),
    labels,
    shares: market.shareColumns.map(count),
    assignment: market.read(values),
  };
}

/** Units of each class that nothing has been decided for. */
class FreeUnits {
  readonly #free: Unit[][];

  constructor(problem: Problem) {
    this.#free = problem.classes.map((group) => [...group.units]);
  }

  take(classIndex: number, animalId: string | undefined): Unit {
    const queue = this.#free[classIndex] as Unit[];
    const at = animalId === undefined ? 0 : queue.findIndex((unit) => unit.animalId === animalId);
    const [unit] = queue.splice(at, 1);
    if (!unit) throw new Error(`class ${classIndex} has no unit left`);
    return unit;
  }

  left(classIndex: number): readonly Unit[] {
    return this.#free[classIndex] as Unit[];
  }

  /** First animal that still has every unit the share takes. */
  animalFor({ takes, animalIds }: ShareChoice): string | undefined {
    const has = (animalId: string, classIndex: number): number =>
      this.left(classIndex).filter((unit) => unit.animalId === animalId).length;
    return animalIds.find((animalId) =>
      takes.every((index) => has(animalId, index) >= takes.filter((other) => other === index).length),
    );
  }
}

/** Whole animals first: halves fit in anywhere. */
function placeShares(problem: Problem, counts: readonly number[], free: FreeUnits): UnitDecision[] {
  const order = problem.shares
    .map((_, at) => at)
    .sort(
      (left, right) => (problem.shares[right]?.takes.length ?? 0) - (problem.shares[left]?.takes.length ?? 0),
    );
  return order.flatMap((at) => {
    const choice = problem.shares[at] as ShareChoice;
    return Array.from({ length: counts[at] ?? 0 }).flatMap(() => {
      const animalId = free.animalFor(choice);
      return choice.takes.map((index) =>
        shareDecision(free.take(index, animalId), problem.classes[index] as UnitClass, choice.share),
      );
    });
  });
}

/** Hands the ways of one class to its units. Which unit gets which is all the same: the units are alike. */
class ClassHandOut {
  readonly #group: UnitClass;
  readonly #choices: number[][];
  readonly #labels: Map<string, number[]>;
  readonly #bars = new Map<number, BarWay[]>();

  constructor(group: UnitClass, whole: Whole) {
    this.#group = group;
    this.#choices = (whole.choices[group.index] ?? []).map((counts) => [...counts]);
    this.#labels = new Map([...(whole.labels[group.index] ?? [])].map(([key, list]) => [key, [...list]]));
    for (const { pattern, count } of whole.patterns) {
      if (pattern.classIndex !== group.index) continue;
      const known = this.#bars.get(pattern.node) ?? [];
      this.#bars.set(pattern.node, [...known, ...Array<BarWay>(count).fill(pattern)]);
    }
  }

  give(unit: Unit): UnitDecision {
    const choices = new Map<number, number>();
    const pieces = new Map<number, BarWay['pieces']>();
    const labels = new Map<string, number>();
    const open = [0];
    for (let index = open.pop(); index !== undefined; index = open.pop()) {
      const node = this.#group.nodes[index];
      if (node?.kind === 'primal') {
        const at = this.#takeChoice(index);
        const choice = node.choices[at] as PrimalNode['choices'][number];
        choices.set(index, at);
        for (const item of choice.items) this.#label(index, item, labels);
        open.push(...choice.opens);
      } else if (node?.kind === 'bar') {
        const way = this.#bars.get(index)?.shift();
        if (!way) throw new Error(`no way left to cut ${node.partId}`);
        choices.set(index, way.layout);
        pieces.set(index, way.pieces);
        for (const [key, product] of way.labels) labels.set(key, product);
      } else if (node?.kind === 'singles') {
        for (const item of node.items) this.#label(index, item, labels);
        open.push(...node.opens);
      }
    }
    return { unit, classIndex: this.#group.index, share: null, choices, pieces, labels };
  }

  #takeChoice(index: number): number {
    const counts = this.#choices[index] as number[];
    const at = counts.findIndex((count) => count > 0);
    if (at < 0) throw new Error(`no operation left for node ${index} of class ${this.#group.index}`);
    counts[at] = (counts[at] as number) - 1;
    return at;
  }

  #label(index: number, { item, products }: ItemOut, labels: Map<string, number>): void {
    const key = `${index}/${item}`;
    const product = products.length === 1 ? products[0] : this.#labels.get(key)?.shift();
    if (product !== undefined) labels.set(key, product);
  }
}

/** Hands a whole plan out to the units, in the order of the day. */
export function handOut(problem: Problem, whole: Whole): Decision {
  const free = new FreeUnits(problem);
  const units = placeShares(problem, whole.shares, free);
  for (const group of problem.classes) {
    const ways = new ClassHandOut(group, whole);
    units.push(...free.left(group.index).map((unit) => ways.give(unit)));
  }
  const order = new Map(
    problem.day.animals
      .flatMap((animal) => [...animal.sides.map((side) => side.sideId), animal.animalId])
      .map((unitId, at) => [unitId, at] as const),
  );
  units.sort((left, right) => (order.get(left.unit.unitId) ?? 0) - (order.get(right.unit.unitId) ?? 0));
  return { units, assignment: whole.assignment };
}
