import { type Manner, splitExactly, type Tools } from '@flitchbook/carcass';
import type { CuttingPlan, Owner } from '../cutting-plan.ts';
import type { CuttingDay } from '../day.ts';

/** A copy of a plan that may be written to. */
export type Draft<T> = T extends readonly (infer Item)[]
  ? Draft<Item>[]
  : T extends object
    ? { -readonly [Key in keyof T]: Draft<T[Key]> }
    : T;

export type PlanDraft = Draft<CuttingPlan>;
export type SideDraft = PlanDraft['sides'][number];
export type RunDraft = SideDraft['bars'][number]['runs'][number];

/** The proof is of the plan before: it does not come along. */
export const draftOf = (plan: CuttingPlan): PlanDraft => ({
  ...(structuredClone(plan) as PlanDraft),
  proof: null,
});

const isOfLine = (owner: Owner, lineId: string): boolean =>
  owner !== null && 'lineId' in owner && owner.lineId === lineId;

/** Bulk that the saw's dust is counted as. */
const lossBulk = 'loss';

const addLoss = (side: SideDraft, massMg: number): void => {
  if (massMg !== 0) side.bulkMg[lossBulk] = (side.bulkMg[lossBulk] ?? 0) + massMg;
};

/** Manners of a run's stretches, in order. */
export function mannersOf(day: CuttingDay, speciesId: string, bar: string, run: RunDraft): Manner[] {
  const part = day.species[speciesId]?.parts[bar];
  if (part?.kind !== 'bar') return [];
  return run.stretches.flatMap(({ zone, manner }) => {
    const found = part.zones.find(({ id }) => id === zone)?.manners.find(({ id }) => id === manner);
    return found ? [found] : [];
  });
}

/** Length that the saw turns to dust after each piece of a run. */
export const kerfOfRun = (manners: readonly Manner[], tools: Tools): number =>
  manners[0]?.tool === 'saw' && tools.saw ? tools.kerfUm : 0;

/** Milligrams for each micrometre of a run, pieces and what is free of it together. */
export function densityOf({ pieces, freeUm, freeMg }: RunDraft): number {
  const lengthUm = pieces.reduce((sum, { fromUm, toUm }) => sum + toUm - fromUm, freeUm);
  return lengthUm === 0 ? 0 : pieces.reduce((sum, { massMg }) => sum + massMg, freeMg) / lengthUm;
}

type PieceDraft = RunDraft['pieces'][number];

interface Place {
  readonly side: SideDraft;
  readonly bar: string;
  readonly run: RunDraft;
  readonly kerfUm: number;
}

const spanId = (side: SideDraft, bar: string, fromUm: number): string => `${side.sideId}:${bar}:${fromUm}`;

/** Appends a piece where the last cut was; mass and dust come out of what was free. */
export function appendPiece(
  { side, bar, run, kerfUm }: Place,
  piece: Pick<PieceDraft, 'cut' | 'portion' | 'owner'> & { readonly pieceUm: number },
): void {
  const { pieceUm, ...rest } = piece;
  const leftUm = run.freeUm - pieceUm - kerfUm;
  const [massMg = 0, dustMg = 0, leftMg = 0] = splitExactly(run.freeMg, [pieceUm, kerfUm, leftUm]);
  const fromUm = run.fromUm + run.usableUm - run.freeUm;
  run.pieces.push({
    pieceId: spanId(side, bar, fromUm),
    ...rest,
    fromUm,
    toUm: fromUm + pieceUm,
    massMg,
  });
  run.freeUm = leftUm;
  run.freeMg = leftMg;
  addLoss(side, dustMg);
}

/** Takes pieces out of a run and moves the others up, those counted in ribs first: they start between two bones. */
export function removePieces({ side, bar, run, kerfUm }: Place, goes: (piece: PieceDraft) => boolean): void {
  const kept = run.pieces.filter((piece) => !goes(piece));
  if (kept.length === run.pieces.length) return;
  const dustMg = Math.round(densityOf(run) * kerfUm * run.pieces.length);
  const totalMg = run.pieces.reduce((sum, { massMg }) => sum + massMg, run.freeMg + dustMg);
  addLoss(side, -dustMg);
  const lengths = kept.map(({ fromUm, toUm }) => toUm - fromUm);
  const freeUm = run.usableUm - lengths.reduce((sum, lengthUm) => sum + lengthUm + kerfUm, 0);
  const masses = splitExactly(totalMg, [...lengths, kerfUm * kept.length, freeUm]);
  const byRibs = kept
    .map((piece, nth) => ({ piece, lengthUm: lengths[nth] ?? 0, massMg: masses[nth] ?? 0 }))
    .toSorted((a, b) => Number(b.piece.portion.by === 'ribs') - Number(a.piece.portion.by === 'ribs'));
  let atUm = run.fromUm;
  run.pieces = byRibs.map(({ piece, lengthUm, massMg }) => {
    const fromUm = atUm;
    atUm += lengthUm + kerfUm;
    return { ...piece, pieceId: spanId(side, bar, fromUm), fromUm, toUm: fromUm + lengthUm, massMg };
  });
  run.freeUm = freeUm;
  run.freeMg = masses[kept.length + 1] ?? 0;
  addLoss(side, masses[kept.length] ?? 0);
}

/** Every piece of a plan that a line has, in the order of the plan. */
export function piecesOfLine(plan: CuttingPlan | PlanDraft, lineId: string): string[] {
  const owned = [
    ...plan.sides.flatMap(({ items, bars }) => [
      ...items,
      ...bars.flatMap(({ runs }) => runs.flatMap(({ pieces }) => pieces)),
    ]),
    ...plan.singles,
  ];
  return owned.filter(({ owner }) => isOfLine(owner, lineId)).map(({ pieceId }) => pieceId);
}
