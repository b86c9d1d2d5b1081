import { fileURLToPath } from 'node:url';
import { type Database, migrate, openDatabase } from '@flitchbook/db';
import { createDatabase, dropDatabase, freshName } from '@flitchbook/test-harness';
import { describeOnPostgres } from '@flitchbook/test-harness/vitest';
import { afterAll, beforeAll, describe } from 'vitest';

const snapshots = fileURLToPath(new URL('../../../../node_modules/.cache/flitchbook', import.meta.url));

/** The same tests on the embedded engine, always, and on a real server. */
export function describeOnBoth(name: string, body: (db: () => Database) => void): void {
  describe(`${name}, on PGlite`, () => {
    let db: Database;
    beforeAll(async () => {
      db = await openDatabase({ engine: 'memory', snapshots });
    });
    afterAll(() => db.close());
    body(() => db);
  });
  describeOnPostgres(`${name}, on Postgres`, (server) => {
    const database = freshName('api');
    let db: Database;
    beforeAll(async () => {
      const url = await createDatabase(server.url, database);
      db = await openDatabase({ engine: 'postgres', url, connections: 5 });
      await migrate(db);
    });
    afterAll(async () => {
      await db.close();
      await dropDatabase(server.url, database);
    });
    body(() => db);
  });
}
