import { z } from 'zod';
import { readingShape } from './carcass.ts';
import { anyId, count, instant, listOf, localDate, maybe, nameText, storedId } from './parts.ts';

const many = 100_000;

const thingShape = z.strictObject({ kind: z.enum(['cut', 'item', 'stock', 'bulk']), id: anyId });
const priceShape = z.strictObject({ minor: count, per: z.enum(['kg', 'lb']) });
export const legalModeShape = z.enum(['for-sale', 'for-owner']).meta({
  description:
    'for-owner: cut for whoever owned the animal before slaughter; it is never sold. Fixed when it is booked.',
});

const packToMakeShape = z
  .strictObject({
    key: anyId,
    animalId: storedId,
    animal: z.string(),
    sideId: storedId.nullable(),
    thing: thingShape,
    name: z.string(),
    size: z.string(),
    pieceIds: listOf(anyId, many),
    orderId: storedId.nullable(),
    orderNumber: count.nullable(),
    owner: z.string().nullable().meta({ description: 'null: for the counter.' }),
    expectedMg: count,
    price: priceShape.nullable().meta({ description: 'null: part of a share, or cut for its owner.' }),
  })
  .meta({ description: 'A pack that the plan foresees and that is not made yet.' });
export type PackToMakeOnWire = z.infer<typeof packToMakeShape>;

export const packShape = z
  .strictObject({
    packId: storedId,
    serial: count,
    dayId: storedId,
    animalId: storedId,
    sideId: storedId.nullable(),
    legalMode: legalModeShape,
    lot: z.string(),
    foreseen: anyId,
    thing: thingShape,
    name: z.string(),
    pieces: count,
    orderId: storedId.nullable(),
    lineId: storedId.nullable(),
    shareId: storedId.nullable(),
    gross: readingShape,
    tare: readingShape,
    net: readingShape,
    netGrams: count,
    expectedMg: count,
    price: priceShape.nullable(),
    amountMinor: count.nullable(),
    frozen: z.boolean(),
    packedOn: localDate,
    bestBefore: localDate.nullable(),
    packedAt: instant,
    isGone: z.boolean(),
    soldMinor: count.nullable(),
  })
  .meta({ description: 'Pieces of one animal in one wrap, as it was weighed.' });
export type PackOnWire = z.infer<typeof packShape>;

/** GET /api/days/:dayId/packs */
export const dayPacksShape = z.strictObject({
  dayId: storedId,
  date: localDate,
  isClosed: z.boolean().meta({ description: 'The first pack ends the taking of orders.' }),
  tares: listOf(
    z.strictObject({ name: z.string(), text: z.string(), unit: z.enum(['kg', 'g', 'lb', 'oz']) }),
    50,
  ),
  toMake: listOf(packToMakeShape, many),
  packs: listOf(packShape, many),
});
export type DayPacks = z.infer<typeof dayPacksShape>;

/** POST /api/days/:dayId/packs */
export const newPackShape = z.strictObject({
  packId: maybe(storedId),
  key: anyId.meta({ description: 'Of a pack to make.' }),
  pieceIds: maybe(listOf(anyId, 1000)).meta({
    description: 'Some of its pieces only; all where it is left out.',
  }),
  gross: readingShape,
  tare: readingShape,
  frozen: maybe(z.boolean()),
});
export type NewPackOnWire = z.infer<typeof newPackShape>;

/** POST /api/label-runs */
export const newLabelRunShape = z.strictObject({ runId: maybe(storedId), packIds: listOf(storedId, 2000) });
export const labelRunShape = z.strictObject({
  runId: storedId,
  packs: listOf(z.strictObject({ packId: storedId, isPrinted: z.boolean() }), 2000),
});
export type LabelRunOnWire = z.infer<typeof labelRunShape>;
/** POST /api/label-runs/:runId/printed */
export const printedShape = z.strictObject({ packIds: listOf(storedId, 2000) });

/** GET /api/counter */
export const counterShape = z.strictObject({
  packs: listOf(
    z.strictObject({
      packId: storedId,
      serial: count,
      name: z.string(),
      animal: z.string(),
      lot: z.string(),
      net: readingShape,
      price: priceShape.nullable(),
      amountMinor: count.nullable(),
      packedOn: localDate,
      days: z.int(),
      isOld: z.boolean(),
      orderNumber: count.nullable().meta({ description: 'null: free to sell.' }),
      owner: z.string().nullable(),
    }),
    many,
  ),
});
export type CounterOnWire = z.infer<typeof counterShape>;

/** POST /api/counter/sales */
export const newSaleShape = z.strictObject({
  handOverId: maybe(storedId),
  packs: listOf(z.strictObject({ packId: storedId, soldMinor: count }), 200),
  method: z.enum(['cash', 'card-terminal', 'transfer']),
  takenBy: maybe(nameText),
});
export type NewSale = z.infer<typeof newSaleShape>;
export const saleShape = z.strictObject({ handOverId: storedId, totalMinor: count });
