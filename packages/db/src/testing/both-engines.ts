import { fileURLToPath } from 'node:url';
import { createDatabase, dropDatabase, freshName } from '@flitchbook/test-harness';
import { describeOnPostgres } from '@flitchbook/test-harness/vitest';
import type { SQL } from 'drizzle-orm';
import { afterAll, beforeAll, describe } from 'vitest';
import type { Database, ServerConfig } from '../database.ts';
import { asOwner, handleOf } from '../engines/engine.ts';
import { rows } from '../engines/rows.ts';
import { migrate } from '../migrate.ts';
import { openDatabase } from '../open.ts';
import { inTransaction } from '../transaction.ts';

export const snapshots = fileURLToPath(
  new URL('../../../../node_modules/.cache/flitchbook', import.meta.url),
);

/** An open, migrated database, as its owner sees it, with nothing in it but what other groups of the file made for their own shops. */
export type Use = () => Database;

// One for all groups of a file: its memory is not given back by closing it.
let embedded: Promise<Database> | undefined;

/** The same tests on the embedded engine, always, and on a real server. */
export function describeOnBoth(name: string, body: (db: Use) => void): void {
  describe(`${name}, on PGlite`, () => {
    let db: Database;
    beforeAll(async () => {
      embedded ??= openDatabase({ engine: 'memory', snapshots });
      db = asOwner(await embedded);
    });
    body(() => db);
  });
  describeOnServer(`${name}, on Postgres`, body);
}

/** What one connection cannot show: races, locks, time limits. */
export function describeOnServer(
  name: string,
  body: (db: Use, url: () => string) => void,
  config: Partial<ServerConfig> = {},
): void {
  describeOnPostgres(name, (server) => {
    const database = freshName('db');
    let db: Database;
    let url = '';
    beforeAll(async () => {
      url = await createDatabase(server.url, database);
      const opened = await openDatabase({ ...config, engine: 'postgres', url });
      await migrate(opened);
      db = asOwner(opened);
    });
    afterAll(async () => {
      await db.close();
      await dropDatabase(server.url, database);
    });
    body(
      () => db,
      () => url,
    );
  });
}

/** One statement in a transaction of its own. */
export const statement = <T = unknown>(db: Database, text: SQL): Promise<readonly T[]> =>
  inTransaction(db, async (tx) => rows<T>(await handleOf(tx).execute(text)));
