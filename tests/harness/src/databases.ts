import { randomUUID } from 'node:crypto';
import postgres from 'postgres';

async function onServer(url: string, statement: (sql: postgres.Sql) => Promise<unknown>): Promise<void> {
  const sql = postgres(url, { max: 1, onnotice: () => undefined });
  try {
    await statement(sql);
  } finally {
    await sql.end({ timeout: 1 });
  }
}

/** Creates database `name` on the server of `url`, as a copy of `template` if given, and returns its own address. */
export async function createDatabase(url: string, name: string, template?: string): Promise<string> {
  await onServer(url, (sql) =>
    template === undefined
      ? sql`create database ${sql(name)}`
      : sql`create database ${sql(name)} template ${sql(template)}`,
  );
  const own = new URL(url);
  own.pathname = `/${name}`;
  return own.href;
}

/** Drops database `name`, ending whoever is still connected. */
export async function dropDatabase(url: string, name: string): Promise<void> {
  await onServer(url, (sql) => sql`drop database if exists ${sql(name)} with (force)`);
}

/** A database name that no other test or run has, for example `fb_ledger_1f0c9a52b7d4`. */
export function freshName(label: string): string {
  return `fb_${label}_${randomUUID().slice(-12)}`;
}
