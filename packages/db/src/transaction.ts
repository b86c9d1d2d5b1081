import { AsyncLocalStorage } from 'node:async_hooks';
import { setTimeout as sleep } from 'node:timers/promises';
import type { Database, Tx } from './database.ts';
import { engineOf, scopeOf, txOf, type UnitKind } from './engines/engine.ts';
import { mayRetry, translateError } from './translate-error.ts';

export interface TransactionOptions {
  /** one snapshot of everything, and no writing */
  readonly reading?: boolean;
  /** tries on a serialization failure or a deadlock (3) */
  readonly tries?: number;
}

const usualTries = 3;
const pauseMs = 15;

const inside = new AsyncLocalStorage<{ readonly db: Database; over: boolean }>();

async function once<T>(db: Database, kind: UnitKind, work: (tx: Tx) => Promise<T>): Promise<T> {
  const place = { db: engineOf(db), over: false };
  try {
    return await engineOf(db).unit(kind, (handle) => inside.run(place, () => work(txOf(handle))));
  } finally {
    place.over = true;
  }
}

/**
 * Runs `work` in one transaction, for the shop that the database is narrowed to; an error rolls it back. The whole of `work` may run again, so it has no effect outside.
 * Writing sees what is committed statement by statement; the guards are conditions and constraints, not the isolation level.
 * @throws ConstraintViolation, ValueRefused, DatabaseUnavailable; whatever `work` throws
 */
export async function inTransaction<T>(
  db: Database,
  work: (tx: Tx) => Promise<T>,
  { reading = false, tries = usualTries }: TransactionOptions = {},
): Promise<T> {
  const outer = inside.getStore();
  // On the embedded engine the inner one would wait for the outer one for ever.
  if (outer?.db === engineOf(db) && !outer.over)
    throw new Error('A transaction inside a transaction: pass the outer tx on.');
  for (let tried = 1; ; tried++) {
    try {
      return await once(db, { mode: reading ? 'reading' : 'writing', scope: scopeOf(db) }, work);
    } catch (error) {
      if (!mayRetry(error) || tried >= tries) throw translateError(error);
      await sleep(pauseMs * tried * tried);
    }
  }
}
