// For tests of other workspaces, which know no SQL.
import { sql } from 'drizzle-orm';
import type { Database } from '../database.ts';
import { engineOf } from '../engines/engine.ts';
import { describeOnBoth, snapshots, statement } from './both-engines.ts';

export { describeOnBoth, snapshots };

/** The database as a service opens it: narrowed to no shop yet. */
export const asOpened = (db: Database): Database => engineOf(db);

/** What a table holds, so far as it matters whether anything changed. */
export interface TableState {
  readonly name: string;
  readonly rows: number;
  readonly digest: string;
}

/** Every row of every table, as counts and digests. */
export async function tableStates(db: Database): Promise<readonly TableState[]> {
  const tables = await statement<{ name: string }>(
    db,
    sql`select tablename as name from pg_tables where schemaname = 'public' order by tablename`,
  );
  const each = tables.map(
    ({ name }) => sql`select ${name}::text as name, count(*)::int as rows,
      md5(coalesce(string_agg(entry::text, ',' order by entry::text), '')) as digest from ${sql.identifier(name)} as entry`,
  );
  return await statement<TableState>(db, sql.join(each, sql` union all `));
}

/** Takes a table away and puts it back: a fault of the database that no caller brought about. */
export async function withoutTable<T>(db: Database, name: string, work: () => Promise<T>): Promise<T> {
  const aside = sql.identifier(`${name}_aside`);
  await statement(db, sql`alter table ${sql.identifier(name)} rename to ${aside}`);
  try {
    return await work();
  } finally {
    await statement(db, sql`alter table ${aside} rename to ${sql.identifier(name)}`);
  }
}
