import { join } from 'node:path';
import { type Database, openDatabase, type UnitLimits } from '@flitchbook/db';
import type { Config } from './config.ts';

/**
 * The database that the configuration names; `migrate` comes next.
 * @throws FolderBusy, FolderUnusable, EngineRefused, DatabaseUnavailable
 */
export function openConfigured(
  config: Config,
  { clock }: { readonly clock: () => Date },
  limits: Partial<UnitLimits> = {},
): Promise<Database> {
  if (config.databaseUrl !== null) {
    return openDatabase({
      engine: 'postgres',
      url: config.databaseUrl,
      connections: config.databaseConnections,
      limits,
    });
  }
  return openDatabase({
    engine: 'folder',
    folder: join(config.dataFolder, 'database'),
    clock: { now: clock },
    production: config.production,
    forced: config.embeddedInProduction,
    limits,
  });
}
