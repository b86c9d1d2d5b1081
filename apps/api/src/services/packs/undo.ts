import type { PackOnWire } from '@flitchbook/contracts';
import {
  appendAudit,
  appendLedger,
  findBill,
  findClosing,
  holdAnimal,
  holdOrder,
  listPacks,
  undoPack,
} from '@flitchbook/db';
import { done, type Outcome, refused } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { authorise } from '../roles.ts';
import { transact } from '../transact.ts';
import { packOnWire } from './on-wire.ts';

export const packUnknown = (packId: string) => refused('pack.unknown', `The shop has no pack ${packId}.`);

/** Opens a pack again: its pieces may be packed anew, under a new serial. */
export async function undoWeighed(ctx: Ctx, packId: string): Promise<Outcome<PackOnWire>> {
  const refusal = authorise(ctx, 'packs.undo');
  if (refusal) return refusal;
  const { shopId, personId } = ctx.actor;
  return transact(ctx.db, async (tx) => {
    const [seen] = await listPacks(tx, shopId, { packIds: [packId] });
    if (!seen) return packUnknown(packId);
    if (seen.orderId !== null) await holdOrder(tx, shopId, seen.orderId);
    await holdAnimal(tx, shopId, seen.animalId);
    const [pack] = await listPacks(tx, shopId, { packIds: [packId] });
    if (!pack) return packUnknown(packId);
    if (pack.handOverId !== null) return refused('pack.gone', `Pack ${pack.serial} has left the house.`);
    if (pack.orderId !== null && (await findBill(tx, shopId, pack.orderId)))
      return refused('pack.billed', `Pack ${pack.serial} stands on a settled bill.`);
    if (await findClosing(tx, shopId, pack.animalId))
      return refused('animal.closed', 'The animal is closed: its packs stand as they are.');
    await undoPack(tx, shopId, packId);
    const { dayId, orderId, serial } = pack;
    await appendLedger(tx, {
      shopId,
      kind: 'pack.undone',
      dayId,
      orderId,
      personId,
      facts: { packId, serial },
    });
    await appendAudit(tx, { shopId, personId, action: 'pack.undo', subject: packId, facts: { serial } });
    return done(packOnWire(pack));
  });
}
