import { findOrder, type OrderRecord, passOrder } from '@flitchbook/db';
import type { CuttingPlan } from '@flitchbook/plan';
import { done, type Outcome } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { tellOwner } from '../mails/write-mail.ts';
import { look, touch, transact } from '../transact.ts';
import { note, storeWith } from './commit.ts';
import { type Decision, decide, withOrder } from './decide.ts';
import { assuredOf, demandOfAll } from './demand.ts';
import { type DayInView, readDayIn } from './read-day.ts';
import { depositOf, expectedMinor } from './shop-rules.ts';

async function decideQueued(ctx: Ctx, view: DayInView, order: OrderRecord): Promise<Outcome<Decision>> {
  const { stored, plan } = view;
  const { dayId, version } = stored.day;
  const known = ctx.promises.refusals.find(dayId, version, order);
  if (known) return done(known);
  const day = withOrder(stored.cuttingDay, order);
  const decided = await decide(ctx, day, { plan, assured: assuredOf(stored.orders) }, demandOfAll([order]));
  if (decided.ok && !decided.value.fits) ctx.promises.refusals.note(dayId, version, order, decided.value);
  return decided;
}

interface Promotion {
  readonly view: DayInView;
  readonly order: OrderRecord;
  readonly plan: CuttingPlan;
  /** numbers of earlier orders that did not fit at this moment */
  readonly overtakes: readonly number[];
}

async function promote(ctx: Ctx, { view, order, plan, overtakes }: Promotion): Promise<Outcome<OrderRecord>> {
  const { shopId } = ctx.actor;
  const { day, cuttingDay } = view.stored;
  const { dayId } = day;
  const { orderId, number } = order;
  const depositMinor = depositOf(view.rules, expectedMinor(cuttingDay, order));
  const holdSeconds = view.rules.promotedHoldSeconds;
  return transact(ctx.db, async (tx) => {
    const touched = await touch(tx, { shopId, dayId, ifVersion: day.version });
    if (!touched.ok) return touched;
    const version = await passOrder(
      tx,
      touched.value,
      { orderId },
      { to: 'held', holdSeconds, depositMinor },
    );
    if (version === undefined)
      throw new Error(`order ${orderId} left the queue of a day that did not change`);
    await storeWith(tx, ctx, touched.value, plan);
    const held = await findOrder(tx, shopId, orderId);
    const facts = { number, until: held?.heldUntil ?? null, depositMinor, overtakes };
    await note(tx, ctx, { dayId, orderId, kind: 'order.promoted', action: 'order.promote', facts });
    if (held) await tellOwner(tx, ctx, 'order.promoted', held);
    return done(held ?? order);
  });
}

/** The earliest order in the queue whose whole demand fits, if there is one. */
async function promoteOne(ctx: Ctx, dayId: string): Promise<Outcome<OrderRecord | undefined>> {
  const view = await look(ctx.db, (tx) => readDayIn(tx, ctx, dayId));
  if (!view.ok) return view;
  if (view.value.stored.day.state === 'closed') return done(undefined);
  const overtakes: number[] = [];
  for (const order of view.value.stored.orders.filter(({ state }) => state === 'queued')) {
    const decided = await decideQueued(ctx, view.value, order);
    // Where it is not known whether an earlier one fits, nobody goes past it.
    if (!decided.ok) return decided;
    if (decided.value.fits) {
      const { plan } = decided.value;
      return promote(ctx, { view: view.value, order, plan, overtakes });
    }
    overtakes.push(order.number);
  }
  return done(undefined);
}

const roundsMax = 100;

/**
 * Gives room that has come free to the queue: each time the earliest whose whole demand fits, until nobody's does. Who is
 * overtaken did not fit at that moment, and the ledger says so.
 * @returns the orders that are held now
 */
export async function promoteQueue(ctx: Ctx, dayId: string): Promise<Outcome<readonly OrderRecord[]>> {
  const promoted: OrderRecord[] = [];
  for (let rounds = 0; rounds < roundsMax; rounds++) {
    const outcome = await promoteOne(ctx, dayId);
    if (outcome.ok && outcome.value === undefined) break;
    if (outcome.ok && outcome.value) promoted.push(outcome.value);
    else if (!outcome.ok && outcome.type !== 'edit.version-stale') return outcome;
  }
  return done(promoted);
}
