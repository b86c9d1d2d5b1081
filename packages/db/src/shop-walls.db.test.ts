import { sql } from 'drizzle-orm';
import { expect, it } from 'vitest';
import { forShop } from './engines/engine.ts';
import { listOrders } from './queries/orders.ts';
import { storePlan } from './queries/plans.ts';
import { appendAudit } from './queries/records.ts';
import { createFarm, createPerson, createSession, listShops } from './queries/shops.ts';
import { describeOnBoth, statement, type Use } from './testing/both-engines.ts';
import { inventShop, newId, planOf } from './testing/invented-shop.ts';
import { inTransaction } from './transaction.ts';

/** Only what the role that serves may do matters here: how the tables are walled, and what it was granted. */
const walls = sql`select c.relname as name, c.relrowsecurity and c.relforcerowsecurity as forced,
    (select count(*)::int from pg_policy p where p.polrelid = c.oid and p.polcmd = '*') as policies,
    has_table_privilege('flitchbook_app', c.oid, 'UPDATE') or has_table_privilege('flitchbook_app', c.oid, 'DELETE') as changes,
    has_table_privilege('flitchbook_app', c.oid, 'TRUNCATE') as truncates
  from pg_class c where c.relkind = 'r' and c.relnamespace = 'public'::regnamespace order by c.relname`;

interface Wall {
  readonly name: string;
  readonly forced: boolean;
  readonly policies: number;
  readonly changes: boolean;
  readonly truncates: boolean;
}

// 42501 insufficient_privilege: PostgreSQL manual, appendix A.
const forbidden = { cause: { code: '42501' } };

/** A shop with a row in every table that the first migrations made. */
async function furnish(db: Use) {
  const shop = await inventShop(db());
  const { shopId } = shop;
  const personId = newId();
  await inTransaction(forShop(db(), shopId), async (tx) => {
    const passwordHash = '$argon2id$v=19$m=19456,t=2,p=1$c2FsdHNhbHQ$aGFzaA';
    await createPerson(tx, {
      shopId,
      personId,
      email: 'ida@example.org',
      name: 'Ida Vorst',
      role: 'owner',
      passwordHash,
    });
    await createSession(tx, { shopId, personId, tokenHash: '0'.repeat(64), lifetimeSeconds: 60 });
    await createFarm(tx, { shopId, farmId: newId(), name: 'Upper Croft' });
    await storePlan(tx, { shopId, planId: newId(), madeFor: shop.version, plan: planOf(shop) });
    await appendAudit(tx, { shopId, personId, action: 'order.take', subject: shop.orderId, facts: {} });
  });
  return shop;
}

describeOnBoth('the wall between shops', (db) => {
  it('stands around every table, forced even for the owner', async () => {
    const found = await statement<Wall>(db(), walls);
    expect(found.length).toBeGreaterThan(15);
    expect(found.filter(({ forced, policies }) => !forced || policies !== 1)).toEqual([]);
    expect(found.filter(({ truncates }) => truncates)).toEqual([]);
    const kept = found.filter(({ changes }) => !changes).map(({ name }) => name);
    expect(kept).toEqual(expect.arrayContaining(['audit', 'ledger']));
  });

  it('shows and changes nothing of another shop where the statement does not ask for the shop at all', async () => {
    const [mine, theirs] = [await furnish(db), await furnish(db)];
    const unit = forShop(db(), mine.shopId);
    const tables = await statement<Wall>(db(), walls);
    let seen = 0;
    for (const { name, changes } of tables) {
      const table = sql.identifier(name);
      const all = sql`select shop_id from ${table} where shop_id = ${theirs.shopId}`;
      const before = await statement(db(), all);
      if (before.length === 0) continue;
      seen += 1;
      if (name !== 'shops') {
        const found = await statement<{ shop_id: string }>(unit, sql`select shop_id from ${table}`);
        expect(
          found.filter((row) => row.shop_id !== mine.shopId),
          name,
        ).toEqual([]);
        expect(await statement(forShop(db(), newId()), sql`select 1 from ${table}`), name).toEqual([]);
      }
      const steal = sql`update ${table} set shop_id = ${mine.shopId} where shop_id = ${theirs.shopId} returning 1`;
      if (changes) expect(await statement(unit, steal), name).toEqual([]);
      else await expect(statement(unit, steal)).rejects.toMatchObject(forbidden);
      expect(await statement(db(), all), name).toHaveLength(before.length);
    }
    expect(seen).toBeGreaterThan(10);
    const foreign = await inTransaction(unit, (tx) => listOrders(tx, theirs.shopId, theirs.dayId));
    expect(foreign).toEqual([]);
  });

  it('lets nobody write a row into another shop', async () => {
    const [mine, theirs] = [await inventShop(db()), await inventShop(db())];
    const planted = inTransaction(forShop(db(), mine.shopId), (tx) =>
      createFarm(tx, { shopId: theirs.shopId, farmId: newId(), name: 'Nether Croft' }),
    );
    await expect(planted).rejects.toMatchObject(forbidden);
  });

  it('leaves a unit without a shop nothing but the list of shops', async () => {
    const shop = await furnish(db);
    const nobody = forShop(db(), newId());
    const listed = await inTransaction(nobody, listShops);
    expect(listed.map(({ shopId }) => shopId)).toContain(shop.shopId);
    for (const { name } of await statement<Wall>(db(), walls)) {
      if (name === 'shops') continue;
      expect(await statement(nobody, sql`select 1 from ${sql.identifier(name)}`), name).toEqual([]);
    }
  });

  it('lets the role that serves append to ledger and audit and do nothing else to them', async () => {
    const { shopId } = await furnish(db);
    const unit = forShop(db(), shopId);
    for (const text of [
      'update ledger set facts = facts',
      'delete from audit',
      'truncate ledger',
      'alter table ledger disable trigger all',
      'drop table audit',
    ])
      await expect(statement(unit, sql.raw(text)), text).rejects.toMatchObject(forbidden);
  });

  it('takes no shop id that is none', () => {
    expect(() => forShop(db(), "'; set role postgres; --")).toThrow('is not the id of a shop');
  });
});
