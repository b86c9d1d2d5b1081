import { setTimeout as sleep } from 'node:timers/promises';
import { type OwnPostgres, startOwnPostgres } from '@flitchbook/test-harness';
import { describeOnPostgres } from '@flitchbook/test-harness/vitest';
import { sql } from 'drizzle-orm';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Database } from './database.ts';
import { asOwner } from './engines/engine.ts';
import { DatabaseUnavailable } from './faults.ts';
import { migrate } from './migrate.ts';
import { openDatabase } from './open.ts';
import { addOrder } from './queries/orders.ts';
import { statement } from './testing/both-engines.ts';
import { inventShop, newId, order, touched } from './testing/invented-shop.ts';
import { inTransaction } from './transaction.ts';

const deadlineMs = 2000;
const workers = 8;

describeOnPostgres('a server that dies under work', () => {
  let server: OwnPostgres;
  let db: Database;
  let uncaught: unknown[] = [];
  const note = (error: unknown): void => {
    uncaught.push(error);
  };

  beforeAll(async () => {
    const started = await startOwnPostgres();
    // The shared server may be somebody's: what is killed here has to be one of our own.
    if (!started) throw new Error('No Postgres server was found that may be killed.');
    server = started;
    const limits = { deadlineMs };
    db = asOwner(await openDatabase({ engine: 'postgres', url: server.url, connections: 4, limits }));
    await migrate(db);
    uncaught = [];
    process.on('uncaughtExceptionMonitor', note);
  });
  afterAll(async () => {
    process.off('uncaughtExceptionMonitor', note);
    await db.close();
    await server.stop();
  });

  // porsager/postgres 1066, 1154, 1208: the driver's own pool throws outside any caller, or leaves callers waiting.
  it('answers every caller by the deadline, loses nothing it acknowledged, and works on when it is back', async () => {
    const shop = await inventShop(db);
    const acknowledged: string[] = [];
    const maybe: string[] = [];
    const waitsMs: number[] = [];
    let working = true;

    const takeOne = async (): Promise<void> => {
      const orderId = newId();
      const started = performance.now();
      try {
        await inTransaction(db, async (tx) => addOrder(tx, await touched(tx, shop), order(orderId)));
        acknowledged.push(orderId);
      } catch (error) {
        if (!(error instanceof DatabaseUnavailable)) throw error;
        if (error.maybeDone) maybe.push(orderId);
        await sleep(20);
      }
      waitsMs.push(performance.now() - started);
    };
    const worker = async (): Promise<void> => {
      while (working) await takeOne();
    };

    const running = Array.from({ length: workers }, worker);
    for (let round = 0; round < 3; round++) {
      await sleep(250);
      await server.crash();
      await sleep(150);
      await server.revive();
      const before = acknowledged.length;
      await expect.poll(() => acknowledged.length, { timeout: 5000 }).toBeGreaterThan(before + workers);
    }
    working = false;
    await Promise.all(running);

    // Slack for two busy cores: nobody waits for ever.
    expect(Math.max(...waitsMs)).toBeLessThan(deadlineMs + 2000);
    const kept = await statement<{ id: string }>(
      db,
      sql`select order_id as id from orders where shop_id = ${shop.shopId} and order_id <> ${shop.orderId}`,
    );
    const ids = new Set(kept.map(({ id }) => id));
    expect(acknowledged.filter((id) => !ids.has(id))).toEqual([]);
    // What is there was acknowledged, or its caller was told that it may be.
    const known = new Set([...acknowledged, ...maybe]);
    expect([...ids].filter((id) => !known.has(id))).toEqual([]);
    expect(uncaught).toEqual([]);
  });

  it('is told from a wrong address at once', async () => {
    const nowhere = openDatabase({ engine: 'postgres', url: 'postgres://flitchbook@127.0.0.1:1/none' });
    await expect(nowhere).rejects.toMatchObject({ name: 'DatabaseUnavailable', reason: 'connection' });
  });
});
