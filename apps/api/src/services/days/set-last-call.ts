import { appendAudit, appendLedger, keepPlan, setCustomersUntil } from '@flitchbook/db';
import { done, type Outcome } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { authorise } from '../roles.ts';
import { touch, transact } from '../transact.ts';

export interface LastCall {
  readonly dayId: string;
  /** version of the day that was seen */
  readonly ifVersion: number;
  /** ISO instant, null: until the day is closed */
  readonly customersUntil: string | null;
}

/** Sets until when customers may ask; the database's clock judges it. @returns the day's version afterwards */
export async function setLastCall(
  ctx: Ctx,
  call: LastCall,
): Promise<Outcome<LastCall & { version: number }>> {
  const refusal = authorise(ctx, 'days.set-last-call');
  if (refusal) return refusal;
  const { shopId, personId } = ctx.actor;
  const { dayId, ifVersion, customersUntil } = call;
  return transact(ctx.db, async (tx) => {
    const touched = await touch(tx, { shopId, dayId, ifVersion });
    if (!touched.ok) return touched;
    await setCustomersUntil(tx, touched.value, customersUntil === null ? null : new Date(customersUntil));
    await keepPlan(tx, touched.value);
    const facts = { customersUntil };
    await appendLedger(tx, { shopId, kind: 'day.last-call', dayId, orderId: null, personId, facts });
    await appendAudit(tx, { shopId, personId, action: 'day.set-last-call', subject: dayId, facts });
    return done({ ...call, version: touched.value.version });
  });
}
