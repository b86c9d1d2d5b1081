import { loadCuttingDay, type StoredDay } from '@flitchbook/db';
import { done, type Outcome, refused } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { dayUnknown, look, transact } from '../transact.ts';
import { solveKeeping } from './solve-keeping.ts';
import { storeChecked } from './store.ts';

/** The day as it stands, in one view of the database. */
export async function loadDay(ctx: Ctx, dayId: string): Promise<Outcome<StoredDay>> {
  return look(ctx.db, async (tx) => {
    const stored = await loadCuttingDay(tx, ctx.actor.shopId, dayId);
    return stored ? done(stored) : dayUnknown(dayId);
  });
}

const isPlanned = ({ day }: StoredDay): boolean => day.plannedVersion === day.version;

/**
 * Plans the day as it stands and stores the plan, unless the stored one still fits or the day is closed.
 * @returns plan.overtaken when the day changed meanwhile
 */
export async function keepPlanned(ctx: Ctx, dayId: string): Promise<Outcome<null>> {
  const stored = await loadDay(ctx, dayId);
  if (!stored.ok) return stored;
  const { day, cuttingDay, orders } = stored.value;
  if (isPlanned(stored.value) || day.state === 'closed') return done(null);
  const keeping = await solveKeeping(ctx, cuttingDay, orders);
  if (!keeping.ok) return keeping;
  return transact(ctx.db, async (tx) => {
    if (await storeChecked(tx, ctx, { keeping: keeping.value, orders, madeFor: day.version }))
      return done(null);
    return refused('plan.overtaken', 'The day changed while it was being planned.', { retryAfterSeconds: 1 });
  });
}
