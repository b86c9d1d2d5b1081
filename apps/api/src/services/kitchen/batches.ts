import type { BatchOnWire, NewBatchOnWire } from '@flitchbook/contracts';
import {
  addKitchenBatch,
  appendAudit,
  type KitchenBatchRecord,
  listKitchenBatches,
  listPacks,
  type Tx,
} from '@flitchbook/db';
import { done, type Outcome, refused } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { type OnceAnswer, type OnceKey, once } from '../once.ts';
import { authorise } from '../roles.ts';
import { look, transact } from '../transact.ts';
import { type DrawnLot, type LabelSaid, reckonBatch } from './reckon-batch.ts';
import { lotsInPool, todayAt } from './trim.ts';

const shown = 200;

const onWire = ({ batchId, kind, name, madeOn, madeAt, draws, record }: KitchenBatchRecord): BatchOnWire => ({
  batchId,
  kind,
  name,
  madeOn,
  madeAt,
  draws,
  label: record['label'] as LabelSaid,
});

/** Loose meat is drawn from the pool; a cure takes packs whole, of anything. */
async function drawnOf(tx: Tx, ctx: Ctx, input: NewBatchOnWire): Promise<Outcome<readonly DrawnLot[]>> {
  if (input.kind === 'cure') return done([]);
  const pool = await lotsInPool(tx, ctx);
  const drawn: DrawnLot[] = [];
  for (const [index, { packId, grams }] of input.draws.entries()) {
    const found = pool.find(({ pack }) => pack.packId === packId);
    if (!found) {
      const fault = {
        at: `draws[${index}].packId`,
        value: packId,
        says: 'is no pack of trim or fat that is here',
      };
      return refused('batch.invalid', 'A pack of the batch is not in the pool.', { faults: [fault] });
    }
    drawn.push({ lot: found.lot, grams });
  }
  return done(drawn);
}

async function makeIn(tx: Tx, ctx: Ctx, input: NewBatchOnWire): Promise<Outcome<BatchOnWire>> {
  const { shopId, personId } = ctx.actor;
  if (input.draws.length === 0) {
    const fault = { at: 'draws', value: 0, says: 'must name the packs that go into the batch' };
    return refused('batch.invalid', 'A batch is made of something.', { faults: [fault] });
  }
  const drawn = await drawnOf(tx, ctx, input);
  if (!drawn.ok) return drawn;
  const packs = await listPacks(tx, shopId, { packIds: input.draws.map(({ packId }) => packId) });
  const madeOn = await todayAt(tx, ctx);
  const notForSale = packs.some(({ legalMode, orderId }) => legalMode === 'for-owner' || orderId !== null);
  const reckoned = reckonBatch(input, drawn.value, { date: madeOn, notForSale });
  if (!reckoned.ok) return reckoned;
  const batchId = input.batchId ?? ctx.ids.newId();
  const { kind, name, draws } = input;
  const { record } = reckoned.value;
  await addKitchenBatch(tx, { shopId, batchId, kind, name, madeOn, record, madeBy: personId, draws });
  const facts = { kind, packs: draws.length };
  await appendAudit(tx, { shopId, personId, action: 'batch.make', subject: batchId, facts });
  const [made] = await listKitchenBatches(tx, shopId, { limit: 1, batchId });
  if (!made) throw new Error(`batch ${batchId} is gone inside its own transaction`);
  return done(onWire(made));
}

/** Keeps a batch of sausage, lard or cure, with what it took of which packs. It is never changed. */
export async function makeBatch(
  ctx: Ctx,
  input: NewBatchOnWire,
  key: OnceKey,
): Promise<Outcome<OnceAnswer<BatchOnWire>>> {
  const refusal = authorise(ctx, 'kitchen.make');
  if (refusal) return refusal;
  return transact(ctx.db, (tx) => once(tx, ctx.actor, key, () => makeIn(tx, ctx, input)));
}

/** The latest batches first. */
export async function listBatches(ctx: Ctx): Promise<Outcome<readonly BatchOnWire[]>> {
  const refusal = authorise(ctx, 'kitchen.read');
  if (refusal) return refusal;
  return look(ctx.db, async (tx) =>
    done((await listKitchenBatches(tx, ctx.actor.shopId, { limit: shown })).map(onWire)),
  );
}
