import { gramsIn, type Ratio, ratio, roundHalfUp, times } from '@flitchbook/carcass';
import { type Caution, cautions } from '../cautions.ts';
import { FaultList, type KitchenFault } from '../faults.ts';

const whole = 1_000_000;

/** Lard from a kind of fat, millionths. */
export interface RenderYield {
  readonly kind: string;
  readonly leastPpm: number;
  readonly mostPpm: number;
  readonly source: string;
  readonly standing: 'second-hand' | 'practice';
}

const practice = 'Common practice, no published source';

/** Where a shop starts; its own scale replaces them. */
export const usualRenderYields: readonly RenderYield[] = [
  {
    kind: 'leaf-fat',
    leastPpm: 839_000,
    mostPpm: 950_000,
    source: `Home record: 7 lb gave 94 oz, 83.9 %; up to 95 %: ${practice}`,
    standing: 'second-hand',
  },
  {
    kind: 'back-fat',
    leastPpm: 720_000,
    mostPpm: 850_000,
    source: `Producer’s page: ground leaf and back fat, 72 %; up to 85 %: ${practice}`,
    standing: 'second-hand',
  },
  {
    kind: 'fat-trim',
    leastPpm: 500_000,
    mostPpm: 700_000,
    source: `Forum: 10 lb gave about 5 lb; up to 70 %: ${practice}`,
    standing: 'second-hand',
  },
];

export interface LardBatch {
  /** leaf lard only from leaf fat alone: 9 CFR 319.702 */
  readonly name: 'Leaf lard' | 'Lard';
  readonly fatMg: number;
  readonly leastMg: number;
  readonly mostMg: number;
  readonly sources: readonly string[];
  readonly cautions: readonly Caution[];
}

/** What a kettle of fat gives, as a range. */
export function renderLard(
  fats: readonly { readonly kind: string; readonly massMg: number }[],
  yields: readonly RenderYield[] = usualRenderYields,
): LardBatch | { readonly faults: readonly KitchenFault[] } {
  const list = new FaultList();
  list.need(fats.length > 0, 'fats', fats, 'must name what goes into the kettle');
  const rows = fats.flatMap(({ kind, massMg }, index) => {
    list.whole(`fats[${index}].massMg`, massMg, 1, 10_000_000_000);
    const found = yields.find((entry) => entry.kind === kind);
    list.need(
      found !== undefined,
      `fats[${index}].kind`,
      kind,
      `has no yield: known are ${yields.map((entry) => entry.kind).join(', ')}`,
    );
    return found ? [{ massMg, found }] : [];
  });
  if (list.faults.length > 0) return { faults: list.faults };
  const sum = (share: (row: RenderYield) => number): number =>
    rows.reduce((total, { massMg, found }) => total + Math.round((massMg * share(found)) / whole), 0);
  return {
    name: fats.every(({ kind }) => kind === 'leaf-fat') ? 'Leaf lard' : 'Lard',
    fatMg: sum(() => whole),
    leastMg: sum(({ leastPpm }) => leastPpm),
    mostMg: sum(({ mostPpm }) => mostPpm),
    sources: [...new Set(rows.map(({ found }) => found.source))],
    cautions: [cautions.lard],
  };
}

const millilitresPerGallon = ratio(3_785_411_784, 1_000_000);
const bonesPerGallon: Ratio = times(ratio(8000), gramsIn.lb);

/**
 * Finished stock, millilitres, from bones in milligrams: 8 lb of bones, 5 to 6 quarts of water and 1 lb of vegetables give
 * one US gallon (ratio guide of a culinary school).
 * @throws RangeError unless whole and 0 or more
 */
export function stockFrom(bonesMg: number): number {
  if (!Number.isSafeInteger(bonesMg) || bonesMg < 0)
    throw new RangeError(`bonesMg must be a whole number of 0 or more, got ${bonesMg}`);
  return roundHalfUp(
    times(times(ratio(bonesMg), millilitresPerGallon), ratio(bonesPerGallon.under, bonesPerGallon.over)),
  );
}
