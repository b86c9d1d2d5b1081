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
  /** parts damaged or condemned: they are set aside whole */
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

/** Operations of a primal that this side still allows. */
export function allowedOperations(part: Part, side: SideFacts): readonly Operation[] {
  if (part.kind === 'bar') return [];
  return part.operations.filter((operation) =>
    (operation.needs ?? []).every((need) => side.facts.includes(need)),
  );
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

export const stationsOf = (zone: Zone, ribs: number): number =>
  'fixed' in zone.stations ? zone.stations.fixed : Math.max(0, ribs - zone.stations.ribsLess);

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
  const visit = (partId: string): void => {
    const part = species.parts[partId] as Part;
    const massMg = partMassMg.get(partId) as number;
    if (side.lostParts.includes(partId)) return;
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
