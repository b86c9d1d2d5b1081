import { z } from 'zod';
import { factShape, handShape, readingShape } from './carcass.ts';
import { legalModeShape } from './packs.ts';
import { anyId, count, listOf, maybe, nameText, storedId } from './parts.ts';

const hotOrCold = z
  .enum(['hot', 'cold'])
  .meta({ description: 'Whether the carcass was weighed warm or chilled.' });
const lostParts = listOf(anyId, 100);

const newSideShape = z.strictObject({
  hand: handShape,
  weight: maybe(readingShape),
  lostParts: maybe(lostParts),
});

/** POST /api/days/:dayId/animals. A side not weighed alone is the rest of the hanging weight, or half of it. */
export const newAnimalShape = z.strictObject({
  animalId: maybe(storedId),
  name: nameText,
  speciesId: anyId,
  farmId: maybe(storedId),
  ribs: maybe(z.int().min(1).max(30)),
  hanging: readingShape,
  hotOrCold,
  legalMode: maybe(legalModeShape),
  sides: maybe(listOf(newSideShape, 2)),
  facts: listOf(factShape, 5),
  lostItems: listOf(anyId, 100),
});
export type NewAnimal = z.infer<typeof newAnimalShape>;

/** PATCH /api/animals/:animalId: only what has changed. */
export const animalEditShape = z.strictObject({
  name: maybe(nameText),
  ribs: maybe(z.int().min(1).max(30)),
  hanging: maybe(readingShape),
  hotOrCold: maybe(hotOrCold),
  sides: maybe(listOf(newSideShape, 2)),
  facts: maybe(listOf(factShape, 5)),
  lostItems: maybe(listOf(anyId, 100)),
});
export type AnimalEdit = z.infer<typeof animalEditShape>;

export const animalShape = z.strictObject({
  animalId: storedId,
  dayId: storedId,
  version: count,
  name: z.string(),
  speciesId: anyId,
  farmId: storedId.nullable(),
  ribs: count,
  hanging: z.strictObject({ ...readingShape.shape, grams: count }),
  hotOrCold,
  legalMode: legalModeShape,
  facts: listOf(factShape, 5),
  lostItems: listOf(anyId, 100),
  sides: listOf(
    z.strictObject({
      sideId: storedId,
      hand: handShape,
      massMg: count,
      weight: readingShape.nullable(),
      lostParts,
    }),
    2,
  ),
});
export type Animal = z.infer<typeof animalShape>;

/** GET /api/days/:dayId/animals */
export const animalsShape = z.strictObject({ animals: listOf(animalShape, 1000) });
export type Animals = z.infer<typeof animalsShape>;
