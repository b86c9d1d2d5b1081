import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { sql } from 'drizzle-orm';
import { expect, it } from 'vitest';
import { migrate } from './migrate.ts';
import { describeOnBoth, statement, type Use } from './testing/both-engines.ts';

const manifestFile = fileURLToPath(new URL('./schema-manifest.txt', import.meta.url));

// Not-null rules are listed with the columns; only Postgres 18 lists them as constraints too.
const queries = {
  columns: sql`select table_name || '.' || column_name || ' ' || udt_name || case is_nullable when 'NO' then ' not null' else '' end || coalesce(' default ' || column_default, '') as says
    from information_schema.columns where table_schema = 'public'`,
  constraints: sql`select conrelid::regclass || ' ' || conname || ' ' || pg_get_constraintdef(oid) as says
    from pg_constraint where connamespace = 'public'::regnamespace and contype <> 'n'`,
  indexes: sql`select indexdef as says from pg_indexes where schemaname = 'public'`,
  policies: sql`select tablename || ' ' || policyname || ' ' || cmd || ' using ' || coalesce(qual, '-') || ' check ' || coalesce(with_check, '-') as says
    from pg_policies where schemaname = 'public'`,
  triggers: sql`select pg_get_triggerdef(oid) as says from pg_trigger where not tgisinternal`,
};

async function manifest(db: Use): Promise<string> {
  const parts = [];
  for (const [name, query] of Object.entries(queries)) {
    const found = await statement<{ says: string }>(db(), query);
    const lines = found.map(({ says }) => says.replaceAll(/\s+/g, ' ')).toSorted();
    parts.push(`${name}\n${lines.map((text) => `  ${text}\n`).join('')}`);
  }
  return parts.join('\n');
}

describeOnBoth('the schema after all migrations', (db) => {
  it('is the one that is written down, and migrating again changes nothing', async () => {
    // A new snapshot would be written where there is none, and prove nothing.
    expect(existsSync(manifestFile)).toBe(true);
    await migrate(db());
    await expect(await manifest(db)).toMatchFileSnapshot(manifestFile);
  });

  it('has the shop first in every key and index', async () => {
    const firsts = await statement<{ name: string; first: string }>(
      db(),
      sql`select i.indexrelid::regclass::text as name, a.attname as first from pg_index i
        join pg_class c on c.oid = i.indrelid and c.relnamespace = 'public'::regnamespace
        join pg_attribute a on a.attrelid = i.indrelid and a.attnum = i.indkey[0]`,
    );
    expect(firsts.length).toBeGreaterThan(20);
    expect(firsts.filter(({ first }) => first !== 'shop_id')).toEqual([]);
  });

  it('names every rule after its table', async () => {
    const found = await statement<{ at: string; name: string }>(
      db(),
      sql`select conrelid::regclass::text as at, conname as name from pg_constraint
        where connamespace = 'public'::regnamespace and contype <> 'n'`,
    );
    expect(found.length).toBeGreaterThan(50);
    expect(found.filter(({ at, name }) => !name.startsWith(`${at}_`))).toEqual([]);
  });
});
