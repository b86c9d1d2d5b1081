import { z } from 'zod';
import { anyId, count, instant, listOf, localDate, maybe, nameText, storedId } from './parts.ts';

const ppm = z.int().min(0).max(1_000_000);

/** GET /api/kitchen/trim */
export const trimPoolShape = z.strictObject({
  lots: listOf(
    z.strictObject({
      packId: storedId,
      serial: count,
      kind: anyId,
      name: z.string(),
      animalId: storedId,
      lot: z.string(),
      orderId: storedId.nullable().meta({ description: 'null: the shop’s own.' }),
      mayPool: z.boolean(),
      cutOn: localDate,
      ageDays: z.int(),
      leftGrams: count,
      fatPpm: ppm.meta({ description: 'Of the book, until somebody measures.' }),
    }),
    100_000,
  ),
  kinds: listOf(
    z.strictObject({ kind: anyId, grams: count, fatGrams: count, lots: count, oldestDays: z.int() }),
    100,
  ),
});
export type TrimPoolOnWire = z.infer<typeof trimPoolShape>;

/** PUT /api/orders/:orderId/pool-consent */
export const poolConsentShape = z.strictObject({ mayPool: z.boolean() });

const drawsShape = listOf(z.strictObject({ packId: storedId, grams: z.int().min(1).max(2_000_000) }), 500);

const recipeShape = z.strictObject({
  recipeId: anyId,
  name: nameText,
  meats: listOf(z.strictObject({ kind: anyId, leastPpm: maybe(ppm), mostPpm: maybe(ppm) }), 20),
  fatLeastPpm: ppm,
  fatMostPpm: ppm,
  additions: listOf(
    z.strictObject({
      name: nameText,
      ppmOfMeat: ppm,
      allergens: listOf(anyId, 20),
      costMinorPerKg: count,
      isWater: maybe(z.boolean()),
    }),
    60,
  ),
  batchLeastMg: count,
  batchMostMg: count,
  minutesPerBatch: count,
  trimDaysMost: count,
  standard: maybe(z.literal('fresh-pork-sausage')),
});

const typed = z.string().max(100);
const cureRequestShape = z.strictObject({
  jurisdiction: anyId,
  product: anyId,
  method: anyId,
  meat: typed,
  skin: z.enum(['on', 'off']),
  bag: z.strictObject({ nitrite: typed, nitrate: maybe(typed), substance: maybe(typed) }),
  skinShare: maybe(typed),
  target: maybe(typed),
  cure: maybe(typed),
  pickle: maybe(typed),
  uptake: maybe(typed),
  salt: maybe(typed),
  sugar: maybe(typed),
  ascorbate: maybe(typed),
  scaleDivision: maybe(typed),
});

const common = { batchId: maybe(storedId), name: nameText, draws: drawsShape };

/** POST /api/kitchen/batches */
export const newBatchShape = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('sausage'), ...common, recipe: recipeShape }),
  z.strictObject({ kind: z.literal('lard'), ...common }),
  z.strictObject({
    kind: z.literal('cure'),
    ...common,
    cureLot: nameText.meta({ description: 'Number on the bag.' }),
    request: cureRequestShape,
  }),
]);
export type NewBatchOnWire = z.infer<typeof newBatchShape>;

export const batchShape = z.strictObject({
  batchId: storedId,
  kind: z.enum(['sausage', 'cure', 'lard']),
  name: z.string(),
  madeOn: localDate,
  madeAt: instant,
  draws: drawsShape,
  label: z.strictObject({
    ingredients: listOf(z.string(), 100),
    allergens: listOf(z.string(), 30),
    notForSale: z.boolean(),
    says: listOf(z.string(), 20),
  }),
});
export type BatchOnWire = z.infer<typeof batchShape>;

/** GET /api/kitchen/batches */
export const batchesShape = z.strictObject({ batches: listOf(batchShape, 1000) });
