import { isPartLost, lostRegions, type Operation, type SideFacts, type Species } from '@flitchbook/carcass';
import { entryOf } from '../check-plan/day-index.ts';
import type { Lock } from '../day.ts';

interface Search {
  readonly species: Species;
  readonly side: SideFacts;
  readonly locks: readonly Lock[];
  readonly lost: ReadonlySet<string>;
}

/** Every lock on something below a part, or on the part itself: what is lost can't be done otherwise. */
function locksBelow(search: Search, partId: string): Set<Lock> {
  const part = entryOf(search.species.parts, partId);
  if (!part) return new Set();
  if (part.kind === 'bar') return onBar(search, partId, () => true);
  const own = search.locks.filter((lock) => lock.lock === 'operation' && lock.part === partId);
  const below = part.operations.flatMap(({ outputs }) =>
    outputs.flatMap(({ to, id }) => (to === 'part' ? [...locksBelow(search, id)] : [])),
  );
  return new Set([...own, ...below]);
}

function onBar(
  { species, locks }: Search,
  partId: string,
  allows: (mannerIds: readonly string[], lock: Lock & { lock: 'manner' }) => boolean,
): Set<Lock> {
  const part = entryOf(species.parts, partId);
  const zones = part?.kind === 'bar' ? part.zones : [];
  return new Set(
    locks.filter((lock) => {
      const zone = lock.lock === 'manner' ? zones.find(({ id }) => id === lock.zone) : undefined;
      return (
        lock.lock === 'manner' &&
        zone !== undefined &&
        allows(
          zone.manners.map(({ id }) => id),
          lock,
        )
      );
    }),
  );
}

function open(search: Search, partId: string, operations: readonly Operation[]): readonly Operation[] {
  const lock = search.locks.find((candidate) => candidate.lock === 'operation' && candidate.part === partId);
  return operations.filter(
    ({ id, needs }) =>
      (needs ?? []).every((need) => search.side.facts.includes(need)) &&
      (lock?.lock !== 'operation' || lock.operation === id),
  );
}

/** The most locks that some way to break down a part keeps. */
function keptBelow(search: Search, partId: string): Set<Lock> {
  const part = entryOf(search.species.parts, partId);
  if (!part) return new Set();
  if (isPartLost(part, search.lost)) return locksBelow(search, partId);
  if (part.kind === 'bar') return onBar(search, partId, (mannerIds, lock) => mannerIds.includes(lock.manner));
  const own = search.locks.filter((lock) => lock.lock === 'operation' && lock.part === partId);
  let best = new Set<Lock>();
  for (const operation of open(search, partId, part.operations)) {
    const kept = new Set([
      ...own,
      ...operation.outputs.flatMap(({ to, id }) => (to === 'part' ? [...keptBelow(search, id)] : [])),
    ]);
    if (kept.size > best.size) best = kept;
  }
  return best;
}

/** Of the locks of one side, as many as one plan of it can keep at once. Locks on the same thing must agree already. */
export const locksThatFit = (species: Species, side: SideFacts, locks: readonly Lock[]): ReadonlySet<Lock> =>
  locks.length === 0
    ? new Set()
    : keptBelow({ species, side, locks, lost: lostRegions(species, side.lostParts) }, species.sideRoot);
