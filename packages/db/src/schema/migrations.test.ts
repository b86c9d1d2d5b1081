import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { generateDrizzleJson, generateMigration } from 'drizzle-kit/api';
import { expect, it } from 'vitest';
import { migrationsFolder } from '../migrate.ts';
import * as schema from './index.ts';

const readJson = (name: string) => JSON.parse(readFileSync(join(migrationsFolder, 'meta', name), 'utf8'));

// Otherwise the code would look for what no database has: run `npx drizzle-kit generate` in packages/db.
it('the migrations bring about the schema that the code uses', async () => {
  const { entries } = readJson('_journal.json') as { entries: { idx: number }[] };
  const latest = String(entries.length - 1).padStart(4, '0');
  const migrated = readJson(`${latest}_snapshot.json`);
  expect(await generateMigration(migrated, generateDrizzleJson(schema))).toEqual([]);
  const { shops, ...less } = schema;
  expect(shops).toBeDefined();
  expect(await generateMigration(migrated, generateDrizzleJson(less))).not.toEqual([]);
});
