import { appendAudit, appendLedger, storePlan, type TouchedDay, type Tx } from '@flitchbook/db';
import type { CuttingPlan } from '@flitchbook/plan';
import type { Ctx } from '../ctx.ts';

export interface Noted {
  readonly dayId: string;
  readonly orderId: string;
  /** small words joined by dots, past tense: order.held */
  readonly kind: string;
  /** the same in the imperative: order.hold */
  readonly action: string;
  readonly facts: Readonly<Record<string, unknown>>;
}

/** One entry of the ledger and one of the audit, in the transaction of what they tell. */
export async function note(tx: Tx, ctx: Ctx, { dayId, orderId, kind, action, facts }: Noted): Promise<void> {
  const { shopId, personId } = ctx.actor;
  await appendLedger(tx, { shopId, kind, dayId, orderId, personId, facts });
  await appendAudit(tx, { shopId, personId, action, subject: orderId, facts });
}

/** Stores a plan that goes with a change of the day just touched: both or neither. */
export async function storeWith(tx: Tx, ctx: Ctx, day: TouchedDay, plan: CuttingPlan): Promise<void> {
  const store = { shopId: day.shopId, planId: ctx.ids.newId(), madeFor: day.version, plan };
  const stored = await storePlan(tx, store);
  if (stored === undefined) throw new Error(`day ${day.dayId} moved on while it was locked`);
}
