import { lastLedgerSeq } from '@flitchbook/db';
import { done, type Outcome } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { authorise } from '../roles.ts';
import { look } from '../transact.ts';

/** Number of the newest entry in the shop's ledger, 0 where there is none. */
export async function lastEntry(ctx: Ctx): Promise<Outcome<number>> {
  const refusal = authorise(ctx, 'events.follow');
  if (refusal) return refusal;
  return look(ctx.db, async (tx) => done(await lastLedgerSeq(tx, ctx.actor.shopId)));
}
