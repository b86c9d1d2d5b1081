import type { Tools } from '@flitchbook/carcass';
import { type Counter, type CuttingDay, checkDay, type DayAnimal, type Lock } from '@flitchbook/plan';
import { fieldPath } from '../field-path.ts';
import { readShape } from '../shape-faults.ts';
import { type CounterParts, type DayFileParts, dayFileShape, type LockParts } from './day-file-shape.ts';
import { DayFileNotes } from './day-notes.ts';
import {
  type FaultyDay,
  knownSpecies,
  type ParsedDay,
  usualCounter,
  usualShop,
  usualTools,
} from './parsed-day.ts';
import { readLength, readMoney, readPrice } from './quantities.ts';
import { findAnimal, readAnimal } from './read-animals.ts';
import { readOrders } from './read-orders.ts';

function readTools(notes: DayFileNotes, parts: DayFileParts['tools']): Tools {
  const { saw = usualTools.saw, kerfMm } = parts ?? {};
  if (kerfMm === undefined) return { saw, kerfUm: usualTools.kerfUm };
  if (kerfMm === 0) return { saw, kerfUm: 0 };
  const kerf = readLength(`${kerfMm} mm`);
  if ('says' in kerf || kerf.remark)
    notes.error('tools.kerfMm', 'Must be millimetres with at most 3 decimals, such as 1.6');
  return { saw, kerfUm: 'value' in kerf ? kerf.value : usualTools.kerfUm };
}

function readCounter(notes: DayFileNotes, parts: CounterParts | undefined, currency: string): Counter {
  const { itemSteps, stockSteps, worth = {}, labourPerHour } = parts ?? {};
  const prices = Object.entries(worth).map(([id, text]) => {
    const price = readPrice(text, currency);
    if ('says' in price) notes.error(fieldPath('counter.worth', id), price.says);
    return [id, 'value' in price ? price.value : 0] as const;
  });
  const labour = labourPerHour === undefined ? undefined : readMoney(labourPerHour, currency);
  if (labour && 'says' in labour) notes.error('counter.labourPerHour', labour.says);
  return {
    itemSteps: itemSteps
      ? itemSteps.map(({ pieces, percent }) => ({ pieces: pieces ?? null, worthPercent: percent }))
      : usualCounter.itemSteps,
    stockSteps: stockSteps
      ? stockSteps.map(({ amount, percent }) => ({ grams: amount?.value ?? null, worthPercent: percent }))
      : usualCounter.stockSteps,
    worthMinorPerKg: Object.fromEntries(prices),
    labourMinorPerHour: labour && 'value' in labour ? labour.value : usualCounter.labourMinorPerHour,
  };
}

function readLocks(
  notes: DayFileNotes,
  parts: readonly LockParts[],
  animals: readonly DayAnimal[],
): readonly Lock[] {
  return parts.flatMap((lock, index): readonly Lock[] => {
    const at = `locks[${index}]`;
    const animal = findAnimal(notes, animals, lock.animal, `${at}.animal`);
    const side = animal?.sides.find(({ hand }) => hand === lock.hand);
    if (!side) return [];
    if ('part' in lock)
      return [{ lock: 'operation', sideId: side.sideId, part: lock.part, operation: lock.operation }];
    return [{ lock: 'manner', sideId: side.sideId, zone: lock.zone, manner: lock.manner }];
  });
}

function readParts(notes: DayFileNotes, parts: DayFileParts): Omit<ParsedDay, 'warnings'> {
  const shop = { ...usualShop, ...parts.shop };
  const { currency } = shop;
  if (parts.animals.length === 0) notes.warn('animals', 'Lists no animal: there is nothing to cut');
  const animals = parts.animals.map((animal, index) => readAnimal(notes, animal, index));
  const day: CuttingDay = {
    dayId: parts.id ?? `day-${parts.date}`,
    date: parts.date,
    species: knownSpecies,
    animals: animals.map(({ animal }) => animal),
    lines: [],
    shares: [],
    locks: [],
    tools: readTools(notes, parts.tools),
    counter: readCounter(notes, parts.counter, currency),
  };
  const { orders, lines, shares } = readOrders({ notes, currency, day }, parts.orders);
  const locks = readLocks(notes, parts.locks, day.animals);
  return {
    shop,
    day: { ...day, lines, shares, locks },
    weighed: animals.map(({ weighed }) => weighed),
    orders,
  };
}

const headFault = (file: unknown): FaultyDay | undefined => {
  if (typeof file !== 'object' || file === null || Array.isArray(file)) {
    return { faults: [{ at: 'the file', value: file, says: 'Must be one object {...}.' }] };
  }
  return undefined;
};

/**
 * Reads a day file that is a value already (parsed JSON, or one made in code).
 * @returns the day, or every fault with the field as the file calls it; never throws
 */
export function readDayFile(file: unknown): ParsedDay | FaultyDay {
  const wrong = headFault(file);
  if (wrong) return wrong;
  const shaped = readShape(dayFileShape, file);
  if ('faults' in shaped) return shaped;
  const notes = new DayFileNotes(file);
  const parsed = readParts(notes, shaped.value);
  // Places of locks move up where one before them names no animal; the check has nothing to add to those files.
  if (parsed.day.locks.length === shaped.value.locks.length) notes.addChecked(checkDay(parsed.day));
  if (notes.faults.length > 0) return { faults: notes.faults };
  return { ...parsed, warnings: notes.warnings };
}
