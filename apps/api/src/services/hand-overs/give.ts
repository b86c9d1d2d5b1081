import { checkLeaving, readElements, type Slip } from '@flitchbook/books';
import type { HandOverList, NewHandOverOnWire } from '@flitchbook/contracts';
import {
  addHandOver,
  appendAudit,
  appendLedger,
  holdOrder,
  listPacks,
  type PackRecord,
  type Tx,
} from '@flitchbook/db';
import { done, type Outcome, refused } from '../../refusals.ts';
import { orderUnknown } from '../bills/order-account.ts';
import type { Ctx } from '../ctx.ts';
import { type OnceAnswer, type OnceKey, once } from '../once.ts';
import { authorise } from '../roles.ts';
import { transact } from '../transact.ts';
import { handOverListIn, packToGive } from './read.ts';

/** The serial and the lot that a label's symbol says; a bare number is a serial. */
function readScan(scan: string): { readonly serial: number; readonly lot: string | null } | null {
  if (/^\d{1,9}$/.test(scan)) return { serial: Number(scan), lot: null };
  const elements = readElements(scan);
  if (!elements.ok) return null;
  const serial = elements.value.find(({ ai }) => ai === '21')?.value ?? '';
  const lot = elements.value.find(({ ai }) => ai === '10')?.value ?? null;
  return /^\d{1,9}$/.test(serial) ? { serial: Number(serial), lot } : null;
}

/** Scans to packs. A serial of another shop's label meets a lot that is not ours, and is no pack of this shop. */
async function packsOfScans(
  tx: Tx,
  shopId: string,
  scans: readonly string[],
): Promise<Outcome<readonly PackRecord[]>> {
  const faults: Slip[] = [];
  const packs: PackRecord[] = [];
  for (const [place, scan] of scans.entries()) {
    const read = readScan(scan);
    const [pack] = read ? await listPacks(tx, shopId, { serial: read.serial }) : [];
    if (read && pack && (read.lot === null || read.lot === pack.lot)) packs.push(pack);
    else
      faults.push({
        at: `scans[${place}]`,
        value: scan,
        says: read ? 'is not a pack of this shop' : 'could not be read as a pack’s label',
      });
  }
  return faults.length === 0
    ? done(packs)
    : refused('hand-over.invalid', 'Not everything that was scanned is a pack of this shop.', { faults });
}

async function giveIn(
  tx: Tx,
  ctx: Ctx,
  orderId: string,
  input: NewHandOverOnWire,
): Promise<Outcome<HandOverList>> {
  const { shopId, personId } = ctx.actor;
  if (!(await holdOrder(tx, shopId, orderId))) return orderUnknown(orderId);
  const named = await listPacks(tx, shopId, { packIds: input.packIds ?? [] });
  const scanned = await packsOfScans(tx, shopId, input.scans ?? []);
  if (!scanned.ok) return scanned;
  const packIds = [...(input.packIds ?? []), ...scanned.value.map(({ packId }) => packId)];
  if (packIds.length === 0) {
    const fault = { at: 'packIds', value: [], says: 'at least one pack leaves' };
    return refused('hand-over.invalid', 'Nothing would leave.', { faults: [fault] });
  }
  const leaving = checkLeaving(orderId, packIds, [...named, ...scanned.value].map(packToGive));
  if (!leaving.ok)
    return refused('hand-over.invalid', 'These packs cannot leave with this order; errors says why.', {
      faults: leaving.slips,
    });
  const { handOverId = ctx.ids.newId(), takenBy, proof, note = '' } = input;
  const packs = leaving.value.map(({ packId }) => ({ packId, soldMinor: null }));
  await addHandOver(tx, { shopId, handOverId, orderId, takenBy, proof, note, givenBy: personId, packs });
  const after = await handOverListIn(tx, ctx, orderId);
  if (!after.ok) return after;
  const { list, till } = after.value;
  const facts = { handOverId, packs: packs.length, left: list.packs.filter(({ isGone }) => !isGone).length };
  await appendLedger(tx, {
    shopId,
    kind: 'order.handed-over',
    dayId: till.order.dayId,
    orderId,
    personId,
    facts,
  });
  await appendAudit(tx, { shopId, personId, action: 'order.hand-over', subject: orderId, facts });
  return done(list);
}

/** Packs leave with the order that they were packed for: all of them, or some now and some later. */
export async function handOver(
  ctx: Ctx,
  orderId: string,
  input: NewHandOverOnWire,
  key: OnceKey,
): Promise<Outcome<OnceAnswer<HandOverList>>> {
  const refusal = authorise(ctx, 'hand-overs.give');
  if (refusal) return refusal;
  return transact(ctx.db, (tx) => once(tx, ctx.actor, key, () => giveIn(tx, ctx, orderId, input)));
}
