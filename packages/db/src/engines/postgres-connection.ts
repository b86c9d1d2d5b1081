import { drizzle } from 'drizzle-orm/postgres-js';
import { migrate } from 'drizzle-orm/postgres-js/migrator';
import postgres from 'postgres';
import type { UnitLimits } from '../database.ts';
import { DatabaseUnavailable } from '../faults.ts';
import { type Handle, type Mode, takeOnScope, type UnitKind } from './engine.ts';
import type { Unit } from './unit.ts';

/*
 * The one place that knows the driver. postgres.js 3.4.9 has two faults (porsager/postgres 823, 1189, 1210; 1066, 1154, 1208):
 * a BEGIN that exactly fills a connection's pipeline is sent without reserving the connection, so that strangers' writes join
 * the transaction and vanish with it; and a statement sent to a connection whose socket is gone throws outside any caller.
 * So each connection is a driver of its own with one socket, serves one unit at a time, is never sent a statement
 * once its socket has closed, and is thrown away after any trouble.
 */

export interface ConnectionConfig {
  readonly url: string;
  readonly limits: UnitLimits;
}

const connectSeconds = 5;

const begins: Record<Mode, string> = {
  writing: 'begin isolation level read committed read write',
  reading: 'begin isolation level repeatable read read only',
};

// In the transaction, not at connecting: it also holds behind a pooler that hands connections on.
const opening = ({ mode, scope }: UnitKind, { statementMs, lockMs, idleMs }: UnitLimits): string =>
  [
    begins[mode],
    `set local statement_timeout = ${statementMs}`,
    `set local lock_timeout = ${lockMs}`,
    `set local idle_in_transaction_session_timeout = ${idleMs}`,
    `set local time zone 'UTC'`,
    takeOnScope(scope),
  ].join('; ');

export class PostgresConnection {
  readonly #sql: postgres.Sql;
  readonly #limits: UnitLimits;
  #alive = true;

  constructor({ url, limits }: ConnectionConfig) {
    this.#limits = limits;
    this.#sql = postgres(url, {
      max: 1,
      connect_timeout: connectSeconds,
      idle_timeout: 0,
      max_lifetime: null,
      fetch_types: false,
      onnotice: () => undefined,
      onclose: () => {
        this.#alive = false;
      },
    });
  }

  get alive(): boolean {
    return this.#alive;
  }

  /** One transaction. The connection can be used again only if it is still `alive`. */
  async run<T>(kind: UnitKind, unit: Unit, work: (handle: Handle) => Promise<T>): Promise<T> {
    await this.#send(opening(kind, this.#limits));
    try {
      const result = await work(drizzle({ client: this.#guarded(unit) }));
      if (unit.refusal) throw unit.refusal;
      unit.throwIfFailed();
      unit.end();
      unit.committing = true;
      await this.#send('commit');
      return result;
    } catch (error) {
      unit.end();
      if (!unit.committing) await this.#rollBack();
      throw error;
    }
  }

  /** Drops the socket at once; whoever waits on it gets an error. */
  discard(): void {
    this.#alive = false;
    this.#sql.end({ timeout: 0 }).catch(() => undefined);
  }

  async close(): Promise<void> {
    this.#alive = false;
    await this.#sql.end({ timeout: 1 });
  }

  async version(): Promise<string> {
    const [row] = await this.#sql<{ server_version: string }[]>`show server_version`;
    return row?.server_version.split(' ')[0] ?? '';
  }

  async #send(statement: string): Promise<void> {
    if (!this.#alive) throw connectionLost();
    await this.#sql.unsafe(statement);
  }

  async #rollBack(): Promise<void> {
    try {
      await this.#send('rollback');
    } catch {
      this.discard();
    }
  }

  /** The driver as drizzle sees it, with nothing sent too late. */
  #guarded(unit: Unit): postgres.Sql {
    const send = (...args: Parameters<postgres.Sql['unsafe']>): unknown => {
      const refusal = unit.refusal ?? (this.#alive ? undefined : connectionLost());
      if (refusal) {
        const refused = Promise.reject(refusal);
        refused.catch(() => undefined);
        return Object.assign(refused, { values: () => refused });
      }
      const query = this.#sql.unsafe(...args);
      query.catch((error: unknown) => unit.fail(error));
      return query;
    };
    return { options: this.#sql.options, unsafe: send } as unknown as postgres.Sql;
  }
}

const connectionLost = (): DatabaseUnavailable =>
  new DatabaseUnavailable('connection', 'The connection to the database is gone.', false);

// Any number that no other program on the same database takes.
const migrationLock = 715_020_311;

/** Migrations take a connection of their own, without limits; other processes wait for the lock. */
export async function migrateServer(url: string, folder: string): Promise<void> {
  const sql = postgres(url, { max: 1, connect_timeout: connectSeconds, onnotice: () => undefined });
  try {
    await sql`select pg_advisory_lock(${migrationLock})`;
    await migrate(drizzle({ client: sql }), { migrationsFolder: folder });
  } finally {
    await sql.end({ timeout: 1 });
  }
}
