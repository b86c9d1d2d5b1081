import { AsyncLocalStorage } from 'node:async_hooks';
import { setTimeout as sleep } from 'node:timers/promises';
import { createDatabase, dropDatabase, freshName } from '@flitchbook/test-harness';
import { describeOnPostgres } from '@flitchbook/test-harness/vitest';
import { sql } from 'drizzle-orm';
import { afterAll, expect, it } from 'vitest';
import type { Database } from './database.ts';
import { asOwner, forShop, handleOf } from './engines/engine.ts';
import { migrate } from './migrate.ts';
import { openDatabase } from './open.ts';
import { loadCuttingDay, touchDay } from './queries/days.ts';
import { beginIdempotent, finishIdempotent } from './queries/idempotency.ts';
import { addOrder } from './queries/orders.ts';
import { loadPlan, storePlan } from './queries/plans.ts';
import { appendLedger } from './queries/records.ts';
import { describeOnServer, statement } from './testing/both-engines.ts';
import { inventShop, line, newId, order, planOf, touched } from './testing/invented-shop.ts';
import { inTransaction } from './transaction.ts';

const times = <T>(count: number, make: (nth: number) => T): T[] =>
  Array.from({ length: count }, (_, nth) => make(nth));

const unavailable = (reason: string, maybeDone = false) =>
  expect.objectContaining({ name: 'DatabaseUnavailable', reason, maybeDone });

describeOnServer('at the same time', (db) => {
  it('one of many plans for the same version is stored', async () => {
    const shop = await inventShop(db());
    const { shopId, dayId, version } = shop;
    const plan = planOf(shop);
    const ids = times(8, newId);
    const stored = await Promise.all(
      ids.map((planId) =>
        inTransaction(db(), (tx) => storePlan(tx, { shopId, planId, madeFor: version, plan })),
      ),
    );
    expect(stored.filter((next) => next !== undefined)).toEqual([version + 1]);
    const winner = ids[stored.findIndex((next) => next !== undefined)];
    const kept = await inTransaction(db(), (tx) => loadPlan(tx, shopId, dayId));
    expect(kept?.planId).toBe(winner);
    const pieces = await statement(
      db(),
      sql`select distinct plan_id from plan_pieces where shop_id = ${shopId}`,
    );
    expect(pieces).toEqual([{ plan_id: winner }]);
  });

  it('an order and a plan that does not know it are never both accepted', async () => {
    for (let round = 0; round < 5; round++) {
      const shop = await inventShop(db());
      const { shopId, dayId, version } = shop;
      const [next, touch] = await Promise.all([
        inTransaction(db(), (tx) =>
          storePlan(tx, { shopId, planId: newId(), madeFor: version, plan: planOf(shop) }),
        ),
        inTransaction(db(), async (tx) => {
          const outcome = await touchDay(tx, { shopId, dayId, ifVersion: version });
          if (outcome.outcome === 'touched') await addOrder(tx, outcome.day, order(newId()));
          return outcome.outcome;
        }),
      ]);
      expect([next !== undefined, touch === 'touched'].filter(Boolean)).toHaveLength(1);
    }
  });

  it('orders get numbers without gaps, and the ledger too', async () => {
    const shop = await inventShop(db());
    const { shopId, dayId } = shop;
    const taken = await Promise.all(
      times(24, () =>
        inTransaction(db(), async (tx) => {
          const orderId = newId();
          const { number } = await addOrder(
            tx,
            await touched(tx, shop),
            order(orderId, { lines: [line(newId())] }),
          );
          const facts = { number };
          const seq = await appendLedger(tx, {
            shopId,
            kind: 'order.taken',
            dayId,
            orderId,
            personId: null,
            facts,
          });
          return { number, seq };
        }),
      ),
    );
    const sorted = (list: number[]) => list.toSorted((a, b) => a - b);
    expect(sorted(taken.map(({ number }) => number))).toEqual(times(24, (nth) => nth + 2));
    expect(sorted(taken.map(({ seq }) => seq))).toEqual(times(24, (nth) => nth + 1));
  });

  it('a twin of a running request is told so, and later gets its answer', async () => {
    const { shopId } = await inventShop(db());
    const request = { shopId, principal: 'p', route: 'POST /x', key: 'twin', fingerprint: 'c'.repeat(64) };
    const answer = { status: 201, body: { ok: true } };
    const elsewhere = AsyncLocalStorage.snapshot();
    let twin: unknown;
    await inTransaction(db(), async (tx) => {
      expect(await beginIdempotent(tx, request)).toEqual({ state: 'fresh' });
      // Another request, so outside this one's transaction.
      twin = await elsewhere(() => inTransaction(db(), (other) => beginIdempotent(other, request)));
      await finishIdempotent(tx, request, answer);
    });
    expect(twin).toEqual({ state: 'running' });
    const later = await inTransaction(db(), (tx) => beginIdempotent(tx, request));
    expect(later).toEqual({ state: 'replay', answer });
  });

  it('a deadlock is tried again and both get through', async () => {
    const [one, two] = [await inventShop(db()), await inventShop(db())];
    let tries = 0;
    const touchBoth = (first: typeof one, second: typeof one) =>
      inTransaction(db(), async (tx) => {
        tries += 1;
        await touched(tx, first);
        await sleep(50);
        await touched(tx, second);
      });
    await Promise.all([touchBoth(one, two), touchBoth(two, one)]);
    expect(tries).toBeGreaterThan(2);
    const day = await inTransaction(db(), (tx) => loadCuttingDay(tx, one.shopId, one.dayId), {
      reading: true,
    });
    expect(day?.day.version).toBe(one.version + 2);
  });
});

describeOnServer(
  'a burst far over the pool',
  (db) => {
    // porsager/postgres 823: with the driver's own pool, 1000 reads and then a BEGIN, 21 of 30 acknowledged writes were
    // gone in one run of four. Here a connection is never sent a second unit.
    it('loses no acknowledged order, also right after a transaction that was rolled back', async () => {
      const shop = await inventShop(db());
      const acknowledged: string[] = [];
      const take = async (): Promise<void> => {
        const orderId = newId();
        await inTransaction(db(), async (tx) => addOrder(tx, await touched(tx, shop), order(orderId)));
        acknowledged.push(orderId);
      };
      const undone = (): Promise<unknown> =>
        inTransaction(db(), async (tx) => {
          await addOrder(tx, await touched(tx, shop), order(newId()));
          throw new RangeError('undone');
        }).catch((error: unknown) => expect(error).toBeInstanceOf(RangeError));
      const read = (): Promise<unknown> =>
        inTransaction(db(), (tx) => handleOf(tx).execute(sql`select 1`), { reading: true });
      for (const reads of [99 * 4, 100 * 4, 101 * 4]) {
        await Promise.all([...times(reads, read), undone(), ...times(25, take), undone(), ...times(5, take)]);
      }
      const kept = await statement<{ id: string }>(
        db(),
        sql`select order_id as id from orders where shop_id = ${shop.shopId} and order_id <> ${shop.orderId}`,
      );
      expect(kept.map(({ id }) => id).toSorted()).toEqual(acknowledged.toSorted());
      expect(acknowledged).toHaveLength(90);
    });

    it('keeps within its connections', async () => {
      const most = await Promise.all(
        times(40, () =>
          statement<{ open: number }>(
            db(),
            sql`select count(*)::int as open from pg_stat_activity where datname = current_database() and state is not null`,
          ),
        ),
      );
      expect(Math.max(...most.map(([row]) => row?.open ?? 0))).toBeLessThanOrEqual(4);
    });
  },
  { connections: 4 },
);

describeOnServer(
  'a unit that takes too long',
  (db) => {
    it('ends by the limit of a statement', async () => {
      const slow = statement(db(), sql`select pg_sleep(5)`);
      await expect(slow).rejects.toEqual(unavailable('deadline'));
    });

    it('ends by the limit of a lock', async () => {
      const shop = await inventShop(db());
      let entered: () => void = () => undefined;
      const holding = new Promise<void>((resolve) => {
        entered = resolve;
      });
      const first = inTransaction(db(), async (tx) => {
        await touched(tx, shop);
        entered();
        await sleep(500);
      });
      await holding;
      await expect(inTransaction(db(), (tx) => touched(tx, shop))).rejects.toEqual(unavailable('conflict'));
      await first;
    });

    it('ends by its deadline even if it never comes back, and is undone', async () => {
      const shop = await inventShop(db());
      const started = performance.now();
      const stuck = inTransaction(db(), async (tx) => {
        await addOrder(tx, await touched(tx, shop), order(newId()));
        await new Promise(() => undefined);
      });
      await expect(stuck).rejects.toEqual(unavailable('deadline'));
      expect(performance.now() - started).toBeLessThan(3000);
      // The day is free again at once: the connection was dropped.
      await inTransaction(db(), (tx) => touched(tx, shop));
      const kept = await statement(
        db(),
        sql`select count(*)::int as n from orders where shop_id = ${shop.shopId}`,
      );
      expect(kept).toEqual([{ n: 1 }]);
    });
  },
  { connections: 2, limits: { deadlineMs: 1500, statementMs: 400, lockMs: 200, idleMs: 10_000 } },
);

describeOnServer(
  'a statement that outlasts the deadline',
  (db) => {
    it('is left behind with its connection, and others go on', async () => {
      const started = performance.now();
      const slow = Array.from({ length: 3 }, () => statement(db(), sql`select pg_sleep(20)`));
      for (const one of slow) await expect(one).rejects.toEqual(unavailable('deadline'));
      expect(performance.now() - started).toBeLessThan(3000);
      expect(await statement(db(), sql`select 1 as one`)).toEqual([{ one: 1 }]);
    });
  },
  { connections: 2, limits: { deadlineMs: 600, statementMs: 30_000 } },
);

describeOnPostgres('an account that owns the database and is no superuser', (server) => {
  const name = freshName('clerk');

  afterAll(async () => {
    await dropDatabase(server.url, name);
    await onServer(server.url, (admin) => statement(admin, sql.raw(`drop role if exists ${name}`)));
  });

  it('migrates, appends to the ledger and has no right to change it', async () => {
    const url = new URL(await createDatabase(server.url, name));
    await onServer(server.url, async (admin) => {
      await migrate(admin); // the role that serves belongs to the server: an administrator makes it
      await statement(admin, sql.raw(`create role ${name} login in role flitchbook_app`));
      await statement(admin, sql.raw(`alter database ${name} owner to ${name}`));
    });
    url.username = name;
    await onServer(url.href, async (clerk) => {
      await migrate(clerk);
      const { shopId } = await inventShop(clerk);
      const entry = { shopId, kind: 'order.taken', dayId: null, orderId: null, personId: null, facts: {} };
      expect(await inTransaction(forShop(clerk, shopId), (tx) => appendLedger(tx, entry))).toBe(1);
      for (const text of ['update ledger set facts = facts', 'delete from ledger', 'delete from audit']) {
        // 42501 insufficient_privilege: PostgreSQL manual, appendix A. The trigger is not even asked.
        await expect(statement(clerk, sql.raw(text))).rejects.toMatchObject({ cause: { code: '42501' } });
      }
    });
  });
});

async function onServer(url: string, work: (db: Database) => Promise<unknown>): Promise<void> {
  const db = asOwner(await openDatabase({ engine: 'postgres', url, connections: 1 }));
  try {
    await work(db);
  } finally {
    await db.close();
  }
}
