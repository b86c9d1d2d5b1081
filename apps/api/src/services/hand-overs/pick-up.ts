import { depositAfterRelease, noShowSteps, spanOf } from '@flitchbook/books';
import type { HandOverList, NewPickUp } from '@flitchbook/contracts';
import {
  addPickUpStep,
  appendAudit,
  appendLedger,
  findPickUp,
  holdOrder,
  releasePacks,
  setPickUp,
  type Tx,
} from '@flitchbook/db';
import { done, type Outcome, refused } from '../../refusals.ts';
import { type AtTill, orderUnknown } from '../bills/order-account.ts';
import type { Ctx } from '../ctx.ts';
import { ownOrder } from '../reservations/own-order.ts';
import { authorise } from '../roles.ts';
import { transact } from '../transact.ts';
import { freeWindows } from './free-windows.ts';
import { handOverListIn } from './read.ts';

async function hasRoom(
  tx: Tx,
  ctx: Ctx,
  { bench, order }: AtTill,
  wish: { readonly date: string; readonly from: string; readonly to: string },
): Promise<boolean> {
  const windows = await freeWindows(tx, ctx, {
    shop: bench.shop,
    settings: bench.settings,
    date: bench.stored.cuttingDay.date,
    orderId: order.orderId,
  });
  return windows.some(({ date, from, to }) => date === wish.date && from === wish.from && to === wish.to);
}

/**
 * Agrees when and where an order is fetched, in the shop's own clock. Customers choose for their own orders, among the
 * shop's usual windows, as long as there is room.
 * @param ifVersion 0: nothing was agreed before
 */
export async function agreePickUp(
  ctx: Ctx,
  orderId: string,
  input: NewPickUp,
  ifVersion: number,
): Promise<Outcome<HandOverList>> {
  const refusal = authorise(ctx, 'pick-ups.choose');
  if (refusal) return refusal;
  const { shopId, personId, role } = ctx.actor;
  return transact(ctx.db, async (tx) => {
    const own = await ownOrder(tx, ctx, orderId);
    if (!own.ok) return own;
    if (!(await holdOrder(tx, shopId, orderId))) return orderUnknown(orderId);
    const before = await handOverListIn(tx, ctx, orderId);
    if (!before.ok) return before;
    const { date, from, to, place = '' } = input;
    const span = spanOf({ date, from, to }, before.value.till.bench.shop.timeZone);
    if (role === 'customer' && !(await hasRoom(tx, ctx, before.value.till, input)))
      return refused('pick-up.invalid', 'That time is not free; pick another one.', {
        faults: [{ at: 'from', value: from, says: 'is not a time of the shop with room in it' }],
      });
    if (!span.ok)
      return refused('pick-up.invalid', 'The pick-up cannot be at that time; errors says why.', {
        faults: span.slips,
      });
    const pickUp = { shopId, orderId, date, fromTime: from, toTime: to, ...span.value, place };
    const version = await setPickUp(tx, pickUp, ifVersion === 0 ? null : ifVersion);
    if (version === undefined)
      return refused('edit.version-stale', 'The pick-up has changed. Read it again, then decide.');
    await appendAudit(tx, {
      shopId,
      personId,
      action: 'pick-up.agree',
      subject: orderId,
      facts: { date, from, to, place },
    });
    const after = await handOverListIn(tx, ctx, orderId);
    return after.ok ? done(after.value.list) : after;
  });
}

/** Takes the next step with goods that nobody fetched, as the shop's policy says, once it is due. Each is logged once. */
export async function stepPickUp(
  ctx: Ctx,
  orderId: string,
  step: 'remind' | 'freeze' | 'release',
): Promise<Outcome<HandOverList>> {
  const refusal = authorise(ctx, 'pick-ups.set');
  if (refusal) return refusal;
  const { shopId, personId } = ctx.actor;
  return transact(ctx.db, async (tx) => {
    if (!(await holdOrder(tx, shopId, orderId))) return orderUnknown(orderId);
    const before = await handOverListIn(tx, ctx, orderId);
    if (!before.ok) return before;
    const pickUp = await findPickUp(tx, shopId, orderId);
    if (!pickUp) return refused('pick-up.missing', 'No pick-up is agreed for this order.');
    const { bench, account, order } = before.value.till;
    const policy = bench.settings.pickUp.noShow;
    const missed = {
      endsAt: pickUp.endsAt,
      now: ctx.clock().toISOString(),
      timeZone: bench.shop.timeZone,
      done: pickUp.steps,
    };
    if (!noShowSteps(policy, missed).some((each) => each.step === step && each.isDue))
      return refused(
        'pick-up.not-due',
        'By the policy of the shop this step is not due, or was done already.',
      );
    await addPickUpStep(tx, { shopId, orderId, step, doneBy: personId });
    const released = step === 'release' ? await releasePacks(tx, shopId, orderId) : 0;
    const facts =
      step === 'release' ? { released, ...depositAfterRelease(policy, account.depositMinor) } : {};
    await appendLedger(tx, { shopId, kind: `pick-up.${step}`, dayId: order.dayId, orderId, personId, facts });
    const after = await handOverListIn(tx, ctx, orderId);
    return after.ok ? done(after.value.list) : after;
  });
}
