import { fileURLToPath } from 'node:url';
import type { Database } from './database.ts';
import { engineOf } from './engines/engine.ts';

export const migrationsFolder = fileURLToPath(new URL('../migrations', import.meta.url));

/** Brings the schema up to date. Safe to call at every start and by several processes at once. */
export async function migrate(db: Database): Promise<void> {
  await engineOf(db).runMigrations(migrationsFolder);
}
