// The long run by name: npx tsx tests/concurrency/run-rounds.ts [rounds] [seed] [buyers] [delay in ms]; prints one line of JSON.
import { startOwnPostgres } from '@flitchbook/test-harness';
import { runRounds } from './many-rounds.ts';

const [rounds = 1000, seed = 1, buyers = 200, delayMs = 50] = process.argv.slice(2).map(Number);
const server = await startOwnPostgres();
if (!server) throw new Error('No Postgres server was found.');
try {
  const report = await runRounds({ url: server.url, rounds, seed, buyers, delayMs });
  process.stdout.write(`${JSON.stringify({ test: 'rounds', ...report })}\n`);
  if (report.faults.length > 0) process.exitCode = 1;
} finally {
  await server.stop();
}
