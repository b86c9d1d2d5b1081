import { appendAudit, appendLedger, cancelOrder, findOrder, type OrderRecord } from '@flitchbook/db';
import { done, type Outcome, type Refusal, refused } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { tellOwner } from '../mails/write-mail.ts';
import { authorise } from '../roles.ts';
import { touch, transact } from '../transact.ts';

const unknown = (orderId: string): Refusal => refused('order.unknown', `The shop has no order ${orderId}.`);

/** Cancels an order: it keeps its number and is planned no more. The day is planned again afterwards. */
export async function cancelTaken(
  ctx: Ctx,
  { orderId, ifVersion }: { readonly orderId: string; readonly ifVersion: number },
): Promise<Outcome<OrderRecord>> {
  const refusal = authorise(ctx, 'orders.cancel');
  if (refusal) return refusal;
  const { shopId, personId } = ctx.actor;
  const cancelled = await transact(ctx.db, async (tx) => {
    const order = await findOrder(tx, shopId, orderId);
    if (!order) return unknown(orderId);
    const { dayId, number } = order;
    const touched = await touch(tx, { shopId, dayId });
    if (!touched.ok) return touched;
    switch (await cancelOrder(tx, touched.value, { orderId, version: ifVersion })) {
      case 'unknown':
        return unknown(orderId);
      case 'already':
        return refused('order.already-cancelled', `Order ${number} is cancelled already.`);
      case 'stale':
        return refused('edit.version-stale', 'The order has changed. Read it again, then decide.');
      case 'cancelled': {
        const facts = { number };
        await appendLedger(tx, { shopId, kind: 'order.cancelled', dayId, orderId, personId, facts });
        await appendAudit(tx, { shopId, personId, action: 'order.cancel', subject: orderId, facts });
        const gone = { ...order, state: 'cancelled' as const, assured: false, version: ifVersion + 1 };
        await tellOwner(tx, ctx, 'order.cancelled', gone);
        return done(gone);
      }
    }
  });
  if (cancelled.ok) ctx.dayChanged(shopId, cancelled.value.dayId);
  return cancelled;
}
