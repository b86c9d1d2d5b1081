import { z } from 'zod';
import { handShape, portionShape } from './carcass.ts';
import {
  askShape,
  carcassShareShape,
  demandLineShape,
  instructionsShape,
  rankShape,
  shareSizeShape,
  wantedShape,
} from './cutting-day.ts';
import { anyId, count, instant, listOf, maybe, nameText, noteText, storedId } from './parts.ts';

// The database counts in 32 bits.
const price = z.int().min(0).max(2_147_483_647);

export const newLineShape = z.strictObject({
  lineId: maybe(storedId),
  speciesId: maybe(anyId),
  cut: anyId,
  portion: portionShape,
  ask: askShape,
  rank: rankShape,
  priceMinorPerKg: maybe(price),
  sameAnimal: maybe(z.boolean()),
  onlyAnimal: maybe(storedId),
  onlyHand: maybe(handShape),
  substitutes: maybe(listOf(wantedShape, 10)),
});
export type NewLine = z.infer<typeof newLineShape>;

export const newShareShape = z.strictObject({
  shareId: maybe(storedId),
  speciesId: maybe(anyId),
  size: shareSizeShape,
  rank: rankShape,
  priceMinorPerKg: maybe(price),
  onlyAnimal: maybe(storedId),
  instructions: instructionsShape,
});
export type NewShare = z.infer<typeof newShareShape>;

/** POST /api/days/:dayId/orders */
export const newOrderShape = z.strictObject({
  orderId: maybe(storedId),
  owner: nameText,
  note: maybe(noteText),
  lines: listOf(newLineShape, 500),
  shares: listOf(newShareShape, 50),
});
export type NewOrder = z.infer<typeof newOrderShape>;

export const orderShape = z.strictObject({
  orderId: storedId,
  dayId: storedId,
  number: count,
  owner: z.string(),
  personId: storedId.nullable(),
  note: z.string(),
  state: z.enum(['queued', 'held', 'standing', 'lapsed', 'released', 'cancelled']),
  assured: z
    .boolean()
    .meta({ description: 'The stored plan covers all of it, and has since it was accepted.' }),
  heldUntil: instant.nullable().meta({ description: 'When a hold lapses; null unless held.' }),
  depositMinor: count,
  version: count,
  placedAt: instant,
  lines: listOf(demandLineShape, 500),
  shares: listOf(carcassShareShape, 50),
});
export type Order = z.infer<typeof orderShape>;

/** GET /api/days/:dayId/orders */
export const ordersShape = z.strictObject({ orders: listOf(orderShape, 100_000) });
export type Orders = z.infer<typeof ordersShape>;
