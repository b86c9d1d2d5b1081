import type { NewOrder as OrderOnWire } from '@flitchbook/contracts';
import {
  addOrder,
  appendAudit,
  appendLedger,
  findOrder,
  loadCuttingDay,
  loadPlan,
  type NewOrder,
  type OrderRecord,
  type StoredDay,
  type StoredPlan,
  type Tx,
} from '@flitchbook/db';
import type { CuttingPlan } from '@flitchbook/plan';
import { done, type Outcome, refused } from '../../refusals.ts';
import type { TravellingDay } from '../../solve/day-solver.ts';
import { checkAgainstDay } from '../check-against-day.ts';
import type { Ctx } from '../ctx.ts';
import { type OnceAnswer, type OnceKey, once } from '../once.ts';
import { storeWith } from '../reservations/commit.ts';
import { asDemand, laidIn, withOrder } from '../reservations/decide.ts';
import { authorise } from '../roles.ts';
import { dayUnknown, touch, transact } from '../transact.ts';
import { fillIn } from './fill-in.ts';

/** Refused where a line or share, put after the day's own, does not hold what `checkDay` asks. */
export function checkOrder(day: TravellingDay, order: NewOrder): Outcome<null> {
  const { orderId, owner, lines, shares } = order;
  if (lines.length + shares.length === 0) {
    const fault = { at: 'lines', value: [], says: 'an order has at least one line or share' };
    return refused('order.invalid', 'The order asks for nothing.', { faults: [fault] });
  }
  const after = {
    ...day,
    lines: [...day.lines, ...lines.map((line) => ({ ...line, orderId, owner }))],
    shares: [...day.shares, ...shares.map((share) => ({ ...share, orderId, owner }))],
  };
  const place = (list: 'lines' | 'shares', index: number) => ({
    inDay: `${list}[${day[list].length + index}]`,
    inRequest: `${list}[${index}]`,
  });
  const faults = checkAgainstDay(day, after, [
    ...lines.map((_, index) => place('lines', index)),
    ...shares.map((_, index) => place('shares', index)),
  ]);
  if (faults.length === 0) return done(null);
  return refused('order.invalid', 'The order cannot be as it is written; errors says why.', { faults });
}

/** The plan with the order in it, where that takes no planning: the order is then assured at once. */
function layOrderIn(
  { day, cuttingDay }: StoredDay,
  stored: StoredPlan | undefined,
  order: NewOrder,
  version: number,
): CuttingPlan | null {
  const isCurrent = stored !== undefined && day.plannedVersion === version - 1;
  const isPromised = order.lines.every(({ rank }) => rank === 'promised');
  if (!isCurrent || !isPromised || order.shares.length > 0) return null;
  return laidIn(withOrder(cuttingDay, asDemand(order)), stored.plan, order);
}

async function takeIn(tx: Tx, ctx: Ctx, dayId: string, input: OrderOnWire): Promise<Outcome<OrderRecord>> {
  const { shopId, personId } = ctx.actor;
  const touched = await touch(tx, { shopId, dayId });
  if (!touched.ok) return touched;
  const before = await loadCuttingDay(tx, shopId, dayId);
  if (!before) return dayUnknown(dayId);
  const orderId = input.orderId ?? ctx.ids.newId();
  if (await findOrder(tx, shopId, orderId)) {
    return refused('order.already-taken', 'There is an order with this orderId already.');
  }
  const order = fillIn(before.cuttingDay, input, { orderId, newId: ctx.ids.newId });
  const checked = checkOrder(before.cuttingDay, order);
  if (!checked.ok) return checked;
  const laid = layOrderIn(before, await loadPlan(tx, shopId, dayId), order, touched.value.version);
  const { number } = await addOrder(tx, touched.value, order, { state: 'standing', assured: laid !== null });
  if (laid) await storeWith(tx, ctx, touched.value, laid);
  const facts = { number, lines: order.lines.length, shares: order.shares.length, assured: laid !== null };
  await appendLedger(tx, { shopId, kind: 'order.taken', dayId, orderId, personId, facts });
  await appendAudit(tx, { shopId, personId, action: 'order.take', subject: orderId, facts });
  const taken = await findOrder(tx, shopId, orderId);
  if (!taken) throw new Error(`order ${orderId} is gone inside its own transaction`);
  return done(taken);
}

/**
 * Takes an order. It is kept even where the day cannot fill it: the plan, made again afterwards, says what is short and
 * why.
 */
export async function takeOrder(
  ctx: Ctx,
  dayId: string,
  input: OrderOnWire,
  key: OnceKey,
): Promise<Outcome<OnceAnswer<OrderRecord>>> {
  const refusal = authorise(ctx, 'orders.take');
  if (refusal) return refusal;
  const taken = await transact(ctx.db, (tx) => once(tx, ctx.actor, key, () => takeIn(tx, ctx, dayId, input)));
  if (taken.ok && !taken.value.replayed) ctx.dayChanged(ctx.actor.shopId, dayId);
  return taken;
}
