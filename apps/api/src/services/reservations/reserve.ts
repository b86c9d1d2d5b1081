import { findOrder, keepPlan, type OrderRecord, passOrder, type Tx } from '@flitchbook/db';
import { done, type Outcome, type Refusal, refused } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { tellOwner } from '../mails/write-mail.ts';
import { type OnceAnswer, type OnceKey, once } from '../once.ts';
import { authorise } from '../roles.ts';
import { touch, transact } from '../transact.ts';
import { note } from './commit.ts';
import { ownOrder } from './own-order.ts';

function refuseReserve({ number, state }: OrderRecord): Refusal {
  if (state === 'held' || state === 'lapsed')
    return refused('reservation.lapsed', `The hold of order ${number} has lapsed. Ask for it anew.`);
  return refused('reservation.not-held', `Order ${number} is ${state}: only what is held is reserved.`);
}

async function reserveIn(tx: Tx, ctx: Ctx, orderId: string): Promise<Outcome<OrderRecord>> {
  const { shopId } = ctx.actor;
  const found = await ownOrder(tx, ctx, orderId);
  if (!found.ok) return found;
  const { dayId, number, depositMinor } = found.value;
  const touched = await touch(tx, { shopId, dayId });
  if (!touched.ok) return touched;
  const version = await passOrder(tx, touched.value, { orderId }, { to: 'standing' });
  if (version === undefined) {
    // Somebody may have moved it on before the day was ours: what it is now decides what is said.
    const now = await findOrder(tx, shopId, orderId);
    return refuseReserve(now ?? found.value);
  }
  await keepPlan(tx, touched.value);
  const reserved = { ...found.value, state: 'standing' as const, heldUntil: null, version };
  const facts = { number, depositMinor };
  await note(tx, ctx, { dayId, orderId, kind: 'order.reserved', action: 'order.reserve', facts });
  await tellOwner(tx, ctx, 'order.reserved', reserved);
  return done(reserved);
}

/** Makes a hold lasting. The database's clock decides whether it still stands, whatever any other clock says. */
export async function reserveOrder(
  ctx: Ctx,
  orderId: string,
  key: OnceKey,
): Promise<Outcome<OnceAnswer<OrderRecord>>> {
  const refusal = authorise(ctx, 'reservations.reserve');
  if (refusal) return refusal;
  return transact(ctx.db, (tx) => once(tx, ctx.actor, key, () => reserveIn(tx, ctx, orderId)));
}
