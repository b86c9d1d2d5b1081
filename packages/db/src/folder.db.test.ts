import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { setTimeout as sleep } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { PGlite } from '@electric-sql/pglite';
import { btree_gist } from '@electric-sql/pglite/contrib/btree_gist';
import { afterAll, describe, expect, it } from 'vitest';
import type { FolderConfig } from './database.ts';
import { asOwner } from './engines/engine.ts';
import { SyncedNodeFS } from './engines/synced-node-fs.ts';
import { openDatabase } from './open.ts';
import { listDays } from './queries/days.ts';
import { listOrders } from './queries/orders.ts';
import { inTransaction } from './transaction.ts';

const home = mkdtempSync(join(tmpdir(), 'flitchbook-folder-'));
const folder = join(home, 'data');
const clock = { now: () => new Date('2027-03-04T05:06:07Z') };
const config: FolderConfig = { engine: 'folder', folder, clock };
const script = fileURLToPath(new URL('./testing/take-orders.ts', import.meta.url));

interface Taker {
  readonly child: ChildProcess;
  /** the shop, then every acknowledged order */
  readonly said: string[];
}

function startTaker(): Taker {
  const child = spawn(process.execPath, ['--import', 'tsx', script, folder], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const said: string[] = [];
  if (child.stdout) createInterface({ input: child.stdout }).on('line', (text) => said.push(text));
  return { child, said };
}

async function kill({ child }: Taker): Promise<void> {
  const gone = once(child, 'close');
  child.kill('SIGKILL');
  await gone;
}

describe('a folder', () => {
  let taker: Taker | undefined;
  afterAll(async () => {
    if (taker && taker.child.exitCode === null && taker.child.signalCode === null) await kill(taker);
    rmSync(home, { recursive: true, force: true });
  });

  it('keeps a second process out and keeps every acknowledged order of a killed one', async () => {
    taker = startTaker();
    const { said, child } = taker;
    await expect.poll(() => said.length, { timeout: 45_000, interval: 20 }).toBeGreaterThan(10);

    const started = performance.now();
    const second = openDatabase(config);
    await expect(second).rejects.toMatchObject({ name: 'FolderBusy', pid: child.pid });
    await expect(second).rejects.toThrow(String(child.pid));
    expect(performance.now() - started).toBeLessThan(1000);

    await expect.poll(() => said.length, { timeout: 20_000, interval: 20 }).toBeGreaterThan(40);
    await kill(taker);
    expect(existsSync(`${folder}.lock`)).toBe(true);

    const [shopId = '', ...acknowledged] = said;
    const db = asOwner(await openDatabase(config));
    const kept = await inTransaction(
      db,
      async (tx) => {
        const [day] = await listDays(tx, shopId);
        return await listOrders(tx, shopId, day?.dayId ?? '');
      },
      { reading: true },
    );
    const ids = new Set(kept.map(({ orderId }) => orderId));
    expect(acknowledged.length).toBeGreaterThanOrEqual(40);
    expect(acknowledged.filter((id) => !ids.has(id))).toEqual([]);
    expect(db.warnings).toHaveLength(1);
    await db.close();
    expect(existsSync(`${folder}.lock`)).toBe(false);
  }, 90_000);

  it('asks the disk once for each transaction, and not for reading', async () => {
    const files = new SyncedNodeFS(folder);
    const pg = await PGlite.create({ fs: files, extensions: { btree_gist } });
    await pg.exec('create table if not exists kept (n int)');
    const before = files.syncs;
    await pg.transaction(async (tx) => {
      for (let n = 0; n < 5; n++) await tx.query('insert into kept values ($1)', [n]);
    });
    expect(files.syncs).toBe(before + 1);
    files.reading = true;
    await pg.query('select * from kept');
    expect(files.syncs).toBe(before + 1);
    files.reading = false;
    await pg.close();
  });

  it('is refused in production unless forced, before anything is made', async () => {
    const elsewhere = join(home, 'production');
    const refused = openDatabase({ ...config, folder: elsewhere, production: true });
    await expect(refused).rejects.toMatchObject({ name: 'EngineRefused' });
    expect(existsSync(elsewhere)).toBe(false);
    // Forced, it gets as far as the lock.
    writeFileSync(`${elsewhere}.lock`, '');
    const forced = openDatabase({ ...config, folder: elsewhere, production: true, forced: true });
    await expect(forced).rejects.toMatchObject({ name: 'FolderBusy', pid: null });
  });
});

describe('a unit on the embedded engine', () => {
  it('ends by its deadline even if it never comes back, and gives the engine free', async () => {
    const db = asOwner(await openDatabase({ engine: 'memory', limits: { deadlineMs: 400 } }));
    const stuck = inTransaction(db, () => new Promise(() => undefined));
    const behind = inTransaction(db, () => sleep(1));
    await expect(stuck).rejects.toMatchObject({
      name: 'DatabaseUnavailable',
      reason: 'deadline',
      maybeDone: false,
    });
    await behind.catch((error: unknown) => expect(error).toMatchObject({ reason: 'deadline' }));
    expect(await inTransaction(db, async () => 'free')).toBe('free');
    await db.close();
    await expect(inTransaction(db, async () => 1)).rejects.toMatchObject({ reason: 'closed' });
  });
});
