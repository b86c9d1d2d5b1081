import type { Portion, PortionRule, Species, Tools } from '@flitchbook/carcass';
import type { SpanPiece } from '../cutting-plan.ts';
import type { PairedRun } from './bar-rules.ts';
import { entryOf } from './day-index.ts';
import type { MeasuredRun } from './measure-bar.ts';
import type { Note } from './plan-rules.ts';

const weightSlackMg = 2;

/** Length that the saw turns to dust after each piece of a run. */
export const kerfOf = (run: MeasuredRun, tools: Tools): number =>
  run.tool === 'saw' && tools.saw ? tools.kerfUm : 0;

/** Length of one station where the whole run has one and keeps it; 0 where it can't be counted in stations. */
export function pitchOf({ stretches }: MeasuredRun): number {
  const [first, ...others] = stretches;
  const keepsLength = stretches.every(({ manner }) => manner.lengthPpm === 1_000_000);
  const onePitch = others.every(({ measured }) => measured.pitchUm === first?.measured.pitchUm);
  return first && keepsLength && onePitch ? first.measured.pitchUm : 0;
}

/** Whether a portion lies within one of a cut's rules. */
function allows(rules: readonly PortionRule[], portion: Portion): boolean {
  return rules.some((rule) => {
    if (rule.by === 'thickness' && portion.by === 'thickness')
      return portion.um >= rule.minUm && portion.um <= rule.maxUm;
    if (rule.by === 'ribs' && portion.by === 'ribs')
      return portion.ribs >= rule.min && portion.ribs <= rule.max;
    if (rule.by === 'weight' && portion.by === 'weight')
      return (
        portion.fromGrams >= rule.minGrams &&
        portion.toGrams <= rule.maxGrams &&
        portion.fromGrams <= portion.toGrams
      );
    return rule.by === portion.by && (rule.by === 'whole' || rule.by === 'bulk');
  });
}

function countedFault(
  piece: SpanPiece,
  ribs: number,
  { measured }: PairedRun,
  kerfUm: number,
): string | undefined {
  const pitchUm = pitchOf(measured);
  if (pitchUm === 0 || ribs < 1) return `can't be counted as ${ribs} ribs here`;
  const from = (piece.fromUm - measured.fromUm) / pitchUm;
  const to = (piece.toUm + kerfUm - measured.fromUm) / pitchUm;
  if (!Number.isInteger(from)) return `starts ${piece.fromUm} um from the head end, between two bones`;
  return to - from === ribs ? undefined : `spans ${to - from} stations, ${ribs} ribs are asked`;
}

function sizeFault(piece: SpanPiece, run: PairedRun, tools: Tools): string | undefined {
  const { portion } = piece;
  const lengthUm = piece.toUm - piece.fromUm;
  if (portion.by === 'ribs') return countedFault(piece, portion.ribs, run, kerfOf(run.measured, tools));
  if (run.measured.tool === 'saw' && !tools.saw)
    return 'is bone-in and not counted in ribs: that takes a saw';
  if (portion.by === 'thickness')
    return lengthUm === portion.um ? undefined : `is ${lengthUm} um thick, ${portion.um} um is asked`;
  if (portion.by !== 'weight') return `is portioned "${portion.by}", which nothing laid on a bar is`;
  const light = piece.massMg < portion.fromGrams * 1000 - weightSlackMg;
  const heavy = piece.massMg > portion.toGrams * 1000 + weightSlackMg;
  return light || heavy
    ? `weighs ${piece.massMg} mg, ${portion.fromGrams} to ${portion.toGrams} g is asked`
    : undefined;
}

function cutFault(piece: SpanPiece, stock: string, species: Species): string | undefined {
  const cut = entryOf(species.cuts, piece.cut);
  if (!cut) return `"${piece.cut}" is no cut of the ${species.name}`;
  if (!cut.sources.some((source) => source.from === 'stock' && source.id === stock))
    return `${piece.cut} is not cut from ${stock}`;
  return allows(cut.portions, piece.portion) ? undefined : `${piece.cut} is not portioned like that`;
}

/** Pieces of one run: where they lie, what size they are, what they are, and what is left free. */
export function checkPieces(run: PairedRun, species: Species, tools: Tools, note: Note): void {
  const { planned, measured, at } = run;
  const kerfUm = kerfOf(measured, tools);
  let nextUm = measured.fromUm;
  for (const [index, piece] of planned.pieces.entries()) {
    const place = `${at}.pieces[${index}]`;
    if (piece.toUm <= piece.fromUm) note('P8', place, `ends at ${piece.toUm} um, where it starts or before`);
    if (piece.fromUm < nextUm)
      note('P8', place, `starts at ${piece.fromUm} um, inside what is taken up to ${nextUm} um`);
    if (piece.fromUm > nextUm)
      note('P8', place, `starts at ${piece.fromUm} um and leaves a gap after ${nextUm} um`);
    nextUm = piece.toUm + kerfUm;
    if (nextUm > measured.fromUm + measured.usableUm)
      note('P8', place, `takes up to ${nextUm} um, past the usable length`);
    const size = sizeFault(piece, run, tools);
    if (size) note('P9', place, size);
    const cut = cutFault(piece, planned.stock, species);
    if (cut) note('P10', place, cut);
  }
  const taken = planned.pieces.reduce((sum, piece) => sum + piece.toUm - piece.fromUm + kerfUm, 0);
  if (planned.freeUm !== measured.usableUm - taken)
    note(
      'P15',
      `${at}.freeUm`,
      `is ${planned.freeUm} um, the pieces leave ${measured.usableUm - taken} um of ${measured.usableUm}`,
    );
}
