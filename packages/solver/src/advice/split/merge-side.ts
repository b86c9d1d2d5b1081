import {
  askedGrams,
  askedPieces,
  type CuttingPlan,
  type LineFill,
  type Shortfall,
  type SidePlan,
  takeOut,
  wantsBothSides,
} from '@flitchbook/plan';
import type { Problem } from '../../problem.ts';

/** A side cut anew and the loose meat that lines take because of it. */
export interface NewSide {
  readonly side: SidePlan;
  /** line to grams taken over what the other sides give it */
  readonly bulkGrams: ReadonlyMap<string, number>;
}

function ownedIn(plan: Pick<CuttingPlan, 'sides' | 'singles'>): ReadonlyMap<string, string[]> {
  const owned = new Map<string, string[]>();
  const spans = plan.sides.flatMap(({ bars }) =>
    bars.flatMap(({ runs }) => runs.flatMap(({ pieces }) => pieces)),
  );
  for (const { pieceId, owner } of [...plan.sides.flatMap(({ items }) => items), ...spans, ...plan.singles])
    if (owner && 'lineId' in owner) owned.set(owner.lineId, [...(owned.get(owner.lineId) ?? []), pieceId]);
  return owned;
}

/** Both-sides lines of which one half is gone: the other half is no use to anybody. */
function halved({ day }: Pick<Problem, 'day'>, plan: CuttingPlan): string[] {
  const handOf = new Map(
    day.animals.flatMap(({ sides }) => sides.map((side) => [side.sideId, side.hand] as const)),
  );
  const both = new Set(day.lines.filter((line) => wantsBothSides(day, line)).map(({ lineId }) => lineId));
  const balance = new Map<string, number>();
  for (const side of plan.sides) {
    for (const [lineId, ids] of ownedIn({ sides: [side], singles: [] })) {
      if (!both.has(lineId)) continue;
      const key = JSON.stringify([lineId, side.animalId]);
      const sign = handOf.get(side.sideId) === 'left' ? 1 : -1;
      balance.set(key, (balance.get(key) ?? 0) + sign * ids.length);
    }
  }
  return [...balance].flatMap(([key, off]) => (off === 0 ? [] : [(JSON.parse(key) as [string])[0]]));
}

const noRoom = (says: string): Shortfall => ({
  kind: 'clash',
  says,
  withLines: [],
  withShares: [],
  withLocks: [],
  mostPossible: 0,
});

/**
 * A plan with one side of it cut anew, everything else as it was.
 * @param heldGrams line to the grams that the other sides give it
 * @param says why a line that the side can't serve falls short
 */
export function mergeSide(
  problem: Problem,
  plan: CuttingPlan,
  { side, bulkGrams }: NewSide,
  heldGrams: ReadonlyMap<string, number>,
  says: string,
): CuttingPlan {
  const { day } = problem;
  const sides = plan.sides.map((old) => (old.sideId === side.sideId ? side : old));
  const before = new Map(plan.lines.map((fill) => [fill.lineId, fill]));
  const fills = (owned: ReadonlyMap<string, string[]>): LineFill[] =>
    day.lines.map((line) => {
      const pieceIds = owned.get(line.lineId) ?? [];
      const grams = (heldGrams.get(line.lineId) ?? 0) + (bulkGrams.get(line.lineId) ?? 0);
      const asked = askedPieces(line) || askedGrams(line);
      const filled = askedPieces(line) > 0 ? pieceIds.length : grams;
      const known = before.get(line.lineId);
      const same = known?.shortfall && known.filled === filled ? known.shortfall : noRoom(says);
      return {
        lineId: line.lineId,
        asked,
        filled,
        pieceIds,
        bulkGrams: askedPieces(line) > 0 ? 0 : grams,
        shortfall: filled < asked ? same : null,
      };
    });
  const merged: CuttingPlan = {
    ...plan,
    sides,
    proof: null,
    lines: fills(ownedIn({ sides, singles: plan.singles })),
  };
  const gone = halved(problem, merged);
  if (gone.length === 0) return merged;
  const left = takeOut(day, merged, { lineIds: gone, shareIds: [] });
  return { ...left, lines: fills(ownedIn(left)) };
}
