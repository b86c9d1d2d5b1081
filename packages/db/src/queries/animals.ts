import { and, asc, eq, inArray } from 'drizzle-orm';
import type { Tx } from '../database.ts';
import { handleOf } from '../engines/engine.ts';
import { animals, sides } from '../schema/index.ts';
import type { AnimalRecord, NewAnimal, NewSide, TouchedDay } from './shapes.ts';

const factsOf = (animal: NewAnimal) => ({
  farmId: animal.farmId,
  name: animal.name,
  speciesId: animal.speciesId,
  ribs: animal.ribs,
  hangingText: animal.hanging.text,
  hangingUnit: animal.hanging.unit,
  hangingGrams: animal.hanging.grams,
  hotOrCold: animal.hotOrCold,
  legalMode: animal.legalMode,
  facts: [...animal.facts],
  lostItems: [...animal.lostItems],
});

const sideFacts = (side: NewSide) => ({
  hand: side.hand,
  massMg: side.massMg,
  weightText: side.weight?.text ?? null,
  weightUnit: side.weight?.unit ?? null,
  lostParts: [...side.lostParts],
});

function sideFrom(row: typeof sides.$inferSelect): NewSide {
  const { sideId, hand, massMg, weightText, weightUnit, lostParts } = row;
  const weight = weightText !== null && weightUnit !== null ? { text: weightText, unit: weightUnit } : null;
  return { sideId, hand, massMg, weight, lostParts };
}

const animalFrom = (row: typeof animals.$inferSelect, own: readonly NewSide[]): AnimalRecord => ({
  animalId: row.animalId,
  dayId: row.dayId,
  name: row.name,
  speciesId: row.speciesId,
  farmId: row.farmId,
  ribs: row.ribs,
  hanging: { text: row.hangingText, unit: row.hangingUnit, grams: row.hangingGrams },
  hotOrCold: row.hotOrCold,
  legalMode: row.legalMode,
  facts: row.facts,
  lostItems: row.lostItems,
  version: row.version,
  sides: own,
});

async function withSides(
  tx: Tx,
  shopId: string,
  found: readonly (typeof animals.$inferSelect)[],
): Promise<readonly AnimalRecord[]> {
  if (found.length === 0) return [];
  const ids = found.map((row) => row.animalId);
  const own = await handleOf(tx)
    .select()
    .from(sides)
    .where(and(eq(sides.shopId, shopId), inArray(sides.animalId, ids)))
    .orderBy(asc(sides.hand));
  return found.map((row) =>
    animalFrom(row, own.filter((side) => side.animalId === row.animalId).map(sideFrom)),
  );
}

/** @throws ConstraintViolation animals_one_per_id, sides_one_per_id, sides_one_per_hand, animals_farm_known and the limits */
export async function addAnimal(tx: Tx, day: TouchedDay, animal: NewAnimal): Promise<void> {
  const { shopId, dayId } = day;
  const { animalId } = animal;
  const handle = handleOf(tx);
  await handle.insert(animals).values({ shopId, dayId, animalId, ...factsOf(animal) });
  if (animal.sides.length === 0) return;
  const own = animal.sides.map((side) => ({ shopId, animalId, sideId: side.sideId, ...sideFacts(side) }));
  await handle.insert(sides).values(own);
}

/**
 * Replaces what is known of an animal of the day. Its sides stay the same ones: a side that is gone has lost parts.
 * @throws RangeError when a side is named that it does not have
 */
export async function updateAnimal(
  tx: Tx,
  day: TouchedDay,
  change: { readonly animal: NewAnimal; readonly version: number },
): Promise<'updated' | 'stale' | 'unknown'> {
  const { animal, version } = change;
  const handle = handleOf(tx);
  const thisAnimal = and(
    eq(animals.shopId, day.shopId),
    eq(animals.dayId, day.dayId),
    eq(animals.animalId, animal.animalId),
  );
  const updated = await handle
    .update(animals)
    .set({ ...factsOf(animal), version: version + 1 })
    .where(and(thisAnimal, eq(animals.version, version)))
    .returning({ animalId: animals.animalId });
  if (updated.length === 0) {
    const found = await handle.select({ version: animals.version }).from(animals).where(thisAnimal);
    return found.length === 0 ? 'unknown' : 'stale';
  }
  for (const side of animal.sides) {
    const changed = await handle
      .update(sides)
      .set(sideFacts(side))
      .where(
        and(eq(sides.shopId, day.shopId), eq(sides.animalId, animal.animalId), eq(sides.sideId, side.sideId)),
      )
      .returning({ sideId: sides.sideId });
    if (changed.length === 0) throw new RangeError(`animal ${animal.animalId} has no side ${side.sideId}`);
  }
  return 'updated';
}

/** In the order they were booked. */
export async function listAnimals(tx: Tx, shopId: string, dayId: string): Promise<readonly AnimalRecord[]> {
  const found = await handleOf(tx)
    .select()
    .from(animals)
    .where(and(eq(animals.shopId, shopId), eq(animals.dayId, dayId)))
    .orderBy(asc(animals.bookedAt), asc(animals.animalId));
  return await withSides(tx, shopId, found);
}

export async function findAnimal(
  tx: Tx,
  shopId: string,
  animalId: string,
): Promise<AnimalRecord | undefined> {
  const found = await handleOf(tx)
    .select()
    .from(animals)
    .where(and(eq(animals.shopId, shopId), eq(animals.animalId, animalId)));
  const [animal] = await withSides(tx, shopId, found);
  return animal;
}
