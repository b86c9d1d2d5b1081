import { appendAudit, appendLedger, createShop, forShop, listShops, type Shop } from '@flitchbook/db';
import { done, type Outcome } from '../../refusals.ts';
import type { Services } from '../ctx.ts';
import { transact } from '../transact.ts';

/** Opens the shop of an empty database. Not for callers from outside: nobody can be signed in before it. */
export async function openShop(services: Services, input: Omit<Shop, 'shopId'>): Promise<Outcome<Shop>> {
  const shop = { ...input, shopId: services.ids.newId() };
  const { shopId } = shop;
  return transact(forShop(services.db, shopId), async (tx) => {
    const [first] = await listShops(tx);
    if (first) throw new Error('a shop is open already');
    await createShop(tx, shop);
    await appendLedger(tx, {
      shopId,
      kind: 'shop.opened',
      dayId: null,
      orderId: null,
      personId: null,
      facts: {},
    });
    await appendAudit(tx, { shopId, personId: null, action: 'shop.open', subject: shopId, facts: {} });
    return done(shop);
  });
}
