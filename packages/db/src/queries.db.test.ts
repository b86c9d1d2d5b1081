import { sql } from 'drizzle-orm';
import { beforeAll, expect, it } from 'vitest';
import type { Tx } from './database.ts';
import { addAnimal, findAnimal, listAnimals, updateAnimal } from './queries/animals.ts';
import { closeDay, findDay, listDays, loadCuttingDay, touchDay } from './queries/days.ts';
import { beginIdempotent, finishIdempotent, forgetOldAnswers } from './queries/idempotency.ts';
import { replaceLocks } from './queries/locks.ts';
import { addOrder, cancelOrder, findOrder, listOrders } from './queries/orders.ts';
import { storePlan } from './queries/plans.ts';
import {
  createFarm,
  createPerson,
  createSession,
  endSession,
  findSession,
  findShop,
  findSignIn,
  listFarms,
  listShops,
} from './queries/shops.ts';
import { describeOnBoth, statement } from './testing/both-engines.ts';
import {
  hog,
  type InventedShop,
  inventShop,
  line,
  newId,
  order,
  planOf,
  share,
  touched,
} from './testing/invented-shop.ts';
import { inTransaction } from './transaction.ts';

describeOnBoth('a cutting day', (db) => {
  let shop: InventedShop;
  beforeAll(async () => {
    shop = await inventShop(db());
  });
  const write = <T>(work: (tx: Tx) => Promise<T>) => inTransaction(db(), work);
  const read = <T>(work: (tx: Tx) => Promise<T>) => inTransaction(db(), work, { reading: true });

  it('comes back as a plan is made from it', async () => {
    const stored = await read((tx) => loadCuttingDay(tx, shop.shopId, shop.dayId));
    const { orderId, dayId, animalId } = shop;
    const owned = { orderId, owner: 'Petra Oduya' };
    const facts = { animalId, carcassGrams: 93_621, ribs: 15, facts: ['skin-on', 'head'] };
    expect(stored?.cuttingDay).toEqual({
      dayId,
      date: '2027-03-04',
      animals: [
        {
          animalId,
          name: 'Tag 41',
          speciesId: 'hog',
          lostItems: [],
          sides: [
            { ...facts, sideId: shop.left, hand: 'left', massMg: 46_810_500, lostParts: [] },
            { ...facts, sideId: shop.right, hand: 'right', massMg: 46_720_000, lostParts: ['jowl'] },
          ],
        },
      ],
      lines: [
        { ...line(shop.chops), ...owned },
        {
          ...line(shop.tenderloin, { cut: 'tenderloin', portion: { by: 'whole' }, ask: { pieces: 1 } }),
          ...owned,
          onlyAnimal: animalId,
        },
      ],
      shares: [{ ...share(shop.half), ...owned }],
      locks: [],
      tools: { saw: true, kerfUm: 1500 },
      counter: {
        itemSteps: [{ pieces: null, worthPercent: 100 }],
        stockSteps: [{ grams: null, worthPercent: 80 }],
        worthMinorPerKg: {},
        labourMinorPerHour: 2400,
      },
    });
    expect(stored?.day).toMatchObject({
      state: 'open',
      version: shop.version,
      plannedVersion: null,
      plannedAt: null,
    });
    expect(await read((tx) => loadCuttingDay(tx, newId(), shop.dayId))).toBeUndefined();
  });

  it('is touched by one at a time, at the version that was read', async () => {
    const { shopId, dayId } = shop;
    const { version } = (await read((tx) => findDay(tx, shopId, dayId)))!;
    const first = await write((tx) => touchDay(tx, { shopId, dayId, ifVersion: version }));
    expect(first).toEqual({ outcome: 'touched', day: { shopId, dayId, version: version + 1 } });
    const second = await write((tx) => touchDay(tx, { shopId, dayId, ifVersion: version }));
    expect(second).toEqual({ outcome: 'stale', version: version + 1 });
    expect(await write((tx) => touchDay(tx, { shopId: newId(), dayId }))).toEqual({ outcome: 'unknown' });
  });

  it('keeps locks in their order and replaces them whole', async () => {
    const locks = [
      { lock: 'manner', sideId: shop.right, zone: 'rib', manner: 'boned' },
      { lock: 'operation', sideId: shop.left, part: 'middle', operation: 'clear-cavity' },
    ] as const;
    await write(async (tx) => replaceLocks(tx, await touched(tx, shop), locks));
    const load = () => read((tx) => loadCuttingDay(tx, shop.shopId, shop.dayId));
    expect((await load())?.cuttingDay.locks).toEqual(locks);
    await write(async (tx) => replaceLocks(tx, await touched(tx, shop), []));
    expect((await load())?.cuttingDay.locks).toEqual([]);
  });

  it('counts animals, standing orders and short lines', async () => {
    const own = await inventShop(db());
    const list = () => read((tx) => listDays(tx, own.shopId));
    expect(await list()).toEqual([
      {
        dayId: own.dayId,
        date: '2027-03-04',
        state: 'open',
        version: own.version,
        plannedVersion: null,
        animals: 1,
        orders: 1,
        shortLines: null,
      },
    ]);
    const plan = planOf(own);
    await write((tx) => storePlan(tx, { shopId: own.shopId, planId: newId(), madeFor: own.version, plan }));
    await write(async (tx) => cancelOrder(tx, await touched(tx, own), { orderId: own.orderId, version: 1 }));
    expect(await list()).toMatchObject([{ plannedVersion: own.version + 1, orders: 0, shortLines: 1 }]);
  });

  it('takes no order once it is closed, but is still settled', async () => {
    const { shopId, dayId, version } = await inventShop(db());
    expect(await write((tx) => closeDay(tx, { shopId, dayId, version: version - 1 }))).toBe(false);
    expect(await write((tx) => closeDay(tx, { shopId, dayId, version }))).toBe(true);
    expect(await write((tx) => closeDay(tx, { shopId, dayId, version: version + 1 }))).toBe(false);
    expect(await write((tx) => touchDay(tx, { shopId, dayId }))).toEqual({ outcome: 'closed' });
    const settled = await write((tx) => touchDay(tx, { shopId, dayId, evenClosed: true }));
    expect(settled).toEqual({ outcome: 'touched', day: { shopId, dayId, version: version + 2 } });
  });
});

describeOnBoth('animals and orders', (db) => {
  let shop: InventedShop;
  beforeAll(async () => {
    shop = await inventShop(db());
  });

  it('keep the scale as it was read', async () => {
    const animal = { ...hog(newId(), newId(), newId()), name: 'Tag 42' };
    await inTransaction(db(), async (tx) => addAnimal(tx, await touched(tx, shop), animal));
    const stored = { ...animal, dayId: shop.dayId, version: 1 };
    expect(await inTransaction(db(), (tx) => findAnimal(tx, shop.shopId, animal.animalId))).toEqual(stored);
    const list = await inTransaction(db(), (tx) => listAnimals(tx, shop.shopId, shop.dayId));
    expect(list.map(({ name }) => name)).toEqual(['Tag 41', 'Tag 42']);
  });

  it('change at the version that was read', async () => {
    const before = hog(shop.animalId, shop.left, shop.right);
    const [left, right] = before.sides;
    const animal = {
      ...before,
      hotOrCold: 'hot' as const,
      lostItems: ['liver'],
      sides: [{ ...left!, massMg: 47_000_000, lostParts: ['leg'] }, right!],
    };
    const update = (version: number, changed = animal) =>
      inTransaction(db(), async (tx) =>
        updateAnimal(tx, await touched(tx, shop), { animal: changed, version }),
      );
    expect(await update(1)).toBe('updated');
    expect(await update(1)).toBe('stale');
    expect(await update(1, { ...animal, animalId: newId() })).toBe('unknown');
    const found = await inTransaction(db(), (tx) => findAnimal(tx, shop.shopId, shop.animalId));
    expect(found).toEqual({ ...animal, dayId: shop.dayId, version: 2 });
    const strange = { ...animal, sides: [{ ...left!, sideId: newId() }] };
    await expect(update(2, strange)).rejects.toThrow(RangeError);
  });

  it('are numbered by shop and cancelled once', async () => {
    const [orderId, lineId] = [newId(), newId()];
    const grams = line(lineId, {
      cut: 'trim',
      portion: { by: 'bulk' },
      ask: { grams: 2500 },
      onlyHand: 'left',
    });
    const taken = await inTransaction(db(), async (tx) =>
      addOrder(tx, await touched(tx, shop), order(orderId, { note: 'fine, please', lines: [grams] })),
    );
    expect(taken).toEqual({ number: 2 });
    const found = await inTransaction(db(), (tx) => findOrder(tx, shop.shopId, orderId));
    expect(found).toMatchObject({
      number: 2,
      note: 'fine, please',
      state: 'standing',
      version: 1,
      shares: [],
    });
    expect(found?.lines).toEqual([{ ...grams, orderId, owner: 'Petra Oduya' }]);
    const cancel = (version: number, id = orderId) =>
      inTransaction(db(), async (tx) => cancelOrder(tx, await touched(tx, shop), { orderId: id, version }));
    expect(await cancel(2)).toBe('stale');
    expect(await cancel(1)).toBe('cancelled');
    expect(await cancel(2)).toBe('already');
    expect(await cancel(1, newId())).toBe('unknown');
    const list = await inTransaction(db(), (tx) => listOrders(tx, shop.shopId, shop.dayId));
    expect(list.map(({ number, state }) => [number, state])).toEqual([
      [1, 'standing'],
      [2, 'cancelled'],
    ]);
    const day = await inTransaction(db(), (tx) => loadCuttingDay(tx, shop.shopId, shop.dayId));
    expect(day?.cuttingDay.lines.map((one) => one.lineId)).toEqual([shop.chops, shop.tenderloin]);
    expect(day?.orders).toHaveLength(2);
  });
});

describeOnBoth('people and sessions', (db) => {
  let shop: InventedShop;
  const personId = newId();
  const tokenHash = 'ab'.repeat(32);
  const passwordHash = '$argon2id$v=19$not-a-real-one';
  beforeAll(async () => {
    shop = await inventShop(db());
    const { shopId } = shop;
    await inTransaction(db(), async (tx) => {
      await createFarm(tx, { shopId, farmId: newId(), name: 'Quince Hill' });
      await createPerson(tx, {
        shopId,
        personId,
        email: 'ines@ninth-rib.example',
        name: 'Ines Varga',
        role: 'owner',
        passwordHash,
      });
    });
  });

  it('are found in their own shop only', async () => {
    const { shopId } = shop;
    await inTransaction(db(), async (tx) => {
      const signIn = await findSignIn(tx, shopId, 'INES@ninth-rib.example');
      expect(signIn).toMatchObject({ passwordHash, person: { shopId, personId, role: 'owner' } });
      expect(await findSignIn(tx, newId(), 'ines@ninth-rib.example')).toBeUndefined();
      expect(await listFarms(tx, shopId)).toMatchObject([{ name: 'Quince Hill' }]);
      expect(await findShop(tx, shopId)).toMatchObject({ shopId, timeZone: 'Europe/Lisbon' });
      expect((await listShops(tx)).map((one) => one.shopId)).toContain(shopId);
    });
  });

  it('end by the clock of the database, or when somebody signs out', async () => {
    const { shopId } = shop;
    const session = { shopId, personId, tokenHash, lifetimeSeconds: 3600 };
    const find = () => inTransaction(db(), (tx) => findSession(tx, shopId, tokenHash));
    await inTransaction(db(), (tx) => createSession(tx, session));
    expect(await find()).toMatchObject({ person: { personId, name: 'Ines Varga' }, shop: { shopId } });
    await statement(db(), sql`update sessions set expires_at = now() where shop_id = ${shopId}`);
    expect(await find()).toBeUndefined();
    // The one that ran out makes way.
    await inTransaction(db(), (tx) => createSession(tx, session));
    expect(await inTransaction(db(), (tx) => endSession(tx, shopId, tokenHash))).toBe(true);
    expect(await inTransaction(db(), (tx) => endSession(tx, shopId, tokenHash))).toBe(false);
    expect(await find()).toBeUndefined();
  });
});

describeOnBoth('an answer by key', (db) => {
  let shop: InventedShop;
  beforeAll(async () => {
    shop = await inventShop(db());
  });
  const ask = (change = {}) => ({
    shopId: shop.shopId,
    principal: 'p',
    route: 'POST /api/days/:dayId/orders',
    key: 'k-1',
    fingerprint: '0a'.repeat(32),
    ...change,
  });
  const begin = (change = {}) => inTransaction(db(), (tx) => beginIdempotent(tx, ask(change)));

  it('is kept with its effect, replayed as it was, and never mixed up', async () => {
    expect(await begin()).toEqual({ state: 'fresh' });
    const answer = { status: 201, body: { orderId: 'o', lines: [1, null, 'two'] } };
    const undone = inTransaction(db(), async (tx) => {
      await finishIdempotent(tx, ask(), answer);
      throw new Error('undone');
    });
    await expect(undone).rejects.toThrow('undone');
    expect(await begin()).toEqual({ state: 'fresh' });
    await inTransaction(db(), (tx) => finishIdempotent(tx, ask(), answer));
    expect(await begin()).toEqual({ state: 'replay', answer });
    expect(await begin({ fingerprint: '0b'.repeat(32) })).toEqual({ state: 'reused' });
    for (const other of [{ principal: 'q' }, { route: 'POST /api/days' }, { key: 'k-2' }]) {
      expect(await begin(other)).toEqual({ state: 'fresh' });
    }
  });

  it('is forgotten after its time', async () => {
    const { shopId } = shop;
    await statement(
      db(),
      sql`update idempotency_keys set created_at = now() - interval '31 days' where shop_id = ${shopId}`,
    );
    await inTransaction(db(), (tx) => finishIdempotent(tx, ask({ key: 'k-3' }), { status: 200, body: null }));
    expect(await inTransaction(db(), (tx) => forgetOldAnswers(tx, shopId, 30))).toBe(1);
    expect(await begin({ key: 'k-3' })).toEqual({ state: 'replay', answer: { status: 200, body: null } });
  });
});
