import { findDay, listOrders, type OrderRecord } from '@flitchbook/db';
import { done, type Outcome } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { authorise } from '../roles.ts';
import { dayUnknown, look } from '../transact.ts';

/** The orders of a day by number, cancelled ones too. */
export async function listDayOrders(ctx: Ctx, dayId: string): Promise<Outcome<readonly OrderRecord[]>> {
  const refusal = authorise(ctx, 'orders.list');
  if (refusal) return refusal;
  const { shopId } = ctx.actor;
  return look(ctx.db, async (tx) => {
    if (!(await findDay(tx, shopId, dayId))) return dayUnknown(dayId);
    return done(await listOrders(tx, shopId, dayId));
  });
}
