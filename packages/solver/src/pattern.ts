import type { BarNode, BarWay, RunChoice } from './problem.ts';

/** A way to cut one bar of a class from end to end, and what it yields. */
export interface Pattern extends BarWay {
  readonly products: ReadonlyMap<number, number>;
  readonly stockKg: ReadonlyMap<number, number>;
  readonly bulkKg: ReadonlyMap<number, number>;
  readonly minutes: number;
}

const add = (into: Map<number, number>, key: number, amount: number): void => {
  into.set(key, (into.get(key) ?? 0) + amount);
};

/** Adds up what a way to cut a bar yields. */
export function patternOf(node: BarNode, way: BarWay): Pattern {
  const { runs, bulks, minutes } = node.layouts[way.layout] as BarNode['layouts'][number];
  const products = new Map<number, number>();
  const stockKg = new Map<number, number>();
  const bulkKg = new Map<number, number>();
  for (const product of way.labels.values()) add(products, product, 1);
  for (const { index, grams } of bulks) add(bulkKg, index, grams / 1000);
  for (const at of runs) {
    const { run, options, outlet, freeGramsPerUm } = node.runs[at] as RunChoice;
    let freeUm = run.usableUm;
    for (const [product, count] of way.pieces.get(at) ?? []) {
      add(products, product, count);
      freeUm -= count * (options.find((option) => option.product === product)?.takesUm ?? 0);
    }
    add(stockKg, outlet, (freeUm * freeGramsPerUm) / 1000);
  }
  return { ...way, products, stockKg, bulkKg, minutes };
}

/** Two patterns with one key are the same way of cutting. */
export function patternKey({ classIndex, node, layout, labels, pieces }: BarWay): string {
  const runs = [...pieces].map(([run, counts]) => [run, [...counts].sort(([left], [right]) => left - right)]);
  return JSON.stringify([classIndex, node, layout, [...labels], runs]);
}
