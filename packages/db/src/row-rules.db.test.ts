import { sql } from 'drizzle-orm';
import { beforeAll, describe, expect, it } from 'vitest';
import { handleOf } from './engines/engine.ts';
import { addAnimal, updateAnimal } from './queries/animals.ts';
import { createDay } from './queries/days.ts';
import { addOrder } from './queries/orders.ts';
import { appendAudit, appendLedger, listLedger } from './queries/records.ts';
import type { NewAnimal, NewLine } from './queries/shapes.ts';
import { createPerson } from './queries/shops.ts';
import { describeOnBoth, statement } from './testing/both-engines.ts';
import { hog, type InventedShop, inventShop, line, newId, order, touched } from './testing/invented-shop.ts';
import { inTransaction } from './transaction.ts';

const broken = (constraint: string) => expect.objectContaining({ name: 'ConstraintViolation', constraint });
const refused = expect.objectContaining({ name: 'ValueRefused' });

describeOnBoth('a row', (db) => {
  let shop: InventedShop;
  beforeAll(async () => {
    shop = await inventShop(db());
  });

  const book = (change: Partial<NewAnimal>) =>
    inTransaction(db(), async (tx) =>
      addAnimal(tx, await touched(tx, shop), { ...hog(newId(), newId(), newId()), ...change }),
    );
  const take = (change: Partial<NewLine>) =>
    inTransaction(db(), async (tx) =>
      addOrder(tx, await touched(tx, shop), order(newId(), { lines: [line(newId(), change)] })),
    );

  // NaN passes a "not negative" check where the column could hold it: none here can.
  it.each([Number.NaN, Number.POSITIVE_INFINITY, 0.5, 1e12])('takes no number like %s', async (grams) => {
    await expect(book({ hanging: { text: '93.6', unit: 'kg', grams } })).rejects.toEqual(refused);
    await expect(take({ ask: { grams } })).rejects.toEqual(refused);
    await expect(take({ priceMinorPerKg: grams })).rejects.toEqual(refused);
  });

  it('takes no negative and no absurd amount', async () => {
    const hanging = (grams: number) => book({ hanging: { text: '93.6', unit: 'kg', grams } });
    await expect(hanging(-1)).rejects.toEqual(broken('animals_hanging_within'));
    await expect(hanging(0)).rejects.toEqual(broken('animals_hanging_within'));
    await expect(hanging(2_000_001)).rejects.toEqual(broken('animals_hanging_within'));
    await expect(book({ ribs: 0 })).rejects.toEqual(broken('animals_ribs_within'));
    await expect(take({ priceMinorPerKg: -1 })).rejects.toEqual(broken('order_lines_price_not_negative'));
    await expect(take({ ask: { pieces: 0 } })).rejects.toEqual(broken('order_lines_pieces_within'));
    await expect(take({ ask: { grams: -5 } })).rejects.toEqual(broken('order_lines_grams_within'));
    const [side] = hog(newId(), newId(), newId()).sides;
    const sides = [{ ...side!, sideId: newId(), massMg: 0 }];
    await expect(book({ sides })).rejects.toEqual(broken('sides_mass_within'));
  });

  it.each(['NaN', '1e3', '-2', 'Infinity', '12 ', ''])('takes no reading like "%s"', async (text) => {
    await expect(book({ hanging: { text, unit: 'lb', grams: 93_000 } })).rejects.toEqual(
      broken('animals_hanging_read'),
    );
  });

  it('takes no date that is none', async () => {
    const day = { shopId: shop.shopId, dayId: newId(), tools: { saw: true, kerfUm: 0 } };
    const counter = { itemSteps: [], stockSteps: [], worthMinorPerKg: {}, labourMinorPerHour: 0 };
    const open = (date: string) => inTransaction(db(), (tx) => createDay(tx, { ...day, date, counter }));
    await expect(open('2027-02-30')).rejects.toEqual(refused);
    await expect(open('infinity')).rejects.toEqual(broken('cutting_days_date_finite'));
    await expect(open('2027-03-04')).rejects.toEqual(broken('cutting_days_one_per_date'));
  });

  it('asks for pieces or grams, never for both or for nothing', async () => {
    const both = sql`update order_lines set ask_grams = 5 where shop_id = ${shop.shopId} and line_id = ${shop.chops}`;
    await expect(statement(db(), both)).rejects.toEqual(broken('order_lines_ask_one'));
    const none = sql`update order_lines set ask_pieces = null where shop_id = ${shop.shopId} and line_id = ${shop.chops}`;
    await expect(statement(db(), none)).rejects.toEqual(broken('order_lines_ask_one'));
  });

  it('belongs to one shop: what another shop has is not there', async () => {
    const other = await inventShop(db());
    await expect(take({ onlyAnimal: other.animalId })).rejects.toEqual(broken('order_lines_animal_known'));
    const foreign = { ...shop, dayId: other.dayId, version: 2 };
    const added = inTransaction(db(), (tx) => addOrder(tx, foreign, order(newId())));
    await expect(added).rejects.toEqual(broken('orders_day_known'));
  });

  it('has one left and one right side, and one person for each address whatever the capitals', async () => {
    const [left] = hog(shop.animalId, newId(), newId()).sides;
    const change = { animal: { ...hog(shop.animalId, shop.left, shop.right) }, version: 1 };
    const sides = [{ ...left!, sideId: shop.right }];
    const update = inTransaction(db(), async (tx) =>
      updateAnimal(tx, await touched(tx, shop), { ...change, animal: { ...change.animal, sides } }),
    );
    await expect(update).rejects.toEqual(broken('sides_one_per_hand'));
    const person = (email: string) => ({
      shopId: shop.shopId,
      personId: newId(),
      email,
      name: 'Ines Varga',
      role: 'counter' as const,
      passwordHash: '$argon2id$v=19$not-a-real-one',
    });
    await inTransaction(db(), (tx) => createPerson(tx, person('ines@ninth-rib.example')));
    const again = inTransaction(db(), (tx) => createPerson(tx, person('Ines@Ninth-Rib.example')));
    await expect(again).rejects.toEqual(broken('people_one_per_email'));
    const plain = { ...person('b@ninth-rib.example'), passwordHash: 'secret' };
    await expect(inTransaction(db(), (tx) => createPerson(tx, plain))).rejects.toEqual(
      broken('people_password_hashed'),
    );
  });

  it('says which column is missing', async () => {
    const nameless = sql`insert into farms (shop_id, farm_id) values (${shop.shopId}, ${newId()})`;
    await expect(statement(db(), nameless)).rejects.toEqual(broken('farms_name_present'));
  });
});

describeOnBoth('ledger and audit', (db) => {
  let shop: InventedShop;
  beforeAll(async () => {
    shop = await inventShop(db());
  });

  const entry = (kind: string) => ({
    shopId: shop.shopId,
    kind,
    dayId: shop.dayId,
    orderId: null,
    personId: null,
    facts: { grams: 12 },
  });

  it('are numbered without gaps, an undone entry leaves none', async () => {
    await inTransaction(db(), (tx) => appendLedger(tx, entry('order.taken')));
    const undone = inTransaction(db(), async (tx) => {
      await appendLedger(tx, entry('order.taken'));
      throw new RangeError('undone');
    });
    await expect(undone).rejects.toThrow('undone');
    await inTransaction(db(), (tx) => appendLedger(tx, entry('order.cancelled')));
    const list = await inTransaction(db(), (tx) => listLedger(tx, shop.shopId, { after: 0, limit: 10 }));
    expect(list.map(({ seq, kind }) => [seq, kind])).toEqual([
      [1, 'order.taken'],
      [2, 'order.cancelled'],
    ]);
    expect(list[0]?.facts).toEqual({ grams: 12 });
  });

  describe.each(['ledger', 'audit'])('%s', (table) => {
    const appendOnly = broken(`${table}_append_only`);

    it.each([
      `update ${table} set facts = '{}'`,
      `delete from ${table}`,
      `truncate ${table}`,
      // Refused even where it would meet no row.
      `delete from ${table} where false`,
    ])('refuses: %s', async (text) => {
      const about = { action: 'order.take', subject: shop.orderId, facts: {} };
      await inTransaction(db(), (tx) => appendAudit(tx, { shopId: shop.shopId, personId: null, ...about }));
      await expect(statement(db(), sql.raw(text))).rejects.toEqual(appendOnly);
    });
  });
});

describeOnBoth('a transaction', (db) => {
  it('does not commit after a statement that failed, even if somebody caught the error', async () => {
    const shop = await inventShop(db());
    const work = inTransaction(db(), async (tx) => {
      await addOrder(tx, await touched(tx, shop), order(newId()));
      await handleOf(tx)
        .execute(sql`select 1 / 0`)
        .catch(() => 'swallowed');
      return 'done';
    });
    await expect(work).rejects.toEqual(refused);
    const kept = await statement(
      db(),
      sql`select count(*)::int as n from orders where shop_id = ${shop.shopId}`,
    );
    expect(kept).toEqual([{ n: 1 }]);
  });

  it('takes nothing once it is over', async () => {
    const shop = await inventShop(db());
    const late = await inTransaction(db(), async (tx) => tx);
    const foreign = { shopId: shop.shopId, dayId: shop.dayId, version: 1 };
    await expect(addOrder(late, foreign, order(newId()))).rejects.toThrow();
    const kept = await statement(
      db(),
      sql`select count(*)::int as n from orders where shop_id = ${shop.shopId}`,
    );
    expect(kept).toEqual([{ n: 1 }]);
  });

  it('cannot be opened inside another one', async () => {
    const nested = inTransaction(db(), () => inTransaction(db(), async () => 1));
    await expect(nested).rejects.toThrow('pass the outer tx on');
    // Afterwards it can, from what the first one started.
    expect(
      await inTransaction(db(), async () => () => inTransaction(db(), async () => 2)).then((go) => go()),
    ).toBe(2);
  });

  it('that only reads cannot write', async () => {
    const shop = await inventShop(db());
    const write = inTransaction(db(), async (tx) => touched(tx, shop), { reading: true });
    // 25006 read_only_sql_transaction: PostgreSQL manual, appendix A.
    await expect(write).rejects.toMatchObject({ cause: { code: '25006' } });
  });
});
