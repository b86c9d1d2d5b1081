import type { OrderAccount } from '@flitchbook/contracts';
import { done, type Outcome } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { authorise } from '../roles.ts';
import { look } from '../transact.ts';
import { accountOnWire, readAtTill } from './order-account.ts';

/** Where an order stands with the till. */
export async function readOrderAccount(ctx: Ctx, orderId: string): Promise<Outcome<OrderAccount>> {
  const refusal = authorise(ctx, 'accounts.read');
  if (refusal) return refusal;
  return look(ctx.db, async (tx) => {
    const till = await readAtTill(tx, ctx, orderId);
    return till.ok ? done(accountOnWire(till.value)) : till;
  });
}
