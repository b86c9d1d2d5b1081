import { asOpened, describeOnServer } from '@flitchbook/db/testing';
import { expect, it } from 'vitest';
import { stormOfKeys } from './key-storm.ts';

const requests = 100;

// IETF draft-ietf-httpapi-idempotency-key-header-07, section 2; R6 of docs/invariants.md.
describeOnServer('requests that are sent again and again', (db) => {
  // The long run by name: npx tsx tests/concurrency/run-storm.ts
  it('have one effect each, whichever replies were lost', async () => {
    const report = await stormOfKeys(asOpened(db()), { requests, seed: 20_261_125, atOnce: 8 });
    expect(report).toMatchObject({ faults: [], reused: requests / 10 });
    expect(report.lostReplies).toBeGreaterThan(requests / 2);
    expect(report.replayed).toBeGreaterThan(requests);
  }, 300_000);
});
