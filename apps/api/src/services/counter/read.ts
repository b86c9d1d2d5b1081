import { ageing, localDateAt } from '@flitchbook/books';
import type { CounterOnWire } from '@flitchbook/contracts';
import { findShop, listPacks, trace } from '@flitchbook/db';
import { done, type Outcome } from '../../refusals.ts';
import { bookSettingsIn } from '../book-settings/read.ts';
import type { Ctx } from '../ctx.ts';
import { authorise } from '../roles.ts';
import { look } from '../transact.ts';

/** Everything in the house, oldest first: what is free to sell, and what waits for somebody and is never free. */
export async function readCounter(ctx: Ctx): Promise<Outcome<CounterOnWire>> {
  const refusal = authorise(ctx, 'counter.read');
  if (refusal) return refusal;
  const { shopId } = ctx.actor;
  return look(ctx.db, async (tx) => {
    const shop = await findShop(tx, shopId);
    if (!shop) throw new Error('the shop of a session is gone');
    const { settings } = await bookSettingsIn(tx, shop);
    const here = await listPacks(tx, shopId, { stillHere: true });
    const where = new Map((await trace(tx, shopId, { stillHere: true })).map((row) => [row.packId, row]));
    const today = localDateAt(ctx.clock().toISOString(), shop.timeZone);
    return done({
      packs: ageing(here, today, settings.pickUp.oldAfterDays).map((pack) => ({
        packId: pack.packId,
        serial: pack.serial,
        name: pack.name,
        animal: where.get(pack.packId)?.animal ?? '',
        lot: pack.lot,
        net: pack.net,
        price: pack.price,
        amountMinor: pack.amountMinor,
        packedOn: pack.packedOn,
        days: pack.days,
        isOld: pack.isOld,
        orderNumber: where.get(pack.packId)?.orderNumber ?? null,
        owner: where.get(pack.packId)?.customer ?? null,
      })),
    });
  });
}
