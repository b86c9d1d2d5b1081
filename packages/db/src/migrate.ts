import type { Database } from './database.ts';

/** Brings the schema up to date. Safe to call at every start and by several processes at once. */
export async function migrate(_db: Database): Promise<void> {
  throw new Error('not yet');
}
