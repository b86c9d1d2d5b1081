import { type TraceFrom, type TraceRow, trace } from '@flitchbook/db';
import { done, type Outcome } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { authorise } from '../roles.ts';
import { look } from '../transact.ts';

/** One step back and one forward for every pack of a lot, an animal or a farm: also the list of a recall. */
export async function readTrace(ctx: Ctx, from: TraceFrom): Promise<Outcome<readonly TraceRow[]>> {
  const refusal = authorise(ctx, 'traces.read');
  if (refusal) return refusal;
  return look(ctx.db, async (tx) => done(await trace(tx, ctx.actor.shopId, from)));
}
