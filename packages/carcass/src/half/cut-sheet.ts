import type { Portion, SlaughterFact, Species } from '../species.ts';
import type { CuttingStyle } from '../take-home/cutting-style.ts';
import type { Estimate } from '../yield/estimate.ts';

/** How one side is asked to be cut. What is not said falls to the usual way: the first the tree has, stretches left whole. */
export interface CutSheet {
  /** part id to operation id */
  readonly operations: Readonly<Record<string, string>>;
  /** zone id to manner id */
  readonly manners: Readonly<Record<string, string>>;
  /** stock id to the portion that all of it is cut in */
  readonly portions: Readonly<Record<string, Portion>>;
}

/** A side that somebody may have, before it is cut. */
export interface HalfSide {
  readonly massMg: Estimate;
  /** hanging weight of the whole carcass: lengths follow from it */
  readonly carcassGrams: number;
  readonly ribs: number;
  readonly facts: readonly SlaughterFact[];
}

/** The portion of a cut of the stock that stands first, as it is usually asked for. */
function usualPortion({ cuts }: Species, stock: string): Portion | undefined {
  const cut = Object.values(cuts).find(({ sources }) =>
    sources.some(({ from, id }) => from === 'stock' && id === stock),
  );
  return cut?.usual;
}

/** The sheet of somebody who does not care: a style, each stretch in its usual portion. */
export function sheetOfStyle(species: Species, { operations, manners }: CuttingStyle): CutSheet {
  const portions = Object.keys(species.stocks).flatMap((stock) => {
    const portion = usualPortion(species, stock);
    return portion ? [[stock, portion] as const] : [];
  });
  return { operations, manners, portions: Object.fromEntries(portions) };
}
