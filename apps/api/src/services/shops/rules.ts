import { appendAudit, appendLedger, type ShopRules, setShopRules } from '@flitchbook/db';
import { done, type Outcome } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { rulesOf } from '../reservations/shop-rules.ts';
import { authorise } from '../roles.ts';
import { look, transact } from '../transact.ts';

/** How the shop deals with its customers. */
export async function readRules(ctx: Ctx): Promise<Outcome<ShopRules>> {
  const refusal = authorise(ctx, 'rules.read');
  if (refusal) return refusal;
  return look(ctx.db, async (tx) => done(await rulesOf(tx, ctx.actor.shopId)));
}

/** Replaces the rules whole. What is held already keeps the terms it was held on. */
export async function changeRules(ctx: Ctx, rules: ShopRules): Promise<Outcome<ShopRules>> {
  const refusal = authorise(ctx, 'rules.set');
  if (refusal) return refusal;
  const { shopId, personId } = ctx.actor;
  const facts = { ...rules };
  return transact(ctx.db, async (tx) => {
    await setShopRules(tx, shopId, rules);
    await appendLedger(tx, { shopId, kind: 'rules.set', dayId: null, orderId: null, personId, facts });
    await appendAudit(tx, { shopId, personId, action: 'rules.set', subject: shopId, facts });
    return done(rules);
  });
}
