import { findOrder, type OrderRecord, type Tx } from '@flitchbook/db';
import { done, type Outcome, refused } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';

/** An order that the actor may see: to a customer, somebody else's is as unknown as one that never was. */
export async function ownOrder(tx: Tx, ctx: Ctx, orderId: string): Promise<Outcome<OrderRecord>> {
  const { shopId, personId, role } = ctx.actor;
  const order = await findOrder(tx, shopId, orderId);
  if (order && (role !== 'customer' || order.personId === personId)) return done(order);
  return refused('order.unknown', `The shop has no order ${orderId}.`);
}
