import { existsSync } from 'node:fs';
import postgres from 'postgres';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { describeOnPostgres } from './for-vitest.ts';
import { createDatabase, dropDatabase, findPostgresBinaries, freshName, startOwnPostgres } from './index.ts';

describeOnPostgres('the shared server', (server) => {
  const name = freshName('harness');
  let sql: postgres.Sql;

  beforeAll(async () => {
    sql = postgres(await createDatabase(server.url, name), { max: 2 });
  });
  afterAll(async () => {
    await sql.end();
    await dropDatabase(server.url, name);
  });

  it('answers, and is one of the versions that the project promises', async () => {
    expect(await sql`select 1 as one`).toEqual([{ one: 1 }]);
    expect(Number.parseInt(server.version, 10)).toBeGreaterThanOrEqual(15);
  });

  it('refuses overlapping spans of one bar by an exclusion constraint', async () => {
    await sql`create extension btree_gist`;
    await sql`create table pieces (bar text, span int4range,
      constraint pieces_never_overlap exclude using gist (bar with =, span with &&))`;
    await sql`insert into pieces values ('loin', '[0,100)'), ('loin', '[100,200)'), ('belly', '[50,150)')`;
    // 23P01 exclusion_violation: PostgreSQL manual, appendix A.
    await expect(sql`insert into pieces values ('loin', '[99,101)')`).rejects.toMatchObject({
      code: '23P01',
      constraint_name: 'pieces_never_overlap',
    });
  });

  it('copies a template database', async () => {
    const [template, copy] = [freshName('template'), freshName('copy')];
    const first = postgres(await createDatabase(server.url, template), { max: 1 });
    await first`create table farm (name text)`;
    await first.end();
    const second = postgres(await createDatabase(server.url, copy, template), { max: 1 });
    expect(await second`select count(*)::int as farms from farm`).toEqual([{ farms: 0 }]);
    await second.end();
    await dropDatabase(server.url, copy);
    await dropDatabase(server.url, template);
  });
});

describe.each(findPostgresBinaries())('a server of our own ($origin, $folder)', (binaries) => {
  it('starts, survives a crash with what it acknowledged, and leaves nothing behind', async () => {
    const server = await startOwnPostgres(binaries);
    if (server === undefined) throw new Error('binaries were found, yet no server started');
    const sql = postgres(server.url, { max: 1, onnotice: () => undefined });
    const [row] = await sql<{ data_directory: string }[]>`show data_directory`;
    await sql`create table kept (n int)`;
    await sql`insert into kept values (7)`;
    await server.crash();
    await server.revive();
    const again = postgres(server.url, { max: 1 });
    expect(await again`select n from kept`).toEqual([{ n: 7 }]);
    await again.end();
    await sql.end({ timeout: 1 });
    await server.stop();
    expect(existsSync(row?.data_directory ?? '/')).toBe(false);
  });
});
