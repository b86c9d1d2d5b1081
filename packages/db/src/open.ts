import type { Database, DatabaseConfig } from './database.ts';

/** @throws FolderBusy, EngineRefused, DatabaseUnavailable */
export async function openDatabase(_config: DatabaseConfig): Promise<Database> {
  throw new Error('not yet');
}
