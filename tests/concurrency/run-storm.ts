// The long run by name: npx tsx tests/concurrency/run-storm.ts [requests] [seed] [at once]; prints one line of JSON.
import { startOwnPostgres } from '@flitchbook/test-harness';
import { stormOfKeys } from './key-storm.ts';
import { openMigrated } from './shop-on-postgres.ts';

const [requests = 10_000, seed = 1, atOnce = 16] = process.argv.slice(2).map(Number);
const server = await startOwnPostgres();
if (!server) throw new Error('No Postgres server was found.');
const db = await openMigrated(server.url, 10);
try {
  const report = await stormOfKeys(db, { requests, seed, atOnce });
  process.stdout.write(`${JSON.stringify({ test: 'storm', ...report })}\n`);
  if (report.faults.length > 0) process.exitCode = 1;
} finally {
  await db.close();
  await server.stop();
}
