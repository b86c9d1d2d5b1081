import { z } from 'zod';
import { whyShape } from './cutting-plan.ts';
import { newLineShape, newShareShape } from './orders.ts';
import { count, instant, listOf, localDate, maybe, nameText, noteText, storedId } from './parts.ts';
import { insteadShape } from './problems.ts';

const unpriced = { rank: true, priceMinorPerKg: true } as const;

/** POST /api/days/:dayId/holds: what is promised, at the shop's own prices. A customer's own name goes before `owner`. */
export const newHoldShape = z.strictObject({
  orderId: maybe(storedId),
  owner: nameText,
  note: maybe(noteText),
  lines: listOf(newLineShape.omit(unpriced), 100),
  shares: listOf(newShareShape.omit(unpriced), 10),
  orQueue: maybe(z.boolean()).meta({ description: 'Wait in the queue where it does not fit now.' }),
});
export type NewHold = z.infer<typeof newHoldShape>;

/** POST /api/days/:dayId/quotes: nothing is stored. */
export const quoteShape = z.strictObject({
  fits: z.boolean(),
  how: z
    .enum(['laid-in', 'planned-anew'])
    .nullable()
    .meta({ description: 'Without moving anything, or by planning the day anew.' }),
  expectedMinor: count.meta({ description: 'At expected weights; the scale decides.' }),
  fromMinor: count.meta({ description: 'The range that the shop says before the scale has spoken.' }),
  toMinor: count,
  fromGrams: count,
  toGrams: count,
  depositMinor: count,
  holdSeconds: count,
  instead: listOf(insteadShape, 500),
  says: z.string().nullable(),
  why: whyShape.nullable(),
});
export type QuoteOnWire = z.infer<typeof quoteShape>;

/** GET /api/my/days */
export const offeredDaysShape = z.strictObject({
  days: listOf(
    z.strictObject({ dayId: storedId, date: localDate, customersUntil: instant.nullable() }),
    10_000,
  ),
});

/** PUT /api/days/:dayId/last-call */
export const lastCallShape = z.strictObject({ customersUntil: instant.nullable() });

export const lastCallSetShape = z.strictObject({
  dayId: storedId,
  customersUntil: instant.nullable(),
  version: count,
});

/** GET and PUT /api/rules: the limits are the database's. */
export const shopRulesShape = z.strictObject({
  holdSeconds: z.int().min(1).max(604_800),
  promotedHoldSeconds: z.int().min(1).max(604_800),
  depositPercent: z.int().min(0).max(100),
  depositFromMinor: z.int().min(0).max(2_147_483_647),
  ordersPerPerson: z.int().min(1).max(1000),
  piecesPerPerson: z.int().min(1).max(100_000),
  sharesPerPerson: z.int().min(0).max(1000),
});

/** GET /api/days/:dayId/shortages */
export const shortagesShape = z.strictObject({
  shortages: listOf(
    z.strictObject({
      orderId: storedId,
      number: count,
      at: instant,
      /** what the order was before: held or standing */
      was: z.string(),
      lacks: listOf(
        z.strictObject({
          lineId: maybe(storedId),
          shareId: maybe(storedId),
          asked: maybe(count),
          filled: maybe(count),
          says: z.string(),
        }),
        1000,
      ),
    }),
    100_000,
  ),
});
