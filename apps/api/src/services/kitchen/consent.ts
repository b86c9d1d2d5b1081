import { appendAudit, findOrder, setPoolConsent } from '@flitchbook/db';
import { done, type Outcome } from '../../refusals.ts';
import { orderUnknown } from '../bills/order-account.ts';
import type { Ctx } from '../ctx.ts';
import { authorise } from '../roles.ts';
import { transact } from '../transact.ts';

/** Writes down whether an order's owner lets his trim be ground with that of others who agreed. */
export async function sayPoolConsent(ctx: Ctx, orderId: string, mayPool: boolean): Promise<Outcome<null>> {
  const refusal = authorise(ctx, 'kitchen.consent');
  if (refusal) return refusal;
  const { shopId, personId } = ctx.actor;
  return transact(ctx.db, async (tx) => {
    if (!(await findOrder(tx, shopId, orderId))) return orderUnknown(orderId);
    await setPoolConsent(tx, { shopId, orderId, saidBy: personId }, mayPool);
    const facts = { mayPool };
    await appendAudit(tx, { shopId, personId, action: 'pool.consent', subject: orderId, facts });
    return done(null);
  });
}
