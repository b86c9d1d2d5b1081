import { describeOnServer } from '@flitchbook/db/testing';
import { expect, it } from 'vitest';
import { runSequences } from './model/run-sequences.ts';

// More of them by name: npx tsx tests/concurrency/run-model.ts
const sequences = 80;

describeOnServer('the service of promises beside a model on paper', (db) => {
  it(`agrees with it in ${sequences} sequences of commands (R1 to R11)`, async () => {
    const done = await runSequences(db(), { sequences, seed: 20_261_125, longest: 12 });
    expect(done.orders).toBeGreaterThan(sequences);
  }, 600_000);
});
