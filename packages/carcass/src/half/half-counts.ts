import { countPieces, footprint, layRuns, type Run, type Tools } from '../runs.ts';
import type { SideShape, ZoneShape } from '../side-shape.ts';
import type { Portion } from '../species.ts';
import { cautiousHigh, cautiousLow } from '../yield/estimate.ts';
import type { YieldProfile } from '../yield/yield-profile.ts';
import type { CutSheet } from './cut-sheet.ts';

/** How many: what nine animals in ten give at least, what is likely, what nine in ten give at most. */
export interface PieceRange {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

const wholeZone = (sheet: CutSheet, { zone, stations }: ZoneShape) => {
  const manner = zone.manners.find(({ id }) => id === sheet.manners[zone.id]) ?? zone.manners[0];
  return manner ? [{ manner, fromStation: 0, toStation: stations }] : [];
};

/** The runs of the bars that a side comes to, each zone in the manner of the sheet. By stock. */
export function runsOfSheet(
  shape: SideShape,
  sheet: CutSheet,
  parts: readonly string[],
): ReadonlyMap<string, readonly Run[]> {
  const runs = new Map<string, Run[]>();
  for (const part of parts) {
    const zones = shape.bars.get(part)?.zones ?? [];
    const ways = zones
      .filter(({ stations }) => stations > 0)
      .map((zone) => ({ zone, way: wholeZone(sheet, zone) }));
    for (const run of layRuns(ways) ?? []) runs.set(run.stock, [...(runs.get(run.stock) ?? []), run]);
  }
  return runs;
}

/** Pieces of a portion in runs of one stock, and how much of their length the likely number takes up. */
export function countOf(
  { chopsCvPercent }: YieldProfile,
  runs: readonly Run[],
  portion: Portion,
  tools: Tools,
): { readonly pieces: PieceRange; readonly usedUm: number; readonly usableUm: number } | undefined {
  const counted = { pieces: { low: 0, likely: 0, high: 0 }, usedUm: 0, usableUm: 0 };
  for (const { tool, pitchUm, massMg, usableUm } of runs) {
    const site = { tool, pitchUm, densityMgPerUm: usableUm === 0 ? 0 : massMg / usableUm };
    const print = footprint(site, portion, tools);
    if (!print || print.pieceUm <= 0) return undefined;
    const { takesUm } = print;
    // A rib is a rib, however long it is: its number is known with the animal's.
    const sd = portion.by === 'ribs' ? 0 : (usableUm * chopsCvPercent.value) / 100;
    const length = { mean: usableUm, sd };
    const likely = countPieces(usableUm, takesUm);
    counted.pieces.low += countPieces(sd === 0 ? usableUm : cautiousLow(length), takesUm);
    counted.pieces.likely += likely;
    counted.pieces.high += countPieces(sd === 0 ? usableUm : cautiousHigh(length), takesUm);
    counted.usedUm += likely * takesUm;
    counted.usableUm += usableUm;
  }
  return counted;
}
