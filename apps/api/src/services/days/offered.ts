import { findDay, isOpenToCustomers, listDays } from '@flitchbook/db';
import { done, type Outcome } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { authorise } from '../roles.ts';
import { look } from '../transact.ts';

export interface OfferedDay {
  readonly dayId: string;
  readonly date: string;
  /** ISO instant, null: until the day is closed */
  readonly customersUntil: string | null;
}

/** Days that customers may ask for something of, by date. */
export async function listOfferedDays(ctx: Ctx): Promise<Outcome<readonly OfferedDay[]>> {
  const refusal = authorise(ctx, 'days.offered');
  if (refusal) return refusal;
  const { shopId } = ctx.actor;
  return look(ctx.db, async (tx) => {
    const offered: OfferedDay[] = [];
    for (const { dayId, date } of await listDays(tx, shopId)) {
      if (!(await isOpenToCustomers(tx, shopId, dayId))) continue;
      const day = await findDay(tx, shopId, dayId);
      offered.push({ dayId, date, customersUntil: day?.customersUntil ?? null });
    }
    return done(offered);
  });
}
