import { type Outcome, refused } from '../../refusals.ts';
import { type Board, readBoardIn } from '../boards/read.ts';
import type { Ctx } from '../ctx.ts';
import { type OnceAnswer, type OnceKey, once } from '../once.ts';
import { authorise } from '../roles.ts';
import { transact } from '../transact.ts';
import { loadDay } from './keep.ts';
import { solveKeeping } from './solve-keeping.ts';
import { storeChecked } from './store.ts';

const triesMax = 3;

async function tryOnce(ctx: Ctx, dayId: string, key: OnceKey): Promise<Outcome<OnceAnswer<Board>>> {
  const stored = await loadDay(ctx, dayId);
  if (!stored.ok) return stored;
  const { day, cuttingDay, orders } = stored.value;
  if (day.state === 'closed') return refused('day.closed', 'The cutting day is closed: its plan stands.');
  const keeping = await solveKeeping(ctx, cuttingDay, orders);
  if (!keeping.ok) return keeping;
  const storing = { keeping: keeping.value, orders, madeFor: day.version };
  return transact(ctx.db, (tx) =>
    once(tx, ctx.actor, key, async () => {
      if (await storeChecked(tx, ctx, storing)) return readBoardIn(tx, ctx, dayId);
      return refused(
        'plan.overtaken',
        `The day changed while it was being planned, ${triesMax} times running.`,
        {
          retryAfterSeconds: 2,
        },
      );
    }),
  );
}

/** Plans the day anew and stores the plan, even where one stands: outside of any transaction, then on condition. */
export async function makePlan(ctx: Ctx, dayId: string, key: OnceKey): Promise<Outcome<OnceAnswer<Board>>> {
  const refusal = authorise(ctx, 'plans.make');
  if (refusal) return refusal;
  for (let tries = 1; ; tries++) {
    const outcome = await tryOnce(ctx, dayId, key);
    if (outcome.ok || outcome.type !== 'plan.overtaken' || tries === triesMax) return outcome;
  }
}
