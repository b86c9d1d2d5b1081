import { accountOf, calendarFeed, packsToMake } from '@flitchbook/books';
import { knownSpecies, type OrderPromise } from '@flitchbook/contracts';
import {
  findBill,
  findPickUp,
  findShop,
  isOpenToCustomers,
  listPackedPieces,
  listPacks,
  listPayments,
  loadCuttingDay,
  loadPlan,
  type OrderRecord,
  type PackRecord,
  type Shop,
  type StoredDay,
  type Tx,
} from '@flitchbook/db';
import type { CuttingPlan } from '@flitchbook/plan';
import { done, type Outcome, refused } from '../../refusals.ts';
import { bookSettingsIn } from '../book-settings/read.ts';
import type { Ctx } from '../ctx.ts';
import { freeWindows } from '../hand-overs/free-windows.ts';
import { likelyOf } from '../reservations/likely.ts';
import { ownOrder } from '../reservations/own-order.ts';
import { authorise } from '../roles.ts';
import { dayUnknown, look } from '../transact.ts';

interface Read {
  readonly order: OrderRecord;
  readonly shop: Shop;
  readonly stored: StoredDay;
  readonly plan: CuttingPlan | null;
}

async function readOrder(tx: Tx, ctx: Ctx, orderId: string): Promise<Outcome<Read>> {
  const { shopId } = ctx.actor;
  const order = await ownOrder(tx, ctx, orderId);
  if (!order.ok) return order;
  const shop = await findShop(tx, shopId);
  const stored = await loadCuttingDay(tx, shopId, order.value.dayId);
  if (!shop || !stored) return dayUnknown(order.value.dayId);
  const plan = (await loadPlan(tx, shopId, order.value.dayId))?.plan ?? null;
  return done({ order: order.value, shop, stored, plan });
}

function linesOf({ order, stored, plan }: Read, swingPpm: number): OrderPromise['lines'] {
  const likely = likelyOf(stored.cuttingDay, order, swingPpm);
  return order.lines.map(({ lineId, speciesId, cut, ask }, at) => {
    const fill = plan?.lines.find((each) => each.lineId === lineId);
    const range = likely[at];
    const none = { from: 0, to: 0 };
    return {
      lineId,
      speciesId,
      cut,
      name: knownSpecies[speciesId]?.cuts[cut]?.name ?? cut,
      asked: 'pieces' in ask ? ask.pieces : ask.grams,
      byWeight: 'grams' in ask,
      planned: fill?.filled ?? null,
      why: fill?.shortfall?.kind ?? null,
      expectedGrams: range?.grams ?? none,
      expectedMinor: range?.minor ?? none,
    };
  });
}

const packOnWire = (pack: PackRecord): OrderPromise['packs'][number] => ({
  packId: pack.packId,
  ...(pack.owner && 'lineId' in pack.owner && { lineId: pack.owner.lineId }),
  name: pack.name,
  pieces: pack.pieces,
  net: pack.net,
  netGrams: pack.netGrams,
  frozen: pack.frozen,
  packedOn: pack.packedOn,
  isGone: pack.handOverId !== null,
});

async function unpackedOf(tx: Tx, { order, shop, stored, plan }: Read): Promise<number> {
  if (!plan) return 0;
  const packed = new Set(await listPackedPieces(tx, shop.shopId, order.dayId));
  const lineIds = new Set(order.lines.map(({ lineId }) => lineId));
  const shareIds = new Set(order.shares.map(({ shareId }) => shareId));
  return packsToMake({ ...stored.cuttingDay, species: knownSpecies }, plan, shop).filter(
    ({ owner, pieceIds }) =>
      owner !== null &&
      ('lineId' in owner ? lineIds.has(owner.lineId) : shareIds.has(owner.shareId)) &&
      pieceIds.some((pieceId) => !packed.has(pieceId)),
  ).length;
}

async function billOf(tx: Tx, { order, shop }: Read): Promise<OrderPromise['bill']> {
  const bill = await findBill(tx, shop.shopId, order.orderId);
  if (!bill) return null;
  const { dueMinor } = accountOf(bill.totalMinor, await listPayments(tx, shop.shopId, order.orderId));
  return { number: bill.number, totalMinor: bill.totalMinor, dueMinor };
}

/** What a customer was promised and what has become of it. */
export async function readPromise(ctx: Ctx, orderId: string): Promise<Outcome<OrderPromise>> {
  const refusal = authorise(ctx, 'orders.promise');
  if (refusal) return refusal;
  return look(ctx.db, async (tx) => {
    const found = await readOrder(tx, ctx, orderId);
    if (!found.ok) return found;
    const { order, shop, stored } = found.value;
    const { shopId } = shop;
    const { date, customersUntil } = stored.day;
    const { settings } = await bookSettingsIn(tx, shop);
    const pickUp = await findPickUp(tx, shopId, orderId);
    const packs = await listPacks(tx, shopId, { dayId: order.dayId });
    const isOpen = await isOpenToCustomers(tx, shopId, order.dayId);
    return done({
      shop,
      order,
      date,
      dayIsOpen: isOpen,
      mayChange: order.state === 'held' || order.state === 'queued' || (order.state === 'standing' && isOpen),
      customersUntil,
      lines: linesOf(found.value, settings.money.estimateSwingPpm),
      packs: packs.filter((pack) => pack.orderId === orderId).map(packOnWire),
      unpacked: await unpackedOf(tx, found.value),
      pickUp: pickUp
        ? {
            date: pickUp.date,
            from: pickUp.fromTime,
            to: pickUp.toTime,
            place: pickUp.place,
            version: pickUp.version,
          }
        : null,
      windows: await freeWindows(tx, ctx, { shop, settings, date, orderId }),
      bill: await billOf(tx, found.value),
    });
  });
}

/** The pick-up of one's own order as a calendar file (RFC 5545). */
export async function readPickUpCalendar(ctx: Ctx, orderId: string): Promise<Outcome<string>> {
  const refusal = authorise(ctx, 'orders.promise');
  if (refusal) return refusal;
  return look(ctx.db, async (tx) => {
    const found = await readOrder(tx, ctx, orderId);
    if (!found.ok) return found;
    const { order, shop } = found.value;
    const pickUp = await findPickUp(tx, shop.shopId, orderId);
    if (!pickUp) return refused('pick-up.missing', 'No pick-up is agreed for this order yet.');
    const { startsAt, endsAt, place, changedAt } = pickUp;
    const id = `${orderId}@${shop.shopId}`;
    const title = `${shop.name}: order ${order.number}`;
    return done(calendarFeed(shop.name, [{ id, title, place, startsAt, endsAt, changedAt }]));
  });
}
