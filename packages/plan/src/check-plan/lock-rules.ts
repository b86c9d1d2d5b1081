import { isPartLost, lostRegions, type Species } from '@flitchbook/carcass';
import type { SidePlan } from '../cutting-plan.ts';
import type { Lock } from '../day.ts';
import { type DayIndex, type DaySide, entryOf } from './day-index.ts';
import type { Note } from './plan-rules.ts';

/** Parts below a lost part: a choice settled for them has nothing left to hold. */
function partsBelow(species: Species, partId: string, found: Set<string> = new Set()): Set<string> {
  if (found.has(partId)) return found;
  found.add(partId);
  const part = entryOf(species.parts, partId);
  if (part?.kind !== 'primal') return found;
  for (const output of part.operations.flatMap((operation) => operation.outputs))
    if (output.to === 'part') partsBelow(species, output.id, found);
  return found;
}

function lostWith({ side, species }: DaySide, wanted: (partId: string) => boolean): boolean {
  const lost = lostRegions(species, side.lostParts);
  return Object.values(species.parts).some(
    (part) => isPartLost(part, lost) && [...partsBelow(species, part.id)].some(wanted),
  );
}

function operationFault(
  lock: Lock & { lock: 'operation' },
  side: SidePlan,
  known: DaySide,
): string | undefined {
  const chosen = entryOf(side.operations, lock.part);
  if (chosen === lock.operation) return undefined;
  if (chosen !== undefined) return `is locked to "${lock.operation}" and is "${chosen}"`;
  return lostWith(known, (partId) => partId === lock.part)
    ? undefined
    : `is locked to "${lock.operation}" and is not made at all`;
}

function mannerFault(lock: Lock & { lock: 'manner' }, side: SidePlan, known: DaySide): string | undefined {
  const stretches = side.bars
    .flatMap((bar) => bar.runs.flatMap((run) => run.stretches))
    .filter(({ zone }) => zone === lock.zone);
  const other = stretches.find(({ manner }) => manner !== lock.manner);
  if (other) return `is locked to "${lock.manner}" and is cut "${other.manner}"`;
  if (stretches.length > 0) return undefined;
  const holdsZone = (partId: string): boolean => {
    const part = entryOf(known.species.parts, partId);
    return part?.kind === 'bar' && part.zones.some((zone) => zone.id === lock.zone);
  };
  return lostWith(known, holdsZone) ? undefined : `is locked to "${lock.manner}" and is not on any bar`;
}

/** A settled choice holds: also against a plan that does away with the part it is about. */
export function checkLocks(index: DayIndex, sides: ReadonlyMap<string, SidePlan>, note: Note): void {
  for (const lock of index.day.locks) {
    const side = sides.get(lock.sideId);
    const known = index.sides.get(lock.sideId);
    if (!side || !known) continue;
    const fault =
      lock.lock === 'operation' ? operationFault(lock, side, known) : mannerFault(lock, side, known);
    if (fault)
      note(
        'P24',
        `sides[${lock.sideId}]`,
        `${lock.lock === 'operation' ? lock.part : `zone ${lock.zone}`} ${fault}`,
      );
  }
}
