import { setTimeout as sleep } from 'node:timers/promises';
import type { NewHold } from '@flitchbook/contracts';
import {
  closeDay,
  forShop,
  inTransaction,
  listLedger,
  loadCuttingDay,
  loadPlan,
  type OrderRecord,
  setShopRules,
  takeMails,
  touchDay,
} from '@flitchbook/db';
import { describeOnBoth } from '@flitchbook/db/testing';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Outcome } from '../../refusals.ts';
import { animal } from '../../testing/bodies.ts';
import { must, openTestShop, type TestShop } from '../../testing/test-shop.ts';
import { bookAnimal } from '../animals/book.ts';
import { correctAnimal } from '../animals/correct.ts';
import { actAs, type Ctx } from '../ctx.ts';
import { enterByLink, revokeLinks } from '../customers/enter.ts';
import { openDay } from '../days/open.ts';
import { setLastCall } from '../days/set-last-call.ts';
import { listOwnOrders } from '../orders/own.ts';
import { addPerson } from '../people/add.ts';
import { keepPlanned } from '../plans/keep.ts';
import { listShortages } from '../plans/shortages.ts';
import { readSession } from '../sessions/read.ts';
import { holdOrder } from './hold.ts';
import { lapseDay } from './lapse.ts';
import { promoteQueue } from './promote.ts';
import { quoteOrder } from './quote.ts';
import { dismissQueue, releaseOrder } from './release.ts';
import { reserveOrder } from './reserve.ts';

const rules = {
  holdSeconds: 900,
  promotedHoldSeconds: 86_400,
  depositPercent: 25,
  depositFromMinor: 0,
  ordersPerPerson: 50,
  piecesPerPerson: 500,
  sharesPerPerson: 2,
};

const tenderloins = (pieces: number): NewHold['lines'] => [
  { cut: 'tenderloin', portion: { by: 'whole' }, ask: { pieces } },
];
const chops = (um: number, pieces: number): NewHold['lines'] => [
  { cut: 'rib-chop', portion: { by: 'thickness', um }, ask: { pieces } },
];

const refusalOf = (outcome: Outcome<unknown>): string => (outcome.ok ? 'done' : outcome.type);

describeOnBoth('reservations', (db) => {
  let shop: TestShop;
  let counter: Ctx;
  let customers: readonly Ctx[];
  let dates = 0;

  const key = () => ({ key: shop.newId(), route: 'test', request: null, status: 201 as const });
  const setRules = (change: Partial<typeof rules> = {}) =>
    inTransaction(counter.db, (tx) => setShopRules(tx, shop.own.shopId, { ...rules, ...change }));
  const hold = (ctx: Ctx, dayId: string, lines: NewHold['lines'], more: Partial<NewHold> = {}) =>
    holdOrder(ctx, { dayId, key: key(), input: { owner: 'Bram', lines, shares: [], ...more } });
  const held = async (ctx: Ctx, dayId: string, lines: NewHold['lines'], more: Partial<NewHold> = {}) =>
    must(await hold(ctx, dayId, lines, more)).body;
  const reserve = (ctx: Ctx, { orderId }: OrderRecord) => reserveOrder(ctx, orderId, key());
  const release = (ctx: Ctx, { orderId }: OrderRecord) => releaseOrder(ctx, orderId, key());

  /** A day of its own with so many hogs. */
  async function freshDay(hogs = 1): Promise<{ dayId: string; animalId: string }> {
    const owner = actAs(shop.services, { shopId: shop.own.shopId, personId: null, role: 'owner' });
    const date = new Date(Date.UTC(2031, 0, 1 + dates++)).toISOString().slice(0, 10);
    const { dayId } = must(await openDay(owner, { date }, key())).body;
    let animalId = '';
    for (let nth = 0; nth < hogs; nth++)
      animalId = must(await bookAnimal(owner, dayId, animal(), key())).body.animalId;
    return { dayId, animalId };
  }

  const stored = (dayId: string) =>
    inTransaction(counter.db, async (tx) => {
      const day = await loadCuttingDay(tx, shop.own.shopId, dayId);
      const plan = await loadPlan(tx, shop.own.shopId, dayId);
      if (!day || !plan) throw new Error('no day, or no plan');
      return { day, plan: plan.plan };
    });
  const orderNow = async ({ dayId, orderId }: OrderRecord) =>
    (await stored(dayId)).day.orders.find((order) => order.orderId === orderId);
  const ledgerOf = async (dayId: string, kind: string) =>
    (
      await inTransaction(counter.db, (tx) => listLedger(tx, shop.own.shopId, { after: 0, limit: 10_000 }))
    ).filter((entry) => entry.dayId === dayId && entry.kind === kind);
  const freeUm = async (dayId: string): Promise<number> =>
    (await stored(dayId)).plan.sides
      .flatMap(({ bars }) => bars.flatMap(({ runs }) => runs))
      .reduce((sum, run) => sum + run.freeUm, 0);

  beforeAll(async () => {
    shop = await openTestShop(db());
    const { shopId } = shop.own;
    counter = actAs(shop.services, { shopId, personId: null, role: 'counter' });
    const owner = actAs(shop.services, { shopId, personId: null, role: 'owner' });
    customers = await Promise.all(
      ['Mirela Quist', 'Odalys Finch'].map(async (name, nth) => {
        const person = { name, role: 'customer' as const, password: 'fourteen hooks in a row' };
        const { personId } = must(await addPerson(owner, { ...person, email: `guest${nth}@guest.example` }));
        return actAs(shop.services, { shopId, personId, role: 'customer' });
      }),
    );
    await setRules();
  });
  const [first, second] = [() => customers[0] as Ctx, () => customers[1] as Ctx];

  it('hold, then reserve: once, with a deposit, and every piece of it in the plan', async () => {
    const { dayId } = await freshDay();
    const input = { owner: 'Bram', lines: tenderloins(1), shares: [] };
    const quote = must(await quoteOrder(counter, dayId, input));
    expect(quote).toMatchObject({ fits: true, holdSeconds: 900 });
    expect(quote.depositMinor).toBe(Math.floor((quote.expectedMinor * 25 + 50) / 100));
    const order = await held(counter, dayId, tenderloins(1));
    expect(order).toMatchObject({ state: 'held', assured: true, depositMinor: quote.depositMinor });
    const once = key();
    const reserved = must(await reserveOrder(counter, order.orderId, once));
    const again = must(await reserveOrder(counter, order.orderId, once));
    expect([reserved.replayed, again.replayed]).toEqual([false, true]);
    expect(again.body).toEqual(reserved.body);
    expect(refusalOf(await reserve(counter, order))).toBe('reservation.not-held');
    expect(refusalOf(await release(counter, order))).toBe('reservation.not-held');
    const { plan, day } = await stored(dayId);
    expect(plan.lines.map(({ filled, asked }) => [filled, asked])).toEqual([[1, 1]]);
    expect(day.day.plannedVersion).toBe(day.day.version);
  });

  // Field experience of shops: what a hold lets go is length of loin, not chops of its own thickness.
  it('a hold that lapses gives its length back, once, whoever looks', async () => {
    await setRules({ holdSeconds: 1 });
    const { dayId } = await freshDay();
    await held(counter, dayId, tenderloins(1)).then((order) => reserve(counter, order));
    // The first of its kind may have the day planned anew; the next finds its stretch and is laid in.
    await release(counter, await held(counter, dayId, chops(50_800, 3)));
    const before = await freeUm(dayId);
    const order = await held(counter, dayId, chops(50_800, 3));
    expect(await freeUm(dayId)).toBeLessThan(before);
    await sleep(1200);
    expect(refusalOf(await reserve(counter, order))).toBe('reservation.lapsed');
    await Promise.all([lapseDay(counter, dayId), lapseDay(counter, dayId)]);
    expect(await orderNow(order)).toMatchObject({ state: 'lapsed', assured: false, heldUntil: null });
    expect(await freeUm(dayId)).toBe(before);
    expect(await ledgerOf(dayId, 'order.lapsed')).toHaveLength(1);
    expect(refusalOf(await release(counter, order))).toBe('reservation.not-held');
    await setRules();
    const thin = await held(counter, dayId, chops(25_400, 5));
    expect(thin.state).toBe('held');
  });

  it('a hold that has lapsed stands in nobody’s way, even before anybody swept it up', async () => {
    await setRules({ holdSeconds: 1 });
    const { dayId } = await freshDay();
    await held(counter, dayId, tenderloins(2));
    expect(refusalOf(await hold(counter, dayId, tenderloins(1)))).toBe('reservation.not-possible');
    await sleep(1200);
    await setRules();
    expect((await held(counter, dayId, tenderloins(2))).state).toBe('held');
  });

  it('the queue serves the earliest whose whole demand fits, and writes down who was overtaken', async () => {
    const { dayId } = await freshDay();
    const one = await held(counter, dayId, tenderloins(1));
    const other = await held(counter, dayId, tenderloins(1));
    const both = await held(first(), dayId, tenderloins(2), { orQueue: true });
    const single = await held(second(), dayId, tenderloins(1), { orQueue: true });
    expect([both.state, single.state]).toEqual(['queued', 'queued']);
    await release(counter, one);
    expect([(await orderNow(both))?.state, (await orderNow(single))?.state]).toEqual(['queued', 'held']);
    const [promoted] = await ledgerOf(dayId, 'order.promoted');
    expect(promoted?.facts).toMatchObject({ number: single.number, overtakes: [both.number] });
    await release(counter, other);
    expect((await orderNow(both))?.state).toBe('queued');
    await release(second(), single);
    expect(await orderNow(both)).toMatchObject({ state: 'held', assured: true });
  });

  it('whoever still waits when the day is closed is told so, once', async () => {
    const { dayId } = await freshDay();
    await held(counter, dayId, tenderloins(2));
    const waiting = await held(first(), dayId, tenderloins(1), { orQueue: true });
    expect(await dismissQueue(counter, dayId)).toEqual({ ok: true, value: [] });
    await inTransaction(counter.db, async (tx) => {
      const touched = await touchDay(tx, { shopId: counter.actor.shopId, dayId });
      if (touched.outcome === 'touched') await closeDay(tx, touched.day);
    });
    await Promise.all([dismissQueue(counter, dayId), dismissQueue(counter, dayId)]);
    expect((await orderNow(waiting))?.state).toBe('released');
    expect(await ledgerOf(dayId, 'order.dismissed')).toHaveLength(1);
  });

  it('two tabs of one customer and the last tenderloin: one has it, and the cap counts both', async () => {
    const { dayId } = await freshDay();
    await held(counter, dayId, tenderloins(1));
    const tabs = await Promise.all([
      hold(first(), dayId, tenderloins(1)),
      hold(first(), dayId, tenderloins(1)),
    ]);
    expect(tabs.map(refusalOf).toSorted()).toEqual(['done', 'reservation.not-possible']);
    await setRules({ piecesPerPerson: 3 });
    const more = await Promise.all([
      hold(first(), dayId, chops(20_000, 2)),
      hold(first(), dayId, chops(20_000, 2)),
    ]);
    expect(more.map(refusalOf).toSorted()).toEqual(['done', 'reservation.not-yours-to-hold']);
    await setRules();
  });

  it('an order is whole or not at all, and lines of one cut are counted together', async () => {
    const { dayId } = await freshDay();
    const twice = [...tenderloins(2), ...tenderloins(1)];
    const outcome = await hold(counter, dayId, twice);
    expect(refusalOf(outcome)).toBe('reservation.not-possible');
    expect(outcome).toMatchObject({ instead: [{ asked: 2 }, { asked: 1 }] });
    expect(await ledgerOf(dayId, 'order.held')).toEqual([]);
    expect((await held(counter, dayId, [...tenderloins(1), ...tenderloins(1)])).lines).toHaveLength(2);
  });

  it('after the last call customers are refused and the counter is not', async () => {
    const { dayId } = await freshDay();
    const owner = actAs(shop.services, { ...counter.actor, role: 'owner' });
    const early = await held(first(), dayId, tenderloins(1));
    const { version } = (await stored(dayId)).day.day;
    const customersUntil = '2026-01-01T00:00:00.000Z';
    must(await setLastCall(owner, { dayId, ifVersion: version, customersUntil }));
    expect(refusalOf(await hold(first(), dayId, tenderloins(1)))).toBe('day.closed-to-customers');
    expect(refusalOf(await hold(counter, dayId, tenderloins(1)))).toBe('done');
    expect(refusalOf(await reserve(first(), early))).toBe('done');
  });

  it('a customer sees and moves no order but his own', async () => {
    const { dayId } = await freshDay();
    const mine = await held(first(), dayId, tenderloins(1));
    expect(refusalOf(await reserve(second(), mine))).toBe('order.unknown');
    expect(refusalOf(await release(second(), mine))).toBe('order.unknown');
    const theirs = must(await listOwnOrders(second())).map(({ orderId }) => orderId);
    expect(theirs).not.toContain(mine.orderId);
    expect(must(await listOwnOrders(first())).map(({ orderId }) => orderId)).toContain(mine.orderId);
    expect(mine.owner).toBe('Mirela Quist');
  });

  it('a carcass that gives less leaves an explicit list: the latest first, and nobody else loses anything', async () => {
    const { dayId, animalId } = await freshDay();
    const early = await held(first(), dayId, tenderloins(1));
    must(await reserve(first(), early));
    const late = await held(second(), dayId, tenderloins(1));
    must(await reserve(second(), late));
    const owner = actAs(shop.services, { ...counter.actor, role: 'owner' });
    // Common practice, no source: an inspector condemns one middle, and the tenderloin lies in it.
    const [known] = (await stored(dayId)).day.animals;
    const [spoiled, sound] = known?.sides ?? [];
    const sides = [spoiled, sound].flatMap((side, nth) =>
      side ? [{ hand: side.hand, lostParts: nth === 0 ? ['middle'] : [] }] : [],
    );
    const ifVersion = known?.version ?? 0;
    must(await correctAnimal(owner, { animalId, ifVersion, edit: { sides } }));
    must(await keepPlanned(owner, dayId));
    expect(await orderNow(early)).toMatchObject({ state: 'standing', assured: true });
    expect(await orderNow(late)).toMatchObject({ state: 'standing', assured: false });
    const short = must(await listShortages(owner, dayId));
    expect(short.map(({ orderId, facts }) => [orderId, facts['was']])).toEqual([[late.orderId, 'standing']]);
    expect(short[0]?.facts['lacks']).toMatchObject([{ asked: 1, filled: 0 }]);
    must(await keepPlanned(owner, dayId));
    expect(must(await listShortages(owner, dayId))).toHaveLength(1);
  });

  describe('mails and links', () => {
    it('each step of a customer’s order leaves one mail, in the same transaction', async () => {
      const { dayId } = await freshDay();
      const { shopId } = shop.own;
      const take = () =>
        inTransaction(forShop(shop.services.db, shopId), (tx) =>
          takeMails(tx, shopId, { limit: 1000, leaseSeconds: 3600 }),
        );
      await take();
      const order = await held(first(), dayId, tenderloins(2));
      await hold(second(), dayId, tenderloins(2));
      await reserve(first(), order);
      await reserve(first(), order);
      const mails = await take();
      expect(mails.map(({ kind, orderId }) => [kind, orderId])).toEqual([
        ['order.held', order.orderId],
        ['order.reserved', order.orderId],
      ]);
      const token = /#\/link\/([\w-]{43})/.exec(mails[0]?.body ?? '')?.[1] ?? '';
      const opened = must(await enterByLink(shop.services, token));
      expect(opened.person.personId).toBe(first().actor.personId);
      expect(must(await readSession(shop.services, opened.token))).toBeDefined();
      must(await revokeLinks(first(), first().actor.personId ?? ''));
      expect(refusalOf(await enterByLink(shop.services, token))).toBe('link.void');
      expect(must(await readSession(shop.services, opened.token))).toBeUndefined();
    });
  });

  it('asks nothing of a queue that is empty', async () => {
    const { dayId } = await freshDay();
    expect(must(await promoteQueue(counter, dayId))).toEqual([]);
  });
});
