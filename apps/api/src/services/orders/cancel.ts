import { appendAudit, appendLedger, cancelOrder, isOpenToCustomers, type OrderRecord } from '@flitchbook/db';
import { done, type Outcome, refused } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { tellOwner } from '../mails/write-mail.ts';
import { ownOrder } from '../reservations/own-order.ts';
import { authorise } from '../roles.ts';
import { touch, transact } from '../transact.ts';

/**
 * Cancels an order: it keeps its number and is planned no more. The day is planned again afterwards. A customer cancels his
 * own, as long as the day takes orders from customers; after that the shop is asked.
 */
export async function cancelTaken(
  ctx: Ctx,
  { orderId, ifVersion }: { readonly orderId: string; readonly ifVersion: number },
): Promise<Outcome<OrderRecord>> {
  const refusal = authorise(ctx, 'orders.cancel');
  if (refusal) return refusal;
  const { shopId, personId, role } = ctx.actor;
  const cancelled = await transact(ctx.db, async (tx) => {
    const found = await ownOrder(tx, ctx, orderId);
    if (!found.ok) return found;
    const order = found.value;
    const { dayId, number } = order;
    if (role === 'customer' && !(await isOpenToCustomers(tx, shopId, dayId)))
      return refused('day.closed-to-customers', 'The day takes no more changes on line. Ask the shop.');
    const touched = await touch(tx, { shopId, dayId });
    if (!touched.ok) return touched;
    switch (await cancelOrder(tx, touched.value, { orderId, version: ifVersion })) {
      case 'unknown':
        return refused('order.unknown', `The shop has no order ${orderId}.`);
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
