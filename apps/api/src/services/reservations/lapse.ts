import type { OrderRecord } from '@flitchbook/db';
import { done, type Outcome, refused } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { look, transact } from '../transact.ts';
import { type Departure, letGoIn } from './let-go.ts';
import { readDayIn } from './read-day.ts';

const lapse: Departure = {
  passage: { to: 'lapsed' },
  kind: 'order.lapsed',
  action: 'order.lapse',
  mail: 'order.lapsed',
  // Somebody was faster, or the database's clock went back: look again.
  instead: () => refused('edit.version-stale', 'A hold that had lapsed was moved on by somebody else.'),
};

/** Holds of a day whose time is over, by the database's clock, go back. Two who do it at once do it once. */
export async function lapseDay(ctx: Ctx, dayId: string): Promise<Outcome<readonly OrderRecord[]>> {
  const view = await look(ctx.db, (tx) => readDayIn(tx, ctx, dayId));
  if (!view.ok) return view;
  const { stored, lapsed } = view.value;
  const orders = stored.orders.filter(({ orderId }) => lapsed.includes(orderId));
  if (orders.length === 0) return done([]);
  const gone = await transact(ctx.db, (tx) => letGoIn(tx, ctx, view.value, orders, lapse));
  if (gone.ok) ctx.dayChanged(ctx.actor.shopId, dayId);
  return gone;
}
