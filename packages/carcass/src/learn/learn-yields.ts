import type { Species } from '../species.ts';
import type { Breakdown } from '../yield/breakdown.ts';
import type { YieldBelief } from '../yield/expect-shares.ts';
import type { KnownFault } from '../yield/known-carcass.ts';
import type { YieldProfile } from '../yield/yield-profile.ts';
import { explainFigure } from './explain-figure.ts';
import { checkMeasured, insidesOf, type MeasuredSide } from './measured-side.ts';
import { type FarmReadings, type PooledFigure, poolReadings } from './pool-readings.ts';
import { type SideReading, sideReadings } from './side-readings.ts';

/** One thing learned, with the reason for it. */
export interface LearnedFigure {
  readonly kind: SideReading['kind'];
  /** id of a part, an item or a bulk; "lengths"; "ribs" */
  readonly id: string;
  readonly name: string;
  /** over what is published; of ribs their number */
  readonly value: number;
  /** `value` lies between them with nine chances in ten */
  readonly low: number;
  readonly high: number;
  readonly sides: number;
  readonly setAside: number;
  readonly says: string;
}

/** What is believed of a farm's animals, and why. */
export interface FarmFigures {
  /** null: any farm that nothing was weighed of */
  readonly farm: string | null;
  readonly belief: YieldBelief;
  readonly figures: readonly LearnedFigure[];
}

interface RefusedSide {
  readonly sideId: string;
  readonly faults: readonly KnownFault[];
}

export interface Learned {
  readonly shop: FarmFigures;
  readonly farms: readonly FarmFigures[];
  /** sides that taught nothing, and why */
  readonly refused: readonly RefusedSide[];
}

const twoSided = 1.6449;
/** No farm is believed to be further than this from what is published, whatever was weighed. */
const farthest = Math.log(2);

interface Entry {
  readonly kind: SideReading['kind'];
  readonly id: string;
  readonly pooled: PooledFigure;
}

const betweenSd = (profile: YieldProfile, kind: SideReading['kind']): number =>
  profile.betweenFarmsPercent[kind].value / 100;

function nameOf(species: Species, { kind, id }: Entry): string {
  if (kind !== 'share') return kind === 'ribs' ? 'Ribs' : 'Lengths';
  return (species.parts[id] ?? species.items[id] ?? species.bulks[id])?.name ?? id;
}

function figuresOf(species: Species, profile: YieldProfile, farm: string | null, entries: readonly Entry[]) {
  return entries.map((entry): LearnedFigure => {
    const { kind, id, pooled } = entry;
    const base = kind === 'ribs' ? profile.ribs.mean : 1;
    const at = (log: number): number => base * Math.exp(Math.max(-farthest, Math.min(farthest, log)));
    const figure = {
      kind,
      id,
      name: nameOf(species, entry),
      value: at(pooled.log),
      low: at(pooled.log - twoSided * pooled.sd),
      high: at(pooled.log + twoSided * pooled.sd),
      sides: pooled.used,
      setAside: pooled.setAside,
    };
    return { ...figure, says: explainFigure(figure, farm) };
  });
}

function beliefOf(figures: readonly LearnedFigure[]): YieldBelief {
  const shares = figures.filter(({ kind }) => kind === 'share').map(({ id, value }) => [id, value] as const);
  const ribs = figures.find(({ kind }) => kind === 'ribs')?.value;
  return {
    shares: Object.fromEntries(shares),
    lengths: figures.find(({ kind }) => kind === 'length')?.value ?? 1,
    ...(ribs === undefined ? {} : { ribs }),
  };
}

function grouped(readings: readonly SideReading[], keyOf: (reading: SideReading) => string) {
  const groups = new Map<string, SideReading[]>();
  for (const reading of readings) {
    const key = keyOf(reading);
    const group = groups.get(key);
    if (group) group.push(reading);
    else groups.set(key, [reading]);
  }
  return groups;
}

const byFarm = (readings: readonly SideReading[]): FarmReadings[] =>
  [...grouped(readings, ({ farm }) => farm)].map(([farm, own]) => ({ farm, readings: own }));

/**
 * Learns a shop's own figures of a species: each is pulled from what is published to what was weighed, by farm and by
 * shop, the more the more sides say so. A side that does not pass `checkMeasured`, or comes twice, teaches nothing.
 * Pure: all sides ever measured go in each time, in any order.
 */
export function learnYields(
  breakdown: Breakdown,
  profile: YieldProfile,
  measured: readonly MeasuredSide[],
): Learned {
  const inside = insidesOf(breakdown);
  const refused: RefusedSide[] = [];
  const readings: SideReading[] = [];
  const seen = new Set<string>();
  for (const side of measured) {
    const twice: KnownFault = {
      at: 'sideId',
      value: side.sideId,
      says: 'this side was learned from already',
    };
    const faults = seen.has(side.sideId) ? [twice] : checkMeasured(breakdown, profile, side, inside);
    seen.add(side.sideId);
    if (faults.length > 0) refused.push({ sideId: side.sideId, faults });
    else readings.push(...sideReadings(breakdown, profile, side));
  }
  const byFigure = grouped(readings, ({ kind, id }) => `${kind}/${id}`);
  const pools = [...byFigure]
    .sort(([left], [right]) => (left < right ? -1 : 1))
    .map(([, own]) => {
      const { kind, id } = own[0] as SideReading;
      return { kind, id, ...poolReadings(byFarm(own), betweenSd(profile, kind)) };
    });
  const figuresFor = (farm: string | null): FarmFigures => {
    const entries = pools.map(({ kind, id, farms, shop }) => ({
      kind,
      id,
      pooled: (farm === null ? undefined : farms.get(farm)) ?? shop,
    }));
    const figures = figuresOf(breakdown.species, profile, farm, entries);
    return { farm, belief: beliefOf(figures), figures };
  };
  const farms = [...new Set(readings.map(({ farm }) => farm))].sort();
  return { shop: figuresFor(null), farms: farms.map(figuresFor), refused };
}
