import { appendAudit, appendLedger, replaceLocks } from '@flitchbook/db';
import type { Lock } from '@flitchbook/plan';
import { done, type Outcome, refused } from '../../refusals.ts';
import type { TravellingDay } from '../../solve/day-solver.ts';
import { type Board, readBoardIn } from '../boards/read.ts';
import { checkAgainstDay } from '../check-against-day.ts';
import type { Ctx } from '../ctx.ts';
import { loadDay } from '../plans/keep.ts';
import { solveKeeping } from '../plans/solve-keeping.ts';
import { type PlanStoring, storeChecked } from '../plans/store.ts';
import { authorise } from '../roles.ts';
import { touch, transact } from '../transact.ts';

export interface Settling {
  readonly dayId: string;
  /** version of the day that the butcher saw */
  readonly ifVersion: number;
  /** every lock of the day from now on */
  readonly locks: readonly Lock[];
}

/** The day with these locks in place of its own; refused where one does not fit. */
export function withLocks(day: TravellingDay, locks: readonly Lock[]): Outcome<TravellingDay> {
  const after = { ...day, locks };
  const faults = checkAgainstDay({ ...day, locks: [] }, after, [{ inDay: 'locks', inRequest: 'locks' }]);
  if (faults.length === 0) return done(after);
  return refused('lock.invalid', 'A lock does not fit the day; errors says which.', { faults });
}

async function storeSettled(
  ctx: Ctx,
  settling: Settling,
  planned: Pick<PlanStoring, 'keeping' | 'orders'>,
): Promise<Outcome<Board>> {
  const { dayId, ifVersion, locks } = settling;
  const { shopId, personId } = ctx.actor;
  return transact(ctx.db, async (tx) => {
    const touched = await touch(tx, { shopId, dayId, ifVersion });
    if (!touched.ok) return touched;
    await replaceLocks(tx, touched.value, locks);
    const facts = { locks };
    await appendLedger(tx, { shopId, kind: 'locks.settled', dayId, orderId: null, personId, facts });
    await appendAudit(tx, { shopId, personId, action: 'locks.settle', subject: dayId, facts });
    if (!(await storeChecked(tx, ctx, { ...planned, madeFor: touched.value.version }))) {
      throw new Error(`day ${dayId} moved on while it was locked`);
    }
    return readBoardIn(tx, ctx, dayId);
  });
}

/** Settles choices and plans the day around them; locks and plan are stored together or not at all. */
export async function settleLocks(ctx: Ctx, settling: Settling): Promise<Outcome<Board>> {
  const refusal = authorise(ctx, 'locks.settle');
  if (refusal) return refusal;
  const stored = await loadDay(ctx, settling.dayId);
  if (!stored.ok) return stored;
  const { day, cuttingDay, orders } = stored.value;
  if (day.state === 'closed')
    return refused('day.closed', 'The cutting day is closed: nothing on it changes any more.');
  if (day.version !== settling.ifVersion) {
    return refused(
      'edit.version-stale',
      `The day is at version ${day.version} now. Read it again, then decide.`,
    );
  }
  const proposed = withLocks(cuttingDay, settling.locks);
  if (!proposed.ok) return proposed;
  const keeping = await solveKeeping(ctx, proposed.value, orders);
  return keeping.ok ? storeSettled(ctx, settling, { keeping: keeping.value, orders }) : keeping;
}
