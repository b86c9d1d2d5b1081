import { createDatabase, dropDatabase, freshName } from '@flitchbook/test-harness';
import { describeOnPostgres } from '@flitchbook/test-harness/vitest';
import { expect, it } from 'vitest';
import { runRounds } from './many-rounds.ts';

const rounds = 6;
const buyers = 200;

describeOnPostgres('many buyers and few units, through two processes on slow wires', (server) => {
  // The long run by name: npx tsx tests/concurrency/run-rounds.ts
  it(`are as many accepted as there is room for, in each of ${rounds} rounds`, async () => {
    const name = freshName('rounds');
    const url = await createDatabase(server.url, name);
    try {
      const report = await runRounds({ url, rounds, buyers, seed: 20_261_125, delayMs: 20 });
      expect(report).toMatchObject({ exact: rounds, faults: [], attempts: rounds * buyers });
      expect(report.accepted + report.refused).toBe(rounds * buyers);
      expect(report.accepted).toBeGreaterThan(rounds);
    } finally {
      await dropDatabase(server.url, name);
    }
  }, 400_000);
});
