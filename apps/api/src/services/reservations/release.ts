import type { OrderRecord } from '@flitchbook/db';
import { done, type Outcome, refused } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { givenBefore, type OnceAnswer, type OnceKey, once } from '../once.ts';
import { authorise } from '../roles.ts';
import { look, transact } from '../transact.ts';
import { untilNotOvertaken } from './hold.ts';
import { type Departure, letGoIn } from './let-go.ts';
import { ownOrder } from './own-order.ts';
import { promoteQueue } from './promote.ts';
import { readDayIn } from './read-day.ts';

const notHeld = ({ number, state }: OrderRecord) =>
  refused('reservation.not-held', `Order ${number} is ${state}: only what is held or queued is released.`);

const release: Departure = {
  passage: { to: 'released' },
  kind: 'order.released',
  action: 'order.release',
  mail: 'order.released',
  instead: notHeld,
};

const dismiss: Departure = {
  ...release,
  kind: 'order.dismissed',
  action: 'order.dismiss',
  mail: 'order.dismissed',
};

async function attempt(ctx: Ctx, orderId: string, key: OnceKey): Promise<Outcome<OnceAnswer<OrderRecord>>> {
  const view = await look(ctx.db, async (tx) => {
    const before = await givenBefore<OrderRecord>(tx, ctx.actor, key);
    if (!before.ok) return before;
    const order = await ownOrder(tx, ctx, orderId);
    if (!order.ok) return order;
    const day = await readDayIn(tx, ctx, order.value.dayId);
    return day.ok ? done({ day: day.value, order: order.value, before: before.value }) : day;
  });
  if (!view.ok) return view;
  const { day, order, before } = view.value;
  if (before) return done(before);
  return transact(ctx.db, (tx) =>
    once(tx, ctx.actor, key, async () => {
      const gone = await letGoIn(tx, ctx, day, [order], release);
      return gone.ok ? done(gone.value[0] ?? order) : gone;
    }),
  );
}

/** Gives a hold or a place in the queue back. What it had goes to the queue first. */
export async function releaseOrder(
  ctx: Ctx,
  orderId: string,
  key: OnceKey,
): Promise<Outcome<OnceAnswer<OrderRecord>>> {
  const refusal = authorise(ctx, 'reservations.release');
  if (refusal) return refusal;
  const released = await untilNotOvertaken(() => attempt(ctx, orderId, key));
  if (!released.ok || released.value.replayed) return released;
  const { dayId } = released.value.body;
  ctx.dayChanged(ctx.actor.shopId, dayId);
  await ctx.promises.turns.inTurn(dayId, () => promoteQueue(ctx, dayId));
  return released;
}

/** Who still waits for a day that takes no more orders is told so: room that comes free now goes to the counter. */
export async function dismissQueue(ctx: Ctx, dayId: string): Promise<Outcome<readonly OrderRecord[]>> {
  const view = await look(ctx.db, (tx) => readDayIn(tx, ctx, dayId));
  if (!view.ok) return view;
  const { day, orders } = view.value.stored;
  const queued = orders.filter(({ state }) => state === 'queued');
  if (day.state !== 'closed' || queued.length === 0) return done([]);
  return transact(ctx.db, (tx) => letGoIn(tx, ctx, view.value, queued, dismiss));
}
