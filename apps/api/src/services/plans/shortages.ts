import { findDay, type LedgerRecord, listLedgerOfDay } from '@flitchbook/db';
import { done, type Outcome } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { authorise } from '../roles.ts';
import { dayUnknown, look } from '../transact.ts';

/** Promises of a day that could not be kept, as the ledger has them: what was given up first comes first. */
export async function listShortages(ctx: Ctx, dayId: string): Promise<Outcome<readonly LedgerRecord[]>> {
  const refusal = authorise(ctx, 'shortages.list');
  if (refusal) return refusal;
  const { shopId } = ctx.actor;
  return look(ctx.db, async (tx) => {
    if (!(await findDay(tx, shopId, dayId))) return dayUnknown(dayId);
    return done(await listLedgerOfDay(tx, shopId, dayId, 'shortage.listed'));
  });
}
