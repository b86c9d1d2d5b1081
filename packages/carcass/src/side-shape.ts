import { isPartLost, lostRegions } from './regions.ts';
import type { Bar, Manner, Operation, Output, Part, SlaughterFact, Species, Zone } from './species.ts';

/** What is known of a side before it is cut. */
export interface SideFacts {
  readonly sideId: string;
  readonly animalId: string;
  readonly hand: 'left' | 'right';
  /** expected or weighed mass of this side */
  readonly massMg: number;
  /** hanging weight of the whole carcass: lengths follow from it */
  readonly carcassGrams: number;
  readonly ribs: number;
  readonly facts: readonly SlaughterFact[];
  /** parts or regions damaged or condemned: whatever holds them is set aside, however the side is cut */
  readonly lostParts: readonly string[];
}

/** Stations `fromStation` up to but not including `toStation` of a zone, cut in one manner. */
export interface Stretch {
  readonly manner: Manner;
  readonly fromStation: number;
  readonly toStation: number;
}

/** One way to cut a zone: one manner, or two parted between two stations. */
export type ZoneWay = readonly Stretch[];

export interface ZoneShape {
  readonly zone: Zone;
  readonly stations: number;
  /** length of one station */
  readonly pitchUm: number;
  /** place of the zone on its bar, from the head end */
  readonly fromUm: number;
  readonly lengthUm: number;
  readonly massMg: number;
  readonly ways: readonly ZoneWay[];
}

export interface BarShape {
  readonly bar: Bar;
  readonly lengthUm: number;
  readonly massMg: number;
  readonly zones: readonly ZoneShape[];
}

/** A side measured out: masses and lengths of everything the tree could make of it. Lengths in um, masses in mg. */
export interface SideShape {
  readonly species: Species;
  readonly side: SideFacts;
  /** mass of each part that this side can have; the same whichever operation makes it */
  readonly partMassMg: ReadonlyMap<string, number>;
  readonly bars: ReadonlyMap<string, BarShape>;
}

/** Lengths are whole multiples of this: finer than any knife, coarse enough to count on. */
export const lengthGridUm = 50;

const onGrid = (um: number): number => Math.round(um / lengthGridUm) * lengthGridUm;

/** Share of one entry in a list of shares, 0 to 1. */
export function shareOf(list: readonly { readonly parts: number }[], index: number): number {
  const sum = list.reduce((running, entry) => running + entry.parts, 0);
  return (list[index] as { parts: number }).parts / sum;
}

interface Needing {
  readonly needs?: readonly SlaughterFact[];
}
type Dressing = Pick<SideFacts, 'facts'>;

const hasWhat = ({ facts }: Dressing, { needs = [] }: Needing): boolean =>
  needs.every((need) => facts.includes(need));

/** What an operation makes of this side: from a leg without its foot none is taken off. */
export const outputsOn = (side: Dressing, { outputs }: Operation): readonly Output[] =>
  outputs.map((output) =>
    hasWhat(side, output) ? output : { ...output, to: 'bulk', id: output.otherwise ?? output.id },
  );

/** Operations of a primal that this side still allows, each with what it makes of this side. */
export function allowedOperations(part: Part, side: Dressing): readonly Operation[] {
  if (part.kind === 'bar') return [];
  return part.operations
    .filter((operation) => hasWhat(side, operation))
    .map((operation) => ({ ...operation, outputs: outputsOn(side, operation) }));
}

function zoneWays(zone: Zone, stations: number): ZoneWay[] {
  const ways: ZoneWay[] = zone.manners.map((manner) => [{ manner, fromStation: 0, toStation: stations }]);
  if (!zone.maySplit) return ways;
  for (const first of zone.manners) {
    for (const second of zone.manners) {
      if (first === second) continue;
      for (let at = 1; at < stations; at++) {
        ways.push([
          { manner: first, fromStation: 0, toStation: at },
          { manner: second, fromStation: at, toStation: stations },
        ]);
      }
    }
  }
  return ways;
}

export function stationsOf({ stations }: Zone, ribs: number): number {
  if ('fixed' in stations) return stations.fixed;
  return Math.max(0, Math.min(ribs, stations.toRib ?? ribs) - stations.fromRib + 1);
}

function shapeBar(species: Species, side: SideFacts, bar: Bar, massMg: number): BarShape {
  const { referenceGrams, exponent } = species.lengthGrowth;
  const scale = (side.carcassGrams / referenceGrams) ** exponent;
  let fromUm = 0;
  const zones = bar.zones.map((zone, index): ZoneShape => {
    const stations = stationsOf(zone, side.ribs);
    const pitchUm = stations === 0 ? 0 : onGrid((zone.lengthMm * 1000 * scale) / stations);
    const shape: ZoneShape = {
      zone,
      stations,
      pitchUm,
      fromUm,
      lengthUm: pitchUm * stations,
      massMg:
        massMg *
        shareOf(
          bar.zones.map((entry) => entry.mass),
          index,
        ),
      ways: zoneWays(zone, stations),
    };
    fromUm += shape.lengthUm;
    return shape;
  });
  return { bar, lengthUm: fromUm, massMg, zones };
}

/** Measures out a side. Pure; the same facts give the same shape. */
export function shapeSide(species: Species, side: SideFacts): SideShape {
  const partMassMg = new Map<string, number>([[species.sideRoot, side.massMg]]);
  const bars = new Map<string, BarShape>();
  const lost = lostRegions(species, side.lostParts);
  const visit = (partId: string): void => {
    const part = species.parts[partId] as Part;
    const massMg = partMassMg.get(partId) as number;
    if (isPartLost(part, lost)) return;
    if (part.kind === 'bar') {
      bars.set(partId, shapeBar(species, side, part, massMg));
      return;
    }
    for (const operation of allowedOperations(part, side)) {
      operation.outputs.forEach((output: Output, index) => {
        if (output.to !== 'part' || partMassMg.has(output.id)) return;
        partMassMg.set(output.id, massMg * shareOf(operation.outputs, index));
        visit(output.id);
      });
    }
  };
  visit(species.sideRoot);
  return { species, side, partMassMg, bars };
}
