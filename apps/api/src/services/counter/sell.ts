import { freeToSell, type Slip } from '@flitchbook/books';
import type { NewSale } from '@flitchbook/contracts';
import { addHandOver, addPayment, appendLedger, listPacks, type Tx } from '@flitchbook/db';
import { addMinor } from '@flitchbook/plan';
import { done, type Outcome, refused } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { type OnceAnswer, type OnceKey, once } from '../once.ts';
import { authorise } from '../roles.ts';
import { transact } from '../transact.ts';

export interface Sale {
  readonly handOverId: string;
  readonly totalMinor: number;
}

async function sellIn(tx: Tx, ctx: Ctx, input: NewSale): Promise<Outcome<Sale>> {
  const { shopId, personId } = ctx.actor;
  const { handOverId = ctx.ids.newId(), packs, method, takenBy = 'over the counter' } = input;
  const ids = packs.map(({ packId }) => packId);
  const known = await listPacks(tx, shopId, { packIds: ids });
  const free = new Set(
    freeToSell(known).flatMap(({ packId, handOverId: gone }) => (gone === null ? [packId] : [])),
  );
  const faults: Slip[] = packs.flatMap(({ packId }, place) => {
    if (ids.indexOf(packId) !== place)
      return [{ at: `packs[${place}]`, value: packId, says: 'was scanned twice' }];
    return free.has(packId)
      ? []
      : [
          {
            at: `packs[${place}]`,
            value: packId,
            says: 'is not free: it waits for somebody, has left, or is no pack of this shop',
          },
        ];
  });
  if (packs.length === 0) faults.push({ at: 'packs', value: [], says: 'at least one pack is sold' });
  if (faults.length > 0)
    return refused('hand-over.invalid', 'These packs cannot be sold; errors says why.', { faults });
  const totalMinor = addMinor(packs.map(({ soldMinor }) => soldMinor));
  await addHandOver(tx, {
    shopId,
    handOverId,
    orderId: null,
    takenBy,
    proof: 'known',
    note: '',
    givenBy: personId,
    packs,
  });
  if (totalMinor > 0) {
    const paymentId = ctx.ids.newId();
    await addPayment(tx, {
      shopId,
      paymentId,
      orderId: null,
      handOverId,
      kind: 'payment',
      method,
      amountMinor: totalMinor,
      note: '',
      takenBy: personId,
    });
  }
  const facts = { handOverId, packs: packs.length, totalMinor };
  await appendLedger(tx, { shopId, kind: 'counter.sold', dayId: null, orderId: null, personId, facts });
  return done({ handOverId, totalMinor });
}

/** Sells packs that are free over the counter. Of two hands at the last pack one is told that it is gone. */
export async function sellOverCounter(
  ctx: Ctx,
  input: NewSale,
  key: OnceKey,
): Promise<Outcome<OnceAnswer<Sale>>> {
  const refusal = authorise(ctx, 'counter.sell');
  if (refusal) return refusal;
  return transact(ctx.db, (tx) => once(tx, ctx.actor, key, () => sellIn(tx, ctx, input)));
}
