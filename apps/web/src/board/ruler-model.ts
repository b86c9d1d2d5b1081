import type { BarShape, Species, ZoneShape } from '@flitchbook/carcass';
import type { BarPlan, RunPlan } from '@flitchbook/plan';
import { freeId } from './pieces-model.ts';

/** One bone of a zone, from the head end. `rib` is its number on the animal, null for a vertebra without a rib. */
export interface RulerStation {
  readonly fromUm: number;
  readonly toUm: number;
  readonly rib: number | null;
}

interface RulerZone {
  readonly zoneId: string;
  readonly name: string;
  readonly fromUm: number;
  readonly toUm: number;
  readonly stations: readonly RulerStation[];
}

/** A piece or a free stretch; what it is stands in the pieces of the day. */
export interface RulerBlock {
  readonly pieceId: string;
  readonly fromUm: number;
  readonly toUm: number;
  readonly isFree: boolean;
}

export interface RulerRun {
  readonly stock: string;
  readonly stockName: string;
  /** where the run lies in the carcass */
  readonly fromUm: number;
  readonly toUm: number;
  /** where it ends once boned and drawn up; `toUm` when it keeps its length */
  readonly drawnToUm: number;
  /** boned meat draws up, and its bones are drawn hollow */
  readonly boned: boolean;
  readonly stretches: RunPlan['stretches'];
  /** pieces in order, then what is left free */
  readonly blocks: readonly RulerBlock[];
}

/** A bar of one side laid against the rule. Lengths in um from the bar's head end. */
export interface RulerBar {
  readonly barId: string;
  readonly name: string;
  readonly lengthUm: number;
  readonly zones: readonly RulerZone[];
  readonly runs: readonly RulerRun[];
}

const hasBone = ({ zone }: ZoneShape): boolean => zone.manners.some((manner) => manner.tool === 'saw');

const firstRibOf = ({ zone }: ZoneShape): number | null =>
  'fromRib' in zone.stations ? zone.stations.fromRib : null;

function layZones(bar: BarShape): RulerZone[] {
  return bar.zones.map((shape): RulerZone => {
    const firstRib = hasBone(shape) ? firstRibOf(shape) : null;
    const stations = Array.from({ length: shape.stations }, (_, at): RulerStation => {
      const fromUm = shape.fromUm + at * shape.pitchUm;
      return { fromUm, toUm: fromUm + shape.pitchUm, rib: firstRib === null ? null : firstRib + at };
    });
    const { id, name } = shape.zone;
    return { zoneId: id, name, fromUm: shape.fromUm, toUm: shape.fromUm + shape.lengthUm, stations };
  });
}

/** A bar of one side, measured and planned. */
interface Laying {
  readonly sideId: string;
  readonly species: Species;
  readonly shape: BarShape;
  readonly plan: BarPlan;
}

function isBoned(bar: BarShape, run: RunPlan): boolean {
  const [first] = run.stretches;
  const zone = bar.zones.find((shape) => shape.zone.id === first?.zone);
  const manner = zone?.zone.manners.find((candidate) => candidate.id === first?.manner);
  return manner !== undefined && manner.lengthPpm < 1_000_000;
}

function layRun({ sideId, shape: bar, species }: Laying, run: RunPlan): RulerRun {
  const drawnToUm = run.fromUm + run.usableUm;
  const free: RulerBlock = {
    pieceId: freeId(sideId, bar.bar.id, run),
    fromUm: drawnToUm - run.freeUm,
    toUm: drawnToUm,
    isFree: true,
  };
  const pieces = run.pieces.map(
    ({ pieceId, fromUm, toUm }): RulerBlock => ({ pieceId, fromUm, toUm, isFree: false }),
  );
  return {
    stock: run.stock,
    stockName: species.stocks[run.stock]?.name ?? run.stock,
    fromUm: run.fromUm,
    toUm: run.toUm,
    drawnToUm,
    boned: isBoned(bar, run),
    stretches: run.stretches,
    blocks: run.freeUm > 0 ? [...pieces, free] : pieces,
  };
}

/** Lays a bar's plan on its measured shape. Pure geometry; nothing is rounded. */
export function layBar(laying: Laying): RulerBar {
  const { shape, plan } = laying;
  return {
    barId: shape.bar.id,
    name: shape.bar.name,
    lengthUm: shape.lengthUm,
    zones: layZones(shape),
    runs: plan.runs.map((run) => layRun(laying, run)),
  };
}

/** Where a place on a run lies in the carcass: what is drawn up is stretched back over its bones. */
export function placeInCarcass(run: RulerRun, um: number): number {
  const usableUm = run.drawnToUm - run.fromUm;
  if (usableUm <= 0) return run.fromUm;
  return run.fromUm + ((um - run.fromUm) * (run.toUm - run.fromUm)) / usableUm;
}

/** A bone counts as part of a piece when more than a third of its width is. */
const boneShare = 1 / 3;

/** First and last rib over a span, null where there is none. */
export function ribsOver(
  bar: RulerBar,
  run: RulerRun,
  span: { readonly fromUm: number; readonly toUm: number },
): { readonly first: number; readonly last: number } | null {
  const [fromUm, toUm] = [placeInCarcass(run, span.fromUm), placeInCarcass(run, span.toUm)];
  const ribs = bar.zones
    .flatMap((zone) => zone.stations)
    .filter((station) => {
      const overlapUm = Math.min(toUm, station.toUm) - Math.max(fromUm, station.fromUm);
      const narrowerUm = Math.min(station.toUm - station.fromUm, toUm - fromUm);
      return overlapUm > narrowerUm * boneShare;
    })
    .flatMap(({ rib }) => (rib === null ? [] : [rib]));
  const [first] = ribs;
  const last = ribs.at(-1);
  return first === undefined || last === undefined ? null : { first, last };
}

/** A mark of the rule, `place` in um from its start. */
export interface RuleTick {
  readonly um: number;
  readonly height: 'long' | 'middle' | 'short';
  readonly label: string | null;
}

const inchUm = 25_400;

/** Marks along the inch edge: as fine as `pxPerMm` leaves room for, numbers no closer than 20 px. */
export function inchTicks(lengthUm: number, pxPerMm: number): RuleTick[] {
  const pxPerInch = 25.4 * pxPerMm;
  const parts = [8, 4, 2].find((count) => pxPerInch / count >= 4) ?? 1;
  const labelEvery = [1, 2, 4, 6, 12].find((count) => count * pxPerInch >= 20) ?? 12;
  const count = Math.floor((lengthUm * parts) / inchUm);
  return Array.from({ length: count + 1 }, (_, index): RuleTick => {
    const inch = index / parts;
    const whole = Number.isInteger(inch);
    return {
      um: (index * inchUm) / parts,
      height: whole ? 'long' : Number.isInteger(inch * 2) ? 'middle' : 'short',
      label: whole && inch > 0 && inch % labelEvery === 0 ? String(inch) : null,
    };
  });
}

/** Marks along the metric edge: every 10 mm or 50 mm, numbers every 50 or 100 mm. */
export function millimetreTicks(lengthUm: number, pxPerMm: number): RuleTick[] {
  const stepMm = pxPerMm * 5 >= 4 ? 5 : 10;
  const labelMm = pxPerMm * 50 >= 40 ? 50 : 100;
  const count = Math.floor(lengthUm / (stepMm * 1000));
  return Array.from({ length: count + 1 }, (_, index): RuleTick => {
    const mm = index * stepMm;
    return {
      um: mm * 1000,
      height: mm % 50 === 0 ? 'long' : mm % 10 === 0 ? 'middle' : 'short',
      label: mm > 0 && mm % labelMm === 0 ? String(mm) : null,
    };
  });
}
