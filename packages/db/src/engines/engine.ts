import type { PgDatabase, PgQueryResultHKT } from 'drizzle-orm/pg-core';
import type { Database, Tx, UnitLimits } from '../database.ts';
import { DatabaseUnavailable } from '../faults.ts';

export type Handle = PgDatabase<PgQueryResultHKT>;
export type Mode = 'writing' | 'reading';

/** What both engines offer to the rest of this package. */
export interface Engine extends Database {
  /** One transaction, once; errors as the driver gives them, or DatabaseUnavailable. */
  unit<T>(mode: Mode, work: (handle: Handle) => Promise<T>): Promise<T>;
  /** Runs the migrations of a folder; one process at a time. */
  runMigrations(folder: string): Promise<void>;
}

export const engineOf = (db: Database): Engine => db as Engine;
export const handleOf = (tx: Tx): Handle => tx as unknown as Handle;
export const txOf = (handle: Handle): Tx => handle as unknown as Tx;

export const usualLimits: UnitLimits = {
  deadlineMs: 15_000,
  statementMs: 10_000,
  lockMs: 5_000,
  idleMs: 10_000,
};

export const closedError = (): DatabaseUnavailable =>
  new DatabaseUnavailable('closed', 'The database is closed.', false);
