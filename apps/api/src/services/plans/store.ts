import { appendAudit, appendLedger, storePlan, type Tx } from '@flitchbook/db';
import type { CuttingPlan } from '@flitchbook/plan';
import type { Ctx } from '../ctx.ts';

/**
 * Stores a checked plan if the day is still the one it was made for, and notes it in the ledger and the audit.
 * @returns false when the day has moved on
 */
export async function storeChecked(tx: Tx, ctx: Ctx, plan: CuttingPlan, madeFor: number): Promise<boolean> {
  const { shopId, personId } = ctx.actor;
  const { dayId } = plan;
  const version = await storePlan(tx, { shopId, planId: ctx.ids.newId(), madeFor, plan });
  if (version === undefined) return false;
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
