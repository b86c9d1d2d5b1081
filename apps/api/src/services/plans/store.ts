import type { OrderRecord } from '@flitchbook/db';
import { appendAudit, appendLedger, passOrder, setAssured, storePlan, type Tx } from '@flitchbook/db';
import type { CuttingPlan } from '@flitchbook/plan';
import type { Ctx } from '../ctx.ts';
import { lackingList } from '../mails/mail-lists.ts';
import { tellOwner } from '../mails/write-mail.ts';
import { note } from '../reservations/commit.ts';
import { type KeepingPlan, servedOf } from './solve-keeping.ts';

export interface PlanStoring {
  readonly keeping: KeepingPlan;
  /** orders of the day that the plan was made from */
  readonly orders: readonly OrderRecord[];
  readonly madeFor: number;
}

/** What one order lacks, line by line, for the list. */
const lacks = (plan: CuttingPlan, { lines, shares }: OrderRecord) => [
  ...plan.lines
    .filter((fill) => fill.filled < fill.asked && lines.some(({ lineId }) => lineId === fill.lineId))
    .map(({ lineId, asked, filled, shortfall }) => ({ lineId, asked, filled, says: shortfall?.says ?? '' })),
  ...plan.shares
    .filter((fill) => fill.sideIds.length === 0 && shares.some(({ shareId }) => shareId === fill.shareId))
    .map(({ shareId, shortfall }) => ({ shareId, says: shortfall?.says ?? '' })),
];

/** A promise that cannot be kept is written down, told to its owner, and never cut down in silence. */
async function listShort(tx: Tx, ctx: Ctx, version: number, { keeping, orders }: PlanStoring): Promise<void> {
  const { shopId } = ctx.actor;
  for (const [place, order] of keeping.short.entries()) {
    const { dayId, orderId, number, state } = order;
    const day = { shopId, dayId, version };
    if (state === 'held') await passOrder(tx, day, { orderId }, { to: 'queued' });
    else await setAssured(tx, day, [orderId], false);
    const facts = { number, place, was: state, of: orders.length, lacks: lacks(keeping.plan, order) };
    await note(tx, ctx, { dayId, orderId, kind: 'shortage.listed', action: 'shortage.list', facts });
    await tellOwner(tx, ctx, 'order.short', order, (voice) => [lackingList(voice, order, keeping.plan)]);
  }
}

/**
 * Stores a checked plan if the day is still the one it was made for, notes it in the ledger and the audit, and with it who
 * is assured by it and who is short.
 * @returns false when the day has moved on
 */
export async function storeChecked(tx: Tx, ctx: Ctx, storing: PlanStoring): Promise<boolean> {
  const { shopId, personId } = ctx.actor;
  const { keeping, orders, madeFor } = storing;
  const { plan } = keeping;
  const { dayId } = plan;
  const version = await storePlan(tx, { shopId, planId: ctx.ids.newId(), madeFor, plan });
  if (version === undefined) return false;
  const served = servedOf(plan, orders).map(({ orderId }) => orderId);
  await setAssured(tx, { shopId, dayId }, served, true);
  await listShort(tx, ctx, version, storing);
  const facts = {
    madeFor,
    version,
    shortLines: plan.lines.filter((line) => line.shortfall !== null).length,
    seconds: plan.proof?.seconds ?? null,
    gap: plan.proof?.gap ?? null,
  };
  await appendLedger(tx, { shopId, kind: 'plan.stored', dayId, orderId: null, personId, facts });
  await appendAudit(tx, { shopId, personId, action: 'plan.store', subject: dayId, facts });
  return true;
}
