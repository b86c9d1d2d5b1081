import { listOrdersOf, type OrderRecord } from '@flitchbook/db';
import { done, type Outcome } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { authorise } from '../roles.ts';
import { look } from '../transact.ts';

/** The orders of whoever asks, by number. */
export async function listOwnOrders(ctx: Ctx): Promise<Outcome<readonly OrderRecord[]>> {
  const refusal = authorise(ctx, 'orders.own');
  if (refusal) return refusal;
  const { shopId, personId } = ctx.actor;
  return look(ctx.db, async (tx) => done(personId === null ? [] : await listOrdersOf(tx, shopId, personId)));
}
