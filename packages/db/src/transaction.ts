import type { Database, Tx } from './database.ts';

export interface TransactionOptions {
  /** one snapshot of everything, and no writing */
  readonly reading?: boolean;
  /** tries on a serialization failure or a deadlock (3) */
  readonly tries?: number;
}

/**
 * Runs `work` in one transaction; an error rolls it back. The whole of `work` may run again, so it has no effect outside.
 * @throws ConstraintViolation, ValueRefused, DatabaseUnavailable; whatever `work` throws
 */
export async function inTransaction<T>(_db: Database, _work: (tx: Tx) => Promise<T>, _options: TransactionOptions = {}): Promise<T> {
  throw new Error('not yet');
}
