import type { CuttingPlan, Owner, Shortfall } from '../cutting-plan.ts';
import type { CuttingDay } from '../day.ts';
import {
  type Draft,
  draftOf,
  kerfOfRun,
  mannersOf,
  piecesOfLine,
  removePieces,
  type SideDraft,
} from './draft.ts';

/** Lines and shares that the plan no longer serves. */
export interface Leaving {
  readonly lineIds: readonly string[];
  readonly shareIds: readonly string[];
}

const leaves = (owner: Owner, { lineIds, shareIds }: Leaving): boolean =>
  owner !== null && ('lineId' in owner ? lineIds.includes(owner.lineId) : shareIds.includes(owner.shareId));

function clearSide(day: CuttingDay, side: SideDraft, leaving: Leaving): void {
  const speciesId = day.animals.find(({ animalId }) => animalId === side.animalId)?.speciesId ?? '';
  if (side.shareId !== null && leaving.shareIds.includes(side.shareId)) side.shareId = null;
  for (const item of side.items) if (leaves(item.owner, leaving)) item.owner = null;
  for (const { bar, runs } of side.bars) {
    for (const run of runs) {
      const kerfUm = kerfOfRun(mannersOf(day, speciesId, bar, run), day.tools);
      removePieces({ side, bar, run, kerfUm }, ({ owner }) => leaves(owner, leaving));
    }
  }
}

/** Nobody is to blame who is not there any more. */
function absolve(shortfall: Draft<Shortfall> | null, leaving: Leaving): void {
  if (shortfall === null) return;
  shortfall.withLines = shortfall.withLines.filter((lineId) => !leaving.lineIds.includes(lineId));
  shortfall.withShares = shortfall.withShares.filter((shareId) => !leaving.shareIds.includes(shareId));
}

/**
 * Gives back what lines and shares had: whole pieces to the counter, length to the free end of its run, a side with all
 * its choices to the day. Nobody else's pieces change but for their place along a run. Lines that are short stay so.
 * `day` may still have what leaves. Pure; what it gives still has to pass `checkPlan` against the day without it.
 */
export function takeOut(day: CuttingDay, plan: CuttingPlan, leaving: Leaving): CuttingPlan {
  const draft = draftOf(plan);
  for (const side of draft.sides) clearSide(day, side, leaving);
  for (const single of draft.singles) if (leaves(single.owner, leaving)) single.owner = null;
  draft.lines = draft.lines.filter(({ lineId }) => !leaving.lineIds.includes(lineId));
  draft.shares = draft.shares.filter(({ shareId }) => !leaving.shareIds.includes(shareId));
  for (const fill of draft.lines) {
    fill.pieceIds = piecesOfLine(draft, fill.lineId);
    absolve(fill.shortfall, leaving);
  }
  for (const fill of draft.shares) absolve(fill.shortfall, leaving);
  return draft;
}
