import { type DaySummary, listDays } from '@flitchbook/db';
import { done, type Outcome } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { authorise } from '../roles.ts';
import { look } from '../transact.ts';

/** The shop's cutting days with what is on them. */
export async function listCuttingDays(ctx: Ctx): Promise<Outcome<readonly DaySummary[]>> {
  const refusal = authorise(ctx, 'days.list');
  if (refusal) return refusal;
  return look(ctx.db, async (tx) => done(await listDays(tx, ctx.actor.shopId)));
}
