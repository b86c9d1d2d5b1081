// The long run by name: npx tsx tests/concurrency/run-model.ts [sequences] [seed] [longest]; prints one line of JSON.
import { migrate, openDatabase } from '@flitchbook/db';
import { startOwnPostgres } from '@flitchbook/test-harness';
import { runSequences } from './model/run-sequences.ts';

const [sequences = 2000, seed = 1, longest = 20] = process.argv.slice(2).map(Number);
const server = await startOwnPostgres();
if (!server) throw new Error('No Postgres server was found.');
const db = await openDatabase({ engine: 'postgres', url: server.url, connections: 6 });
try {
  await migrate(db);
  const began = performance.now();
  const done = await runSequences(db, { sequences, seed, longest });
  const seconds = Math.round((performance.now() - began) / 1000);
  process.stdout.write(`${JSON.stringify({ test: 'model', seed, sequences, longest, ...done, seconds })}\n`);
} finally {
  await db.close();
  await server.stop();
}
