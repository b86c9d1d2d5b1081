import type { Cut, CutSource, Item, Portion, PortionRule, Stock } from './species.ts';

/** A piece or a stretch with what it brings over the counter, minor units a kilogram: an invented default. */
export const piece = (id: string, name: string, worthMinorPerKg: number): Item & Stock => ({
  id,
  name,
  worthMinorPerKg,
});

export const ribsOf = (min: number, max: number): PortionRule => ({ by: 'ribs', min, max });

interface Wish {
  readonly stocks: readonly string[];
  readonly portions: readonly PortionRule[];
  readonly usual: Portion;
  readonly bothSides?: true;
}

/** A cut portioned from stretches of a bar. */
export const fromStocks = (id: string, name: string, says: string, { stocks, ...wish }: Wish): Cut => ({
  id,
  name,
  says,
  sources: stocks.map((stock): CutSource => ({ from: 'stock', id: stock })),
  ...wish,
});

/** Slices from half an inch to two and a half. */
export const slices = (id: string, name: string, says: string, stocks: readonly string[], um: number): Cut =>
  fromStocks(id, name, says, {
    stocks,
    portions: [{ by: 'thickness', minUm: 12_700, maxUm: 63_500 }],
    usual: { by: 'thickness', um },
  });

/** Joints of a weight. */
export const joints = (
  id: string,
  name: string,
  says: string,
  stocks: readonly string[],
  [fromGrams, toGrams]: readonly [number, number],
): Cut =>
  fromStocks(id, name, says, {
    stocks,
    portions: [{ by: 'weight', minGrams: Math.round(fromGrams / 3), maxGrams: toGrams * 5 }],
    usual: { by: 'weight', fromGrams, toGrams },
  });

/** Pieces that leave whole, each a cut of its own name. */
export const wholeCuts = (
  items: readonly Item[],
  says: Readonly<Record<string, string>> = {},
): readonly Cut[] =>
  items.map(({ id, name }) => ({
    id,
    name,
    says: says[id] ?? 'Sold as one piece.',
    sources: [{ from: 'item', id }],
    portions: [{ by: 'whole' }],
    usual: { by: 'whole' },
  }));

/** Loose meat, fat or bone by weight from the pool of the day. */
export const looseCut = (id: string, name: string, says: string, bulk: string): Cut => ({
  id,
  name,
  says,
  sources: [{ from: 'bulk', id: bulk }],
  portions: [{ by: 'bulk' }],
  usual: { by: 'bulk' },
});
