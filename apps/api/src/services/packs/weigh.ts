import { addDays, localDateAt, netWeight, type PackToMake, packPrice } from '@flitchbook/books';
import type { NewPackOnWire, PackOnWire } from '@flitchbook/contracts';
import {
  addPack,
  appendAudit,
  appendLedger,
  holdAnimal,
  listPacks,
  type NewPack,
  stopOrders,
  type Tx,
  wasTold,
} from '@flitchbook/db';
import { done, type Outcome, refused } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { packedList } from '../mails/mail-lists.ts';
import { tellOwner } from '../mails/write-mail.ts';
import { type OnceAnswer, type OnceKey, once } from '../once.ts';
import { authorise } from '../roles.ts';
import { dayUnknown, transact } from '../transact.ts';
import { animalOf, type Bench, orderOf, readBench } from './bench.ts';
import { packOnWire, priceOf } from './on-wire.ts';

/** One lot for each side and day: what is called back together. */
function lotOf(bench: Bench, { animalId, sideId }: PackToMake): string {
  const hand = animalOf(bench, animalId).sides.find((side) => side.sideId === sideId)?.hand;
  const letter = hand === undefined ? 'A' : hand === 'left' ? 'L' : 'R';
  return `${bench.stored.day.date.slice(2).replaceAll('-', '')}-${animalId.slice(-6).toUpperCase()}${letter}`;
}

function findToMake(bench: Bench, input: NewPackOnWire): Outcome<PackToMake> {
  const { key, pieceIds } = input;
  const pack = bench.toMake.find((each) => each.key === key);
  if (!pack) {
    const isMade = bench.foreseen.some((each) => each.key === key);
    return isMade
      ? refused(
          'pack.already-made',
          'All pieces of this pack are packed already. Undo that pack to weigh it again.',
        )
      : refused('pack.unknown', `The plan of the day foresees no pack ${key}.`);
  }
  if (pieceIds === undefined) return done(pack);
  const foreign = pieceIds.findIndex((pieceId) => !pack.pieceIds.includes(pieceId));
  if (foreign !== -1 || pieceIds.length === 0) {
    const fault = {
      at: `pieceIds[${Math.max(0, foreign)}]`,
      value: pieceIds[foreign] ?? [],
      says: 'is not a piece that is left for this pack',
    };
    return refused('pack.invalid', 'The pack cannot hold these pieces.', { faults: [fault] });
  }
  const own = [...new Set(pieceIds)];
  return done({
    ...pack,
    pieceIds: own,
    expectedMg: Math.round((pack.expectedMg * own.length) / pack.pieceIds.length),
  });
}

function packToStore(ctx: Ctx, bench: Bench, pack: PackToMake, input: NewPackOnWire): Outcome<NewPack> {
  const weighed = netWeight(input.gross, input.tare);
  if (!weighed.ok)
    return refused('pack.invalid', 'The weights cannot be as they are written; errors says why.', {
      faults: weighed.slips,
    });
  const { shop, settings } = bench;
  const { gross, tare, net, netGrams } = weighed.value;
  const price = priceOf(bench, pack);
  const packedOn = localDateAt(ctx.clock().toISOString(), shop.timeZone);
  const days = settings.label.things[pack.thing.id]?.bestBeforeDays ?? settings.label.bestBeforeDays;
  const frozen = input.frozen ?? false;
  return done({
    shopId: shop.shopId,
    packId: input.packId ?? ctx.ids.newId(),
    dayId: bench.stored.day.dayId,
    animalId: pack.animalId,
    legalMode: animalOf(bench, pack.animalId).legalMode,
    sideId: pack.sideId,
    lot: lotOf(bench, pack),
    foreseen: pack.key,
    thing: pack.thing.kind,
    what: pack.thing.id,
    name: pack.size === 'whole' || pack.size === 'by weight' ? pack.name : `${pack.name}, ${pack.size}`,
    pieceIds: pack.pieceIds,
    orderId: orderOf(bench, pack.owner)?.orderId ?? null,
    owner: pack.owner,
    gross,
    tare,
    net,
    netGrams,
    expectedMg: pack.expectedMg,
    price,
    amountMinor: price && packPrice(net, price),
    taxClass: settings.money.meatTaxClass,
    frozen,
    packedOn,
    bestBefore: frozen || days === null ? null : addDays(packedOn, days),
    packedBy: ctx.actor.personId,
  });
}

/** Whether nothing of the order is left to pack after this pack. */
function isLastOf(bench: Bench, pack: PackToMake): boolean {
  const order = orderOf(bench, pack.owner);
  return bench.toMake.every(
    ({ key, owner, pieceIds }) =>
      orderOf(bench, owner)?.orderId !== order?.orderId ||
      (key === pack.key && pieceIds.length === pack.pieceIds.length),
  );
}

/** Once an order, however often its last pack is undone and weighed again. */
async function tellReady(tx: Tx, ctx: Ctx, pack: PackToMake, bench: Bench): Promise<void> {
  const { shopId } = ctx.actor;
  const order = orderOf(bench, pack.owner);
  if (!order || (await wasTold(tx, shopId, order.orderId, 'order.ready'))) return;
  const packs = await listPacks(tx, shopId, { dayId: order.dayId });
  const mine = packs.filter(({ orderId }) => orderId === order.orderId);
  await tellOwner(tx, ctx, 'order.ready', order, (voice) => [packedList(voice, mine)]);
}

async function weighIn(tx: Tx, ctx: Ctx, dayId: string, input: NewPackOnWire): Promise<Outcome<PackOnWire>> {
  const { shopId, personId } = ctx.actor;
  const closed = await stopOrders(tx, shopId, dayId);
  if (closed === 'unknown') return dayUnknown(dayId);
  if (closed === 'open')
    return refused(
      'pack.plan-stale',
      'The day has changed since it was planned. Weigh once it is planned again.',
    );
  const bench = await readBench(tx, ctx, dayId);
  if (!bench.ok) return bench;
  const found = findToMake(bench.value, input);
  if (!found.ok) return found;
  const pack = packToStore(ctx, bench.value, found.value, input);
  if (!pack.ok) return pack;
  await holdAnimal(tx, shopId, pack.value.animalId);
  const serial = await addPack(tx, pack.value);
  const { packId, orderId, netGrams } = pack.value;
  const facts = { packId, serial, netGrams };
  await appendLedger(tx, { shopId, kind: 'pack.made', dayId, orderId, personId, facts });
  await appendAudit(tx, { shopId, personId, action: 'pack.make', subject: packId, facts });
  if (isLastOf(bench.value, found.value)) await tellReady(tx, ctx, found.value, bench.value);
  const [made] = await listPacks(tx, shopId, { packIds: [packId] });
  if (!made) throw new Error(`pack ${packId} is gone inside its own transaction`);
  return done(packOnWire(made));
}

/**
 * Weighs a pack that the plan foresees: one act makes its label, its line on the bill and its place in the balance of the
 * animal. The first pack ends the taking of orders: what lies on the block is not planned again.
 */
export async function weighPack(
  ctx: Ctx,
  dayId: string,
  input: NewPackOnWire,
  key: OnceKey,
): Promise<Outcome<OnceAnswer<PackOnWire>>> {
  const refusal = authorise(ctx, 'packs.weigh');
  if (refusal) return refusal;
  return transact(ctx.db, (tx) => once(tx, ctx.actor, key, () => weighIn(tx, ctx, dayId, input)));
}
