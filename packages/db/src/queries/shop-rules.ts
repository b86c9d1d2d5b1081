import { eq } from 'drizzle-orm';
import type { Tx } from '../database.ts';
import { handleOf } from '../engines/engine.ts';
import { shopRules } from '../schema/index.ts';
import type { ShopRules } from './shapes.ts';

const columns = {
  holdSeconds: shopRules.holdSeconds,
  promotedHoldSeconds: shopRules.promotedHoldSeconds,
  depositPercent: shopRules.depositPercent,
  depositFromMinor: shopRules.depositFromMinor,
  ordersPerPerson: shopRules.ordersPerPerson,
  piecesPerPerson: shopRules.piecesPerPerson,
  sharesPerPerson: shopRules.sharesPerPerson,
};

/** The shop's own rules; undefined where it has said nothing. */
export async function findShopRules(tx: Tx, shopId: string): Promise<ShopRules | undefined> {
  const [found] = await handleOf(tx).select(columns).from(shopRules).where(eq(shopRules.shopId, shopId));
  return found;
}

export async function setShopRules(tx: Tx, shopId: string, rules: ShopRules): Promise<void> {
  await handleOf(tx)
    .insert(shopRules)
    .values({ shopId, ...rules })
    .onConflictDoUpdate({ target: [shopRules.shopId], set: { ...rules } });
}
