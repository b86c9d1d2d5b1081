import type { CutSheet, Operation, SideFacts, Species, Zone } from '@flitchbook/carcass';
import { entryOf } from '../check-plan/day-index.ts';
import { show } from '../check-plan/plan-shape.ts';
import type { CuttingDay, Instructions, Lock } from '../day.ts';
import { type DayNotes, dayLimits } from './day-faults.ts';
import { locksThatFit } from './locks-together.ts';
import { checkStockPortion } from './portion-checks.ts';

/** Where the two halves of a choice stand: a lock has a field for each, an instruction is one entry of a table. */
interface ChoicePlaces {
  readonly of: string;
  readonly choice: string;
}

const inLock = (at: string, of: 'part' | 'zone', choice: 'operation' | 'manner'): ChoicePlaces => ({
  of: `${at}.${of}`,
  choice: `${at}.${choice}`,
});

const inTable = (at: string): ChoicePlaces => ({ of: at, choice: at });

function findOperation(
  notes: DayNotes,
  at: ChoicePlaces,
  partId: string,
  operationId: string,
  species: Species,
): Operation | undefined {
  const part = entryOf(species.parts, partId);
  if (part?.kind !== 'primal') {
    notes.error(
      at.of,
      partId,
      `There is no part to break down called ${show(partId)} on a ${species.name.toLowerCase()}.`,
    );
    return undefined;
  }
  const operation = part.operations.find(({ id }) => id === operationId);
  const ways = part.operations.map(({ id }) => id).join(', ');
  if (!operation)
    notes.error(
      at.choice,
      operationId,
      `${part.name} has no operation called ${show(operationId)}; it has ${ways}.`,
    );
  return operation;
}

function checkManner(
  notes: DayNotes,
  at: ChoicePlaces,
  zoneId: string,
  mannerId: string,
  species: Species,
): void {
  const zones = Object.values(species.parts).flatMap((part): readonly Zone[] =>
    part.kind === 'bar' ? part.zones.filter(({ id }) => id === zoneId) : [],
  );
  if (zones.length === 0) {
    notes.error(at.of, zoneId, `There is no zone called ${show(zoneId)} on a ${species.name.toLowerCase()}.`);
    return;
  }
  const manners = [...new Set(zones.flatMap((zone) => zone.manners.map(({ id }) => id)))];
  if (!manners.includes(mannerId))
    notes.error(
      at.choice,
      mannerId,
      `Zone ${zoneId} has no manner called ${show(mannerId)}; it has ${manners.join(', ')}.`,
    );
}

/** How the owner of a share wants it cut, and what he leaves. */
export function checkInstructions(
  notes: DayNotes,
  at: string,
  instructions: Instructions,
  species: Species,
): void {
  checkSheet(notes, at, instructions, species);
  if (instructions.right) checkSheet(notes, `${at}.right`, instructions.right, species);
  const pieces = { ...species.items, ...species.bulks };
  for (const [index, id] of (instructions.leaves ?? []).entries())
    notes.known(`${at}.leaves[${index}]`, id, pieces, `item or bulk of the ${species.name.toLowerCase()}`);
}

function checkSheet(notes: DayNotes, at: string, instructions: CutSheet, species: Species): void {
  for (const [part, operation] of Object.entries(instructions.operations))
    findOperation(notes, inTable(`${at}.operations.${part}`), part, operation, species);
  for (const [zone, manner] of Object.entries(instructions.manners))
    checkManner(notes, inTable(`${at}.manners.${zone}`), zone, manner, species);
  for (const [stock, portion] of Object.entries(instructions.portions)) {
    const place = `${at}.portions.${stock}`;
    if (notes.known(place, stock, species.stocks, `stock of the ${species.name.toLowerCase()}`))
      checkStockPortion(notes, place, portion, stock, species);
  }
}

function checkLock(notes: DayNotes, at: string, lock: Lock, side: SideFacts, species: Species): void {
  if (lock.lock === 'manner') {
    checkManner(notes, inLock(at, 'zone', 'manner'), lock.zone, lock.manner, species);
    return;
  }
  const operation = findOperation(notes, inLock(at, 'part', 'operation'), lock.part, lock.operation, species);
  const missing = operation?.needs?.find((need) => !side.facts.includes(need));
  if (missing)
    notes.error(
      `${at}.operation`,
      lock.operation,
      `${operation?.name} needs ${missing}, which side ${show(side.sideId)} is not.`,
    );
}

const keyOf = (lock: Lock): string =>
  JSON.stringify([lock.sideId, lock.lock, lock.lock === 'operation' ? lock.part : lock.zone]);
const choiceOf = (lock: Lock): string => (lock.lock === 'operation' ? lock.operation : lock.manner);

function checkContradictions(notes: DayNotes, locks: readonly Lock[]): void {
  const first = new Map<string, number>();
  for (const [index, lock] of locks.entries()) {
    const earlier = first.get(keyOf(lock));
    if (earlier === undefined) {
      first.set(keyOf(lock), index);
      continue;
    }
    const before = choiceOf(locks[earlier] as Lock);
    if (before === choiceOf(lock)) notes.warn(`locks[${index}]`, lock, `The lock repeats locks[${earlier}].`);
    else
      notes.error(
        `locks[${index}]`,
        lock,
        `The lock says "${choiceOf(lock)}" where locks[${earlier}] says "${before}".`,
      );
  }
}

/** Choices that the butcher has settled: known, allowed, and possible together. */
export function checkLocks(notes: DayNotes, day: CuttingDay): void {
  notes.atMost('locks', day.locks, dayLimits.locks);
  const places = new Map(
    day.animals.flatMap((animal) =>
      animal.sides.map(
        (side) => [side.sideId, { side, species: entryOf(day.species, animal.speciesId) }] as const,
      ),
    ),
  );
  for (const [index, lock] of day.locks.entries()) {
    const at = `locks[${index}]`;
    const place = places.get(lock.sideId);
    if (!place) notes.error(`${at}.sideId`, lock.sideId, `There is no side ${show(lock.sideId)} that day.`);
    if (!notes.oneOf(`${at}.lock`, lock.lock, ['operation', 'manner'])) continue;
    if (place?.species) checkLock(notes, at, lock, place.side, place.species);
  }
  checkContradictions(notes, day.locks);
  if (notes.faults.some(({ level, at }) => level === 'error' && at.startsWith('locks'))) return;
  for (const [sideId, { side, species }] of places) {
    if (!species) continue;
    const indexed = day.locks
      .map((lock, index) => ({ lock, index }))
      .filter(({ lock }) => lock.sideId === sideId);
    const fit = locksThatFit(
      species,
      side,
      indexed.map(({ lock }) => lock),
    );
    for (const { lock, index } of indexed) {
      if (!fit.has(lock))
        notes.error(
          `locks[${index}]`,
          lock,
          `The choice "${choiceOf(lock)}" can't stand together with the other locks of side ${show(sideId)}.`,
        );
    }
  }
}
