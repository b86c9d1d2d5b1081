import type { Database, DatabaseConfig } from './database.ts';
import { openFolder, openMemory } from './engines/pglite-engine.ts';
import { openPostgres } from './engines/postgres-engine.ts';
import { migrationsFolder } from './migrate.ts';

/**
 * Opens a database; `migrate` comes next. Close it, or its folder stays locked until the process is gone.
 * @throws FolderBusy, FolderUnusable, EngineRefused, DatabaseUnavailable
 */
export async function openDatabase(config: DatabaseConfig): Promise<Database> {
  switch (config.engine) {
    case 'postgres':
      return await openPostgres(config);
    case 'folder':
      return await openFolder(config);
    case 'memory':
      return await openMemory(config, migrationsFolder);
  }
}
