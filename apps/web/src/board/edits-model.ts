import {
  allowedOperations,
  isPartLost,
  lostRegions,
  type SideFacts,
  type Species,
} from '@flitchbook/carcass';
import type { Lock } from '@flitchbook/plan';
import { lockKey } from './choices-model.ts';

/** What the butcher did, kept as said, so that it can be done again on a day that someone else changed meanwhile. */
export type Edit =
  | { readonly edit: 'settle'; readonly lock: Lock }
  | { readonly edit: 'free'; readonly lock: Lock };

interface Reach {
  readonly parts: Set<string>;
  readonly zones: Set<string>;
}

function reachOf(species: Species, side: SideFacts, locks: readonly Lock[]): Reach {
  const settled = new Map(
    locks.flatMap((lock) => (lock.lock === 'operation' ? [[lock.part, lock.operation] as const] : [])),
  );
  const reach: Reach = { parts: new Set(), zones: new Set() };
  const lost = lostRegions(species, side.lostParts);
  const visit = (partId: string): void => {
    const part = species.parts[partId];
    if (!part || reach.parts.has(partId) || isPartLost(part, lost)) return;
    reach.parts.add(partId);
    if (part.kind === 'bar') {
      for (const zone of part.zones) reach.zones.add(zone.id);
      return;
    }
    const wanted = settled.get(partId);
    for (const operation of allowedOperations(part, side)) {
      if (wanted === undefined ? operation.onRequest : operation.id !== wanted) continue;
      for (const output of operation.outputs) if (output.to === 'part') visit(output.id);
    }
  };
  visit(species.sideRoot);
  return reach;
}

/** Locks of a side that still mean something: a settled choice above may have cut off the part below. */
export function reachableLocks(species: Species, side: SideFacts, locks: readonly Lock[]): Lock[] {
  const mine = locks.filter((lock) => lock.sideId === side.sideId);
  const reach = reachOf(species, side, mine);
  return mine.filter((lock) =>
    lock.lock === 'operation' ? reach.parts.has(lock.part) : reach.zones.has(lock.zone),
  );
}

/** A side with the species it is of. */
export interface SpeciesSide {
  readonly species: Species;
  readonly side: SideFacts;
}

/** Locks after the edits, in turn. A later edit of one choice replaces an earlier one. */
export function applyEdits(
  sides: readonly SpeciesSide[],
  locks: readonly Lock[],
  edits: readonly Edit[],
): Lock[] {
  const byKey = new Map(locks.map((lock) => [lockKey(lock), lock]));
  for (const { edit, lock } of edits) {
    byKey.delete(lockKey(lock));
    if (edit === 'settle') byKey.set(lockKey(lock), lock);
  }
  const edited = [...byKey.values()];
  return sides.flatMap(({ species, side }) => reachableLocks(species, side, edited));
}

/** The edits with one more; what it replaces is left out. */
export const addEdits = (edits: readonly Edit[], more: readonly Edit[]): Edit[] => {
  const replaced = new Set(more.map(({ lock }) => lockKey(lock)));
  return [...edits.filter(({ lock }) => !replaced.has(lockKey(lock))), ...more];
};
