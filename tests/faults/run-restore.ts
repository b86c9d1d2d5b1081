// By name: npx tsx tests/faults/run-restore.ts; prints one line of JSON. Needs pg_dump and pg_restore of the server's version.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createDatabase, freshName, startOwnPostgres } from '@flitchbook/test-harness';
import { CounterHand } from './counter-hand.ts';
import { ServiceProcess } from './service-process.ts';

const script = fileURLToPath(new URL('../../infra/try-restore.sh', import.meta.url));
const server = await startOwnPostgres();
if (!server) throw new Error('No Postgres server was found.');
const home = mkdtempSync(join(tmpdir(), 'flitchbook-restore-'));
const url = await createDatabase(server.url, freshName('restore'));
const service = new ServiceProcess({ DATABASE_URL: url, DATA_DIR: home });
try {
  const hand = new CounterHand(await service.ready());
  await hand.signIn();
  const working = hand.takeOrders(await hand.openDay('2031-05-06'), 0);
  while (hand.acknowledged.length < 20) await new Promise((resolve) => setTimeout(resolve, 20));
  hand.stop();
  await working;
  await service.end('SIGTERM');
  const began = performance.now();
  const said = execFileSync(script, { env: { ...process.env, DATABASE_URL: url }, encoding: 'utf8' });
  const report = JSON.parse(said) as { readonly faults: readonly string[]; readonly orders: number };
  const acknowledged = hand.acknowledged.length;
  const seconds = Math.round((performance.now() - began) / 1000);
  process.stdout.write(`${JSON.stringify({ test: 'restore', acknowledged, ...report, seconds })}\n`);
  if (report.orders < acknowledged) process.exitCode = 1;
} finally {
  await service.end('SIGKILL');
  await server.stop();
  rmSync(home, { recursive: true, force: true });
}
