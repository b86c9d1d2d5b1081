// For tests of other workspaces, which know no SQL.
import { sql } from 'drizzle-orm';
import type { Database } from '../database.ts';
import { asOwner, engineOf } from '../engines/engine.ts';
import { describeOnBoth, describeOnServer, snapshots, statement } from './both-engines.ts';

export { asOwner, describeOnBoth, describeOnServer, snapshots };

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

/** As if the time of every hold on a day were over, by the database's clock. */
export async function endHolds(db: Database, dayId: string): Promise<void> {
  await statement(
    db,
    sql`update orders set held_until = now() - interval '1 second' where day_id = ${dayId} and state = 'held'`,
  );
}

export interface OrderMarks {
  readonly orderId: string;
  /** actions in the audit, kinds in the ledger, kinds of mails, each in the order of writing */
  readonly audited: readonly string[];
  readonly entered: readonly { readonly kind: string; readonly facts: Readonly<Record<string, unknown>> }[];
  readonly mailed: readonly string[];
}

/** What the orders of a day have left behind them. */
export const marksOf = (db: Database, dayId: string): Promise<readonly OrderMarks[]> =>
  statement<OrderMarks>(
    db,
    sql`select o.order_id as "orderId",
      (select coalesce(json_agg(a.action order by a.at), '[]') from audit a
        where a.shop_id = o.shop_id and a.subject = o.order_id::text) as audited,
      (select coalesce(json_agg(json_build_object('kind', l.kind, 'facts', l.facts) order by l.seq), '[]') from ledger l
        where l.shop_id = o.shop_id and l.order_id = o.order_id) as entered,
      (select coalesce(json_agg(m.kind order by m.made_at), '[]') from mails m
        where m.shop_id = o.shop_id and m.order_id = o.order_id) as mailed
      from orders o where o.day_id = ${dayId} order by o.number`,
  );

/** Every row of one shop, by table: as JSON, so that ids and texts of it are found. */
export async function rowsOfShop(db: Database, shopId: string): Promise<ReadonlyMap<string, string>> {
  const tables = await statement<{ name: string }>(
    db,
    sql`select table_name as name from information_schema.columns
      where table_schema = 'public' and column_name = 'shop_id' order by table_name`,
  );
  const each = tables.map(
    ({ name }) => sql`select ${name}::text as name,
      coalesce(json_agg(entry order by entry::text), '[]')::text as found
      from ${sql.identifier(name)} as entry where shop_id = ${shopId}::uuid`,
  );
  const found = await statement<{ name: string; found: string }>(db, sql.join(each, sql` union all `));
  return new Map(found.map((row) => [row.name, row.found]));
}

/** An order is cancelled by somebody who goes past the service, and past the ledger. */
export const cancelByHand = (db: Database, orderId: string): Promise<unknown> =>
  statement(db, sql`update orders set state = 'cancelled', assured = false where order_id = ${orderId}`);
