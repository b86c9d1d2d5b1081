import { describe, expect, test } from 'vitest';
import { createPasswords, HashingBusy } from './passwords.ts';

describe('passwords', () => {
  test('a stored hash is argon2id with 19 MiB, two passes and one lane (OWASP Password Storage Cheat Sheet)', async () => {
    const stored = await createPasswords().hash('sixteen letters!');
    expect(stored).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
  });

  test('the right password matches, another does not', async () => {
    const passwords = createPasswords();
    const stored = await passwords.hash('the right password');
    expect(await passwords.matches('the right password', stored)).toBe(true);
    expect(await passwords.matches('the wrong password', stored)).toBe(false);
    // Nothing is cut off at 72 bytes or elsewhere.
    const long = 'x'.repeat(200);
    expect(await passwords.matches(`${long}b`, await passwords.hash(`${long}a`))).toBe(false);
  });

  test('for an address nobody has the answer is no, after the same work', async () => {
    const passwords = createPasswords();
    const stored = await passwords.hash('the right password');
    const quickest = async (hash: string | undefined): Promise<number> => {
      const times: number[] = [];
      for (let round = 0; round < 15; round++) {
        const start = performance.now();
        expect(await passwords.matches('a wrong password', hash)).toBe(false);
        times.push(performance.now() - start);
      }
      return Math.min(...times);
    };
    const known = await quickest(stored);
    const unknown = await quickest(undefined);
    // Without the dummy hash the ratio is far below a tenth; how even the two are is for a benchmark to say.
    expect(unknown / known).toBeGreaterThan(0.2);
  });

  test('a burst beyond the queue is turned away and the rest still finish', async () => {
    const passwords = createPasswords();
    const results = await Promise.allSettled(
      Array.from({ length: 80 }, () => passwords.matches('any password', undefined)),
    );
    const turnedAway = results.filter((result) => result.status === 'rejected');
    expect(turnedAway).toHaveLength(80 - 2 - 64);
    expect(turnedAway.every((result) => result.reason instanceof HashingBusy)).toBe(true);
    expect(await passwords.matches('any password', undefined)).toBe(false);
  });
});
