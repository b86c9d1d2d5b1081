import { knownSpecies } from '@flitchbook/contracts';
import { type OrderRecord, type Passage, passOrder, type Tx } from '@flitchbook/db';
import { checkPlan, takeOut } from '@flitchbook/plan';
import { done, type Outcome, type Refusal } from '../../refusals.ts';
import type { TravellingDay } from '../../solve/day-solver.ts';
import type { Ctx } from '../ctx.ts';
import type { MailKind } from '../mails/mail-words.ts';
import { tellOwner } from '../mails/write-mail.ts';
import { touch } from '../transact.ts';
import { note, storeWith } from './commit.ts';
import type { DayInView } from './read-day.ts';

export interface Departure {
  readonly passage: Extract<Passage, { to: 'lapsed' | 'released' }>;
  readonly kind: string;
  readonly action: string;
  readonly mail: MailKind;
  /** where an order is not, or no longer, where its passage begins */
  readonly instead: (order: OrderRecord) => Refusal;
}

const idsOf = (orders: readonly OrderRecord[]) => ({
  lineIds: orders.flatMap(({ lines }) => lines.map(({ lineId }) => lineId)),
  shareIds: orders.flatMap(({ shares }) => shares.map(({ shareId }) => shareId)),
});

/** The day as it is once these orders are gone. */
function without(day: TravellingDay, orders: readonly OrderRecord[]): TravellingDay {
  const { lineIds, shareIds } = idsOf(orders);
  return {
    ...day,
    lines: day.lines.filter(({ lineId }) => !lineIds.includes(lineId)),
    shares: day.shares.filter(({ shareId }) => !shareIds.includes(shareId)),
  };
}

/**
 * Lets orders go in one transaction, on condition of the version that was read: what they had goes back to the plan's
 * open length and unsold pieces. Without a plan of this version the day is planned again afterwards.
 */
export async function letGoIn(
  tx: Tx,
  ctx: Ctx,
  view: DayInView,
  orders: readonly OrderRecord[],
  departure: Departure,
): Promise<Outcome<readonly OrderRecord[]>> {
  const { shopId } = ctx.actor;
  const { day, cuttingDay } = view.stored;
  const touched = await touch(tx, { shopId, dayId: day.dayId, ifVersion: day.version, evenClosed: true });
  if (!touched.ok) return touched;
  const gone: OrderRecord[] = [];
  for (const order of orders) {
    const version = await passOrder(tx, touched.value, { orderId: order.orderId }, departure.passage);
    if (version === undefined) return departure.instead(order);
    gone.push({ ...order, state: departure.passage.to, assured: false, heldUntil: null, version });
  }
  const plan = view.plan && takeOut({ ...cuttingDay, species: knownSpecies }, view.plan, idsOf(orders));
  const left = { ...without(cuttingDay, orders), species: knownSpecies };
  if (plan && checkPlan(left, plan).length === 0) await storeWith(tx, ctx, touched.value, plan);
  for (const order of gone) {
    const { orderId, dayId, number } = order;
    const { kind, action } = departure;
    await note(tx, ctx, { dayId, orderId, kind, action, facts: { number } });
    await tellOwner(tx, ctx, departure.mail, order);
  }
  return done(gone);
}
