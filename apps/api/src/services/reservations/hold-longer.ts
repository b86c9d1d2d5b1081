import { holdLonger, keepPlan, type OrderRecord, type Tx } from '@flitchbook/db';
import { done, type Outcome, refused } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { type OnceAnswer, type OnceKey, once } from '../once.ts';
import { authorise } from '../roles.ts';
import { touch, transact } from '../transact.ts';
import { note } from './commit.ts';
import { ownOrder } from './own-order.ts';
import { rulesOf } from './shop-rules.ts';

/** A hold may be given its time anew at least ten times (WCAG 2.2, success criterion 2.2.1). */
const timesMost = 10;

async function holdLongerIn(tx: Tx, ctx: Ctx, orderId: string): Promise<Outcome<OrderRecord>> {
  const { shopId } = ctx.actor;
  const found = await ownOrder(tx, ctx, orderId);
  if (!found.ok) return found;
  const { dayId, number, state } = found.value;
  const touched = await touch(tx, { shopId, dayId });
  if (!touched.ok) return touched;
  const { holdSeconds } = await rulesOf(tx, shopId);
  const longestSeconds = holdSeconds * (timesMost + 1);
  const version = await holdLonger(tx, touched.value, orderId, { holdSeconds, longestSeconds });
  if (version === undefined) {
    if (state === 'held' || state === 'lapsed')
      return refused('reservation.lapsed', `The hold of order ${number} has lapsed. Ask for it anew.`);
    return refused('reservation.not-held', `Order ${number} is ${state}: only what is held is held longer.`);
  }
  await keepPlan(tx, touched.value);
  const held = await ownOrder(tx, ctx, orderId);
  if (!held.ok) return held;
  const facts = { number, until: held.value.heldUntil };
  await note(tx, ctx, { dayId, orderId, kind: 'order.held-longer', action: 'order.hold-longer', facts });
  return done(held.value);
}

/** Gives a hold its full time anew. Once that has been done often enough the answer is the same hold, no longer. */
export async function holdOrderLonger(
  ctx: Ctx,
  orderId: string,
  key: OnceKey,
): Promise<Outcome<OnceAnswer<OrderRecord>>> {
  const refusal = authorise(ctx, 'reservations.hold-longer');
  if (refusal) return refusal;
  return transact(ctx.db, (tx) => once(tx, ctx.actor, key, () => holdLongerIn(tx, ctx, orderId)));
}
