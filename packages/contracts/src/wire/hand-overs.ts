import { z } from 'zod';
import { readingShape } from './carcass.ts';
import { anyId, count, instant, listOf, localDate, maybe, nameText, noteText, storedId } from './parts.ts';

const clockTime = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'must be a time of day, hh:mm');

export const pickUpShape = z.strictObject({
  date: localDate,
  from: clockTime,
  to: clockTime,
  startsAt: instant,
  endsAt: instant,
  place: z.string(),
  version: count,
  due: listOf(
    z.strictObject({ step: z.enum(['remind', 'freeze', 'release']), dueAt: instant, isDue: z.boolean() }),
    3,
  ),
});
export type PickUpOnWire = z.infer<typeof pickUpShape>;

/** GET /api/orders/:orderId/hand-over */
export const handOverListShape = z
  .strictObject({
    orderId: storedId,
    number: count,
    owner: z.string(),
    note: z.string(),
    lines: listOf(
      z.strictObject({
        lineId: anyId,
        name: z.string(),
        asked: count,
        packed: count,
        given: count,
        byWeight: z.boolean(),
        state: z.enum(['gone', 'ready', 'short', 'partly', 'later', 'waiting']),
      }),
      1000,
    ),
    packs: listOf(
      z.strictObject({
        packId: storedId,
        serial: count,
        name: z.string(),
        pieces: count,
        net: readingShape,
        lot: z.string(),
        frozen: z.boolean(),
        isGone: z.boolean(),
      }),
      10_000,
    ),
    pickUp: pickUpShape.nullable(),
    dueMinor: z.int(),
    isSettled: z.boolean(),
  })
  .meta({ description: 'The order against what is packed for it.' });
export type HandOverList = z.infer<typeof handOverListShape>;

/** POST /api/orders/:orderId/hand-over */
export const newHandOverShape = z.strictObject({
  handOverId: maybe(storedId),
  packIds: maybe(listOf(storedId, 2000)),
  scans: maybe(listOf(z.string().min(1).max(200), 2000)).meta({
    description: 'What a scanner read from labels.',
  }),
  takenBy: nameText,
  proof: z.enum(['signature', 'code', 'known']),
  note: maybe(noteText),
});
export type NewHandOverOnWire = z.infer<typeof newHandOverShape>;

/** PUT /api/orders/:orderId/pick-up */
export const newPickUpShape = z.strictObject({
  date: localDate,
  from: clockTime,
  to: clockTime,
  place: maybe(z.string().max(200)),
});
export type NewPickUp = z.infer<typeof newPickUpShape>;

/** POST /api/orders/:orderId/pick-up/steps */
export const pickUpStepShape = z.strictObject({ step: z.enum(['remind', 'freeze', 'release']) });

const outShape = z.strictObject({
  kind: z.enum([
    'batch',
    'rendering',
    'bone-and-skin',
    'set-aside',
    'condemned',
    'staff',
    'drying',
    'saw-dust',
  ]),
  name: nameText,
  grams: count,
});

/** POST /api/animals/:animalId/closing */
export const newClosingShape = z.strictObject({
  outs: listOf(outShape, 200),
  note: maybe(noteText),
  minutes: z.int().min(0).max(100_000),
  animalMinor: z.int().min(0).max(2_147_483_647).meta({ description: 'What the animal cost.' }),
});
export type NewClosingOnWire = z.infer<typeof newClosingShape>;

/** GET /api/animals/:animalId/closing */
export const closingShape = z
  .strictObject({
    animalId: storedId,
    name: z.string(),
    farm: z.string().nullable(),
    dayId: storedId,
    isClosed: z.boolean(),
    hangingGrams: count,
    hotOrCold: z.enum(['hot', 'cold']),
    apartGrams: count.meta({
      description: 'Head, liver and the like: on no side, in and out on their own weight.',
    }),
    packedGrams: count,
    namedGrams: count,
    restGrams: z.int(),
    flag: z.enum(['none', 'rest-too-large', 'more-out-than-in']),
    outs: listOf(outShape, 200),
    note: z.string(),
    unpacked: count.meta({ description: 'Packs that the plan foresees and that are not made.' }),
    stillHere: count.meta({ description: 'Packs that have not left the house.' }),
    yields: listOf(z.strictObject({ name: z.string(), plannedGrams: count, packedGrams: count }), 1000),
    margin: z.strictObject({
      byChannel: listOf(
        z.strictObject({ channel: z.enum(['order', 'share', 'counter']), grams: count, minor: count }),
        3,
      ),
      soldMinor: count,
      animalMinor: count,
      labourMinor: count,
      marginMinor: z.int(),
    }),
  })
  .meta({ description: 'An animal in balance: in equals out to the gram.' });
export type Closing = z.infer<typeof closingShape>;

const traceRowShape = z.strictObject({
  packId: storedId,
  serial: count,
  lot: z.string(),
  name: z.string(),
  netGrams: count,
  packedOn: localDate,
  animalId: storedId,
  animal: z.string(),
  farm: z.string().nullable(),
  cutOn: localDate,
  orderNumber: count.nullable(),
  customer: z.string().nullable(),
  leftAt: instant.nullable(),
  takenBy: z.string().nullable(),
});
/** GET /api/trace */
export const traceShape = z.strictObject({ packs: listOf(traceRowShape, 1_000_000) });
export type Trace = z.infer<typeof traceShape>;
