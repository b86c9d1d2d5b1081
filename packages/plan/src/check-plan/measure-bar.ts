import type { Bar, Manner, Zone } from '@flitchbook/carcass';
import type { DaySide } from './day-index.ts';
import { shareOfList } from './walk-operations.ts';

/** Lengths of the species data are rounded to this, micrometres. */
const gridUm = 50;

/** A zone as it lies on this side's bar. The arithmetic is the check's own. */
export interface MeasuredZone {
  readonly zone: Zone;
  readonly stations: number;
  readonly pitchUm: number;
  readonly fromUm: number;
  readonly massMg: number;
}

export interface MeasuredStretch {
  readonly measured: MeasuredZone;
  readonly manner: Manner;
  readonly fromStation: number;
  readonly toStation: number;
}

/** What neighbouring stretches of one stock make. Lengths um, mass mg and not rounded. */
export interface MeasuredRun {
  readonly stock: string;
  readonly tool: Manner['tool'];
  readonly joins: boolean;
  readonly stretches: readonly MeasuredStretch[];
  readonly fromUm: number;
  readonly toUm: number;
  readonly usableUm: number;
  readonly keptMg: number;
}

function countStations({ stations }: Zone, ribs: number): number {
  if ('fixed' in stations) return stations.fixed;
  const lastRib = stations.toRib === undefined || stations.toRib > ribs ? ribs : stations.toRib;
  return lastRib < stations.fromRib ? 0 : lastRib - stations.fromRib + 1;
}

/** Zones of a bar in order from the head end, with lengths scaled to the carcass. */
export function measureBar({ side, species }: DaySide, bar: Bar, massMg: number): MeasuredZone[] {
  const growth = (side.carcassGrams / species.lengthGrowth.referenceGrams) ** species.lengthGrowth.exponent;
  const masses = bar.zones.map((zone) => zone.mass);
  const measured: MeasuredZone[] = [];
  let fromUm = 0;
  for (const zone of bar.zones) {
    const stations = countStations(zone, side.ribs);
    const pitchUm =
      stations === 0 ? 0 : Math.round((zone.lengthMm * 1000 * growth) / stations / gridUm) * gridUm;
    measured.push({ zone, stations, pitchUm, fromUm, massMg: massMg * shareOfList(zone.mass, masses) });
    fromUm += pitchUm * stations;
  }
  return measured;
}

export const stationsIn = ({ fromStation, toStation }: MeasuredStretch): number => toStation - fromStation;

/** Mass of a stretch before boning and trimming. */
export const grossMg = (stretch: MeasuredStretch): number =>
  stretch.measured.stations === 0
    ? 0
    : (stretch.measured.massMg * stationsIn(stretch)) / stretch.measured.stations;

const edgeUm = ({ fromUm, pitchUm }: MeasuredZone, station: number): number => fromUm + station * pitchUm;

function usableUm(stretch: MeasuredStretch): number {
  const inPlaceUm = stationsIn(stretch) * stretch.measured.pitchUm;
  return Math.floor((inPlaceUm * stretch.manner.lengthPpm) / (1_000_000 * gridUm)) * gridUm;
}

function measureRun(stretches: readonly [MeasuredStretch, ...MeasuredStretch[]]): MeasuredRun {
  const [first] = stretches;
  const last = stretches.at(-1) ?? first;
  let length = 0;
  let keptMg = 0;
  for (const stretch of stretches) {
    length += usableUm(stretch);
    keptMg +=
      grossMg(stretch) *
      shareOfList(stretch.manner.keeps, [stretch.manner.keeps, ...stretch.manner.releases]);
  }
  return {
    stock: first.manner.stock,
    tool: first.manner.tool,
    joins: first.manner.joins,
    stretches,
    fromUm: edgeUm(first.measured, first.fromStation),
    toUm: edgeUm(last.measured, last.toStation),
    usableUm: length,
    keptMg,
  };
}

/** The runs that stretches make when they stand in this order on a bar. */
export function measureRuns(stretches: readonly MeasuredStretch[]): MeasuredRun[] {
  const runs: [MeasuredStretch, ...MeasuredStretch[]][] = [];
  for (const stretch of stretches) {
    const before = runs.at(-1)?.[0].manner;
    if (before && stretch.manner.joins && before.stock === stretch.manner.stock) runs.at(-1)?.push(stretch);
    else runs.push([stretch]);
  }
  return runs.map(measureRun);
}
