import type { SlaughterFact, SourceKey, Species } from '../species.ts';

/** A published or worked-out figure; the unit is in the name of the field that holds it. */
interface Figure {
  readonly value: number;
  readonly source: SourceKey;
}

/** A figure that differs from animal to animal. */
interface SpreadFigure {
  readonly mean: number;
  readonly sd: number;
  readonly source: SourceKey;
  /** where the spread comes from, when it is not printed beside the mean */
  readonly sdSource: SourceKey;
}

export interface Band {
  readonly min: number;
  readonly max: number;
  readonly source: SourceKey;
}

/** What may hang with the carcass or not. It must be known of every weight: without it a weight says little. */
interface DressingElement {
  readonly id: string;
  readonly name: string;
  /** whether it hangs with the carcass that the species' data describe */
  readonly usuallyOn: boolean;
  /** what a side loses without it: the whole of an output, or a share of a part that it covers */
  readonly takes: readonly { readonly id: string; readonly share: number; readonly source: SourceKey }[];
  /** for what is no piece of a side (the head): its weight in percent of live weight */
  readonly livePercent?: Figure;
  /** the slaughter fact it stands for */
  readonly fact?: SlaughterFact;
}

/** Points of the side by which groups of parts move for each unit of a fatness measure above its reference. */
export interface FatnessMeasure {
  readonly reference: Figure;
  readonly band: Band;
  readonly moves: readonly {
    readonly ids: readonly string[];
    readonly points: number;
    readonly source: SourceKey;
  }[];
}

/** What is known of a species beyond its tree: the way from live to cold, how animals differ, what is plausible. */
export interface YieldProfile {
  readonly speciesId: string;
  /** hot over live weight in the usual dressing */
  readonly dressingPercent: SpreadFigure;
  /** beyond this band live and hanging weight contradict each other */
  readonly dressingBand: Band;
  /** what the cooler takes of the hot weight */
  readonly coolerPercent: SpreadFigure;
  /** beyond this band a cold weight contradicts its hot weight */
  readonly coolerBand: Band;
  /** what a shop usually meets; a weight outside is questioned, not refused */
  readonly usualHangingGrams: Band;
  readonly dressing: readonly DressingElement[];
  /**
   * How alike animals are: the concentration of the Dirichlet law of each breakdown of the usual way, by part. A share
   * m then has the variance m(1 - m)/(concentration + 1).
   */
  readonly concentration: { readonly of: Readonly<Record<string, Figure>>; readonly otherwise: Figure };
  readonly lastRibFatMm?: FatnessMeasure;
  readonly leanPercent?: FatnessMeasure;
  readonly ribs: SpreadFigure;
  /** spread of a length of the carcass predicted from its weight */
  readonly lengthCvPercent: Figure;
  /** spread of the length that whole chops take up, and so of their number */
  readonly chopsCvPercent: Figure;
  /** how much farms differ from each other in the mean of their animals, percent */
  readonly betweenFarmsPercent: Readonly<Record<'share' | 'length' | 'ribs', Figure>>;
  /** spread of a live weight taken with a tape */
  readonly tapeCvPercent: Figure;
}

export interface RibChance {
  readonly ribs: number;
  readonly chance: number;
}

const normalDensity = (x: number, mean: number, sd: number): number =>
  Math.exp(-(((x - mean) / sd) ** 2) / 2);

/** How likely each number of ribs is: the normal law of the printed mean and spread, on whole ribs in the printed range. */
export function ribChances(
  species: Species,
  profile: YieldProfile,
  meanRibs: number = profile.ribs.mean,
): readonly RibChance[] {
  const counts: number[] = [];
  for (let ribs = species.ribs.min; ribs <= species.ribs.max; ribs++) counts.push(ribs);
  if (profile.ribs.sd === 0) return [{ ribs: Math.round(meanRibs), chance: 1 }];
  const densities = counts.map((ribs) => normalDensity(ribs, meanRibs, profile.ribs.sd));
  const sum = densities.reduce((running, density) => running + density, 0);
  return counts.map((ribs, at) => ({ ribs, chance: (densities[at] as number) / sum }));
}
