import { type NewDay, usualCounter, usualTools } from '@flitchbook/contracts';
import { appendAudit, appendLedger, createDay, type DaySummary } from '@flitchbook/db';
import { done, type Outcome } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { type OnceAnswer, type OnceKey, once } from '../once.ts';
import { authorise } from '../roles.ts';
import { transact } from '../transact.ts';

/** Opens a cutting day for orders, with the shop's usual tools and counter. */
export async function openDay(
  ctx: Ctx,
  input: NewDay,
  key: OnceKey,
): Promise<Outcome<OnceAnswer<DaySummary>>> {
  const refusal = authorise(ctx, 'days.open');
  if (refusal) return refusal;
  const { shopId, personId } = ctx.actor;
  const { date } = input;
  return transact(ctx.db, (tx) =>
    once(tx, ctx.actor, key, async () => {
      const dayId = ctx.ids.newId();
      await createDay(tx, { shopId, dayId, date, tools: usualTools, counter: usualCounter });
      await appendLedger(tx, { shopId, kind: 'day.opened', dayId, orderId: null, personId, facts: { date } });
      await appendAudit(tx, { shopId, personId, action: 'day.open', subject: dayId, facts: { date } });
      const empty = { plannedVersion: null, animals: 0, orders: 0, shortLines: null };
      return done({ dayId, date, state: 'open', version: 1, ...empty });
    }),
  );
}
