import {
  findPerson,
  isOpenToCustomers,
  listLapsed,
  loadCuttingDay,
  loadPlan,
  type Person,
  type ShopRules,
  type StoredDay,
  type Tx,
} from '@flitchbook/db';
import type { CuttingPlan } from '@flitchbook/plan';
import { done, type Outcome, refused } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { dayUnknown } from '../transact.ts';
import { currentPlan } from './decide.ts';
import { rulesOf } from './shop-rules.ts';

/** A day as a claim finds it, in one view of the database. */
export interface DayInView {
  readonly stored: StoredDay;
  /** the plan of this very version, if there is one */
  readonly plan: CuttingPlan | null;
  readonly rules: ShopRules;
  readonly openToCustomers: boolean;
  /** holds that the database's clock says are over */
  readonly lapsed: readonly string[];
  readonly person: Person | undefined;
}

export async function readDayIn(tx: Tx, ctx: Ctx, dayId: string): Promise<Outcome<DayInView>> {
  const { shopId, personId } = ctx.actor;
  const stored = await loadCuttingDay(tx, shopId, dayId);
  if (!stored) return dayUnknown(dayId);
  const lapsed = await listLapsed(tx, shopId, dayId);
  return done({
    stored,
    plan: currentPlan(stored, await loadPlan(tx, shopId, dayId)),
    rules: await rulesOf(tx, shopId),
    openToCustomers: await isOpenToCustomers(tx, shopId, dayId),
    lapsed: lapsed.map(({ orderId }) => orderId),
    person: personId === null ? undefined : await findPerson(tx, shopId, personId),
  });
}

/** Refused where the day takes no more: from nobody once it is closed, from customers after their last day. */
export function mayAsk(ctx: Ctx, { stored, openToCustomers }: DayInView): Outcome<null> {
  if (stored.day.state === 'closed')
    return refused('day.closed', 'The cutting day is closed: it takes no more.');
  if (ctx.actor.role === 'customer' && !openToCustomers)
    return refused('day.closed-to-customers', 'The day takes no more orders on line. Ask the shop.');
  return done(null);
}
