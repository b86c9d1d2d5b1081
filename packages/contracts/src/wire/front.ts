import { z } from 'zod';
import { portionShape } from './carcass.ts';
import { whyShape } from './cutting-plan.ts';
import { orderShape } from './orders.ts';
import { anyId, count, instant, listOf, localDate, maybe, storedId } from './parts.ts';
import { shopShape } from './sessions.ts';

const portionRuleShape = z.discriminatedUnion('by', [
  z.strictObject({ by: z.literal('thickness'), minUm: count, maxUm: count }),
  z.strictObject({ by: z.literal('ribs'), min: count, max: count }),
  z.strictObject({ by: z.literal('weight'), minGrams: count, maxGrams: count }),
  z.strictObject({ by: z.literal('whole') }),
  z.strictObject({ by: z.literal('bulk') }),
]);

const offerShape = z.strictObject({
  speciesId: anyId,
  cut: anyId,
  name: z.string(),
  says: z.string(),
  portions: listOf(portionRuleShape, 10),
  usual: portionShape,
  bothSides: z.boolean().meta({ description: 'One takes a piece of each side of an animal: two pieces.' }),
  priceMinorPerKg: count,
  eachGrams: count.meta({ description: 'What one usual portion is expected to weigh; 0 for loose meat.' }),
  more: count.nullable().meta({
    description:
      'Pieces of the usual portion, or grams, that the plan of today has room for without moving anything. 0: ask, and the day is planned anew for it. null: the day has no plan of this moment.',
  }),
});

/** GET /api/coming: for everyone, signed in or not */
export const comingShape = z
  .strictObject({
    shop: shopShape,
    days: listOf(
      z.strictObject({
        dayId: storedId,
        date: localDate,
        customersUntil: instant.nullable(),
        animals: listOf(z.strictObject({ speciesId: anyId, name: z.string(), count }), 100),
        farms: listOf(z.string(), 1000),
        offers: listOf(offerShape, 2000),
      }),
      10_000,
    ),
  })
  .meta({ description: 'Cutting days that customers may ask for something of, with what is still free.' });
export type Coming = z.infer<typeof comingShape>;
export type ComingDay = Coming['days'][number];
export type OfferedCut = ComingDay['offers'][number];

const rangeShape = z.strictObject({ from: count, to: count });

const promisedLineShape = z.strictObject({
  lineId: anyId,
  speciesId: anyId,
  cut: anyId,
  name: z.string(),
  asked: count,
  byWeight: z.boolean(),
  planned: count.nullable().meta({ description: 'As much of it as the plan gives; null without a plan.' }),
  why: whyShape.nullable().meta({ description: 'Why it is short, where it is.' }),
  expectedGrams: rangeShape,
  expectedMinor: rangeShape,
});

/** GET /api/orders/:orderId/promise */
export const promiseShape = z
  .strictObject({
    shop: shopShape,
    order: orderShape,
    date: localDate,
    dayIsOpen: z.boolean(),
    mayChange: z.boolean().meta({ description: 'The customer may still cancel it or give it back.' }),
    customersUntil: instant.nullable(),
    lines: listOf(promisedLineShape, 500),
    packs: listOf(
      z.strictObject({
        packId: storedId,
        lineId: maybe(anyId),
        name: z.string(),
        pieces: count,
        net: z.strictObject({ text: z.string(), unit: z.string() }),
        netGrams: count,
        frozen: z.boolean(),
        packedOn: localDate,
        isGone: z.boolean(),
      }),
      10_000,
    ),
    unpacked: count.meta({ description: 'Packs that the plan foresees for it and that are not made.' }),
    pickUp: z
      .strictObject({
        date: localDate,
        from: z.string(),
        to: z.string(),
        place: z.string(),
        version: count,
      })
      .nullable(),
    windows: listOf(
      z.strictObject({ date: localDate, from: z.string(), to: z.string(), free: count }),
      200,
    ).meta({ description: 'When it can be fetched, as far as there is room.' }),
    bill: z.strictObject({ number: count, totalMinor: count, dueMinor: z.int() }).nullable(),
  })
  .meta({ description: 'What a customer was promised, and what the scale has said since.' });
export type OrderPromise = z.infer<typeof promiseShape>;
