import type { CuttingPlan, Lock } from '@flitchbook/plan';
import { done, type Outcome } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { withLocks } from '../locks/settle.ts';
import { authorise } from '../roles.ts';
import { loadDay } from './keep.ts';
import { solveKeeping } from './solve-keeping.ts';

/** What the day would come to with these locks. Stores nothing. */
export async function tryLocks(
  ctx: Ctx,
  dayId: string,
  locks: readonly Lock[],
): Promise<Outcome<CuttingPlan>> {
  const refusal = authorise(ctx, 'plans.try');
  if (refusal) return refusal;
  const stored = await loadDay(ctx, dayId);
  if (!stored.ok) return stored;
  const proposed = withLocks(stored.value.cuttingDay, locks);
  if (!proposed.ok) return proposed;
  const keeping = await solveKeeping(ctx, proposed.value, stored.value.orders);
  return keeping.ok ? done(keeping.value.plan) : keeping;
}
