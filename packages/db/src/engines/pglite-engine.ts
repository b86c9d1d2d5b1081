import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { PGlite, type PGliteOptions, type Transaction } from '@electric-sql/pglite';
import { btree_gist } from '@electric-sql/pglite/contrib/btree_gist';
import { drizzle } from 'drizzle-orm/pglite';
import { migrate } from 'drizzle-orm/pglite/migrator';
import type { FolderConfig, MemoryConfig, UnitLimits } from '../database.ts';
import { EngineRefused, FolderBusy, FolderUnusable } from '../faults.ts';
import { unavailable } from '../translate-error.ts';
import { Deadline } from './deadline.ts';
import { closedError, type Engine, type Handle, takeOnScope, type UnitKind, usualLimits } from './engine.ts';
import { type FolderLock, lockFolder } from './folder-lock.ts';
import { Gate } from './gate.ts';
import { SyncedNodeFS } from './synced-node-fs.ts';
import { Unit } from './unit.ts';

const mebibyte = 1024 * 1024;

/** Small settings: 173 MB instead of 304 (measured). Less initial memory fails to start. */
const small = {
  extensions: { btree_gist },
  initialMemory: 128 * mebibyte,
  startParams: [...PGlite.defaultStartParams, '-c', 'shared_buffers=16MB', '-c', 'timezone=UTC'],
} satisfies PGliteOptions;

interface Storage {
  readonly files?: SyncedNodeFS;
  readonly release?: () => void;
  readonly warnings?: readonly string[];
}

class PgliteEngine implements Engine {
  readonly engine = 'pglite';
  readonly warnings: readonly string[];
  version = '';
  readonly #pg: PGlite;
  readonly #storage: Storage;
  readonly #limits: UnitLimits;
  // One at a time: the engine has one connection, and its own queue knows no deadline.
  readonly #gate = new Gate(1);
  #closed = false;

  constructor(pg: PGlite, storage: Storage, limits: Partial<UnitLimits> | undefined) {
    this.#pg = pg;
    this.#storage = storage;
    this.#limits = { ...usualLimits, ...limits };
    this.warnings = storage.warnings ?? [];
  }

  async unit<T>(kind: UnitKind, work: (handle: Handle) => Promise<T>): Promise<T> {
    if (this.#closed) throw closedError();
    const unit = new Unit();
    const deadline = new Deadline(this.#limits.deadlineMs, () =>
      unit.end('The transaction is over: its deadline has passed.'),
    );
    try {
      await this.#gate.enter(deadline);
    } catch (error) {
      deadline.clear();
      throw error;
    }
    // The place is given back when the engine is done, which may be after the caller has its answer.
    const running = this.#run(kind, unit, deadline, work).finally(() => this.#gate.leave());
    try {
      return await deadline.race(running);
    } catch (error) {
      running.catch(() => undefined);
      if (deadline.expired) throw deadline.error(unit.committing);
      throw unavailable(error, unit.committing) ?? error;
    } finally {
      deadline.clear();
    }
  }

  async #run<T>(
    { mode, scope }: UnitKind,
    unit: Unit,
    deadline: Deadline,
    work: (handle: Handle) => Promise<T>,
  ): Promise<T> {
    if (this.#storage.files) this.#storage.files.reading = mode === 'reading';
    return await this.#pg.transaction(async (transaction) => {
      if (mode === 'reading')
        await transaction.exec('set transaction isolation level repeatable read read only');
      if (scope !== 'owner') await transaction.exec(takeOnScope(scope));
      const result = await deadline.race(work(drizzle({ client: guarded(transaction, unit) })));
      if (unit.refusal) throw unit.refusal;
      unit.throwIfFailed();
      unit.end();
      unit.committing = true;
      return result;
    });
  }

  async runMigrations(folder: string): Promise<void> {
    const patience = new Deadline(10 * this.#limits.deadlineMs);
    await this.#gate.enter(patience);
    try {
      if (this.#storage.files) this.#storage.files.reading = false;
      await migrate(drizzle({ client: this.#pg }), { migrationsFolder: folder });
    } finally {
      patience.clear();
      this.#gate.leave();
    }
  }

  async start(): Promise<void> {
    const { rows } = await this.#pg.query<{ server_version: string }>('show server_version');
    this.version = rows[0]?.server_version ?? '';
  }

  async close(): Promise<void> {
    if (this.#closed) return;
    this.#closed = true;
    await this.#gate.idle();
    if (this.#storage.files) this.#storage.files.reading = false;
    await this.#pg.close();
    this.#storage.release?.();
  }
}

/** The engine as drizzle sees it, with nothing sent too late. */
function guarded(transaction: Transaction, unit: Unit): PGlite {
  const query = async (...args: Parameters<Transaction['query']>): Promise<unknown> => {
    if (unit.refusal) throw unit.refusal;
    try {
      return await transaction.query(...args);
    } catch (error) {
      unit.fail(error);
      throw error;
    }
  };
  return { query } as unknown as PGlite;
}

const folderWarnings = (folder: string): readonly string[] => [
  `The data lies in the embedded database ${folder}. Every commit reaches the disk before it is acknowledged, but a power cut during a checkpoint is not covered; keep dumps, or use a Postgres server.`,
];

/** What a person can do about a folder that does not open. The engine's own words are an abort without a reason. */
function unusable(folder: string, cause: unknown): FolderUnusable {
  const { code } = (cause ?? {}) as { readonly code?: unknown };
  const why =
    typeof code === 'string'
      ? `the system says ${code}`
      : 'its files are damaged, or no database, or not for this user to read and write';
  const says = `The embedded database in ${folder} can't be opened: ${why}. Restore the folder from a copy, or name another one.`;
  return new FolderUnusable(says, { cause });
}

/** @throws FolderBusy when another process has the folder; FolderUnusable; EngineRefused in production */
export async function openFolder(config: FolderConfig): Promise<Engine> {
  if (config.production && !config.forced) {
    throw new EngineRefused(
      'The embedded database is for trying out and for one small shop. In production use a Postgres server, or force it.',
    );
  }
  const folder = resolve(config.folder);
  let lock: FolderLock | undefined;
  try {
    mkdirSync(dirname(folder), { recursive: true });
    lock = lockFolder(folder, config.clock);
    return await openLocked(folder, lock, config);
  } catch (error) {
    lock?.release();
    throw error instanceof FolderBusy ? error : unusable(folder, error);
  }
}

async function openLocked(folder: string, lock: FolderLock, { limits }: FolderConfig): Promise<Engine> {
  const files = new SyncedNodeFS(folder);
  const pg = await PGlite.create({ ...small, fs: files });
  const storage = { files, release: () => lock.release(), warnings: folderWarnings(folder) };
  const engine = new PgliteEngine(pg, storage, limits);
  await engine.start();
  return engine;
}

/** Names the snapshot after everything that shapes it. */
function snapshotFile(snapshots: string, migrations: string): string {
  const hash = createHash('sha256').update(JSON.stringify(small.startParams));
  const files = readdirSync(migrations, { recursive: true, encoding: 'utf8' }).filter((name) =>
    /\.(sql|json)$/.test(name),
  );
  for (const name of files.sort()) hash.update(name).update(readFileSync(join(migrations, name)));
  return join(snapshots, `empty-shop-${hash.digest('hex').slice(0, 16)}.tar`);
}

async function takeSnapshot(file: string, migrations: string): Promise<void> {
  const pg = await PGlite.create(small);
  await migrate(drizzle({ client: pg }), { migrationsFolder: migrations });
  const dump = await pg.dumpDataDir('none');
  await pg.close();
  mkdirSync(dirname(file), { recursive: true });
  const draft = `${file}.${process.pid}`;
  writeFileSync(draft, Buffer.from(await dump.arrayBuffer()));
  renameSync(draft, file);
}

/** A database that is gone when the process ends. With a folder for snapshots it comes migrated. */
export async function openMemory(config: MemoryConfig, migrations: string): Promise<Engine> {
  const options: PGliteOptions = { ...small };
  if (config.snapshots !== undefined) {
    const file = snapshotFile(config.snapshots, migrations);
    if (!existsSync(file)) await takeSnapshot(file, migrations);
    options.loadDataDir = new Blob([readFileSync(file)]);
  }
  const engine = new PgliteEngine(await PGlite.create(options), {}, config.limits);
  await engine.start();
  return engine;
}
