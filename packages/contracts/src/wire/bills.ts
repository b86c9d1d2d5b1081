import { z } from 'zod';
import { readingShape } from './carcass.ts';
import { anyId, count, instant, listOf, localDate, maybe, noteText, storedId } from './parts.ts';

const priceShape = z.strictObject({ minor: count, per: z.enum(['kg', 'lb']) });

const billLineShape = z.strictObject({
  kind: z.enum(['pack', 'hanging', 'fee', 'allowance']),
  name: z.string(),
  about: z.string(),
  count,
  weight: readingShape.nullable(),
  price: priceShape.nullable(),
  amountMinor: z.int(),
  taxClass: z.string(),
});

const taxShape = z.strictObject({
  taxClass: z.string(),
  name: z.string(),
  ratePpm: count,
  netMinor: count,
  taxMinor: count,
});

const movementShape = z.strictObject({
  paymentId: storedId,
  kind: z.enum(['deposit', 'payment', 'refund', 'credit']),
  method: z.enum(['cash', 'card-terminal', 'transfer']),
  amountMinor: count,
  note: z.string(),
  at: instant,
});

/** GET /api/orders/:orderId/account */
export const orderAccountShape = z
  .strictObject({
    orderId: storedId,
    number: count,
    owner: z.string(),
    estimate: z
      .strictObject({ fromMinor: count, toMinor: count })
      .meta({ description: 'A range until the scale has spoken.' }),
    bill: z
      .strictObject({
        billId: storedId,
        number: count,
        issuedOn: localDate,
        lines: listOf(billLineShape, 10_000),
        taxes: listOf(taxShape, 100),
        netMinor: count,
        taxMinor: count,
        totalMinor: count,
        depositMinor: count,
      })
      .nullable(),
    draft: z
      .strictObject({
        lines: listOf(billLineShape, 10_000),
        taxes: listOf(taxShape, 100),
        netMinor: count,
        taxMinor: count,
        totalMinor: count,
        over: listOf(z.strictObject({ lineId: anyId, limitMinor: count, amountMinor: count }), 1000),
        needsConsent: z.boolean(),
      })
      .nullable()
      .meta({ description: 'What the bill would be on the packs made so far; null once it is settled.' }),
    unpacked: count.meta({ description: 'Packs of the order that are not made yet.' }),
    movements: listOf(movementShape, 10_000),
    paidMinor: count,
    creditedMinor: count,
    dueMinor: z.int().meta({ description: 'Below nothing: the shop owes it.' }),
  })
  .meta({ description: 'Where an order stands with the till.' });
export type OrderAccount = z.infer<typeof orderAccountShape>;

/** POST /api/orders/:orderId/bill */
export const settleShape = z.strictObject({
  fees: listOf(z.strictObject({ id: anyId, count: z.int().min(1).max(10_000) }), 50),
  hasConsent: maybe(z.boolean()).meta({
    description: 'The customer agreed to pay more than the estimate and its grace.',
  }),
});
export type Settle = z.infer<typeof settleShape>;

/** POST /api/orders/:orderId/payments */
export const newPaymentShape = z.strictObject({
  paymentId: maybe(storedId),
  kind: z.enum(['deposit', 'payment', 'refund', 'credit']),
  method: z.enum(['cash', 'card-terminal', 'transfer']),
  amountMinor: z.int().min(1).max(2_147_483_647),
  note: maybe(noteText),
});
export type NewPaymentOnWire = z.infer<typeof newPaymentShape>;
