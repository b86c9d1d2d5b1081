import { expect, test } from 'vitest';
import { createIds } from './ids.ts';

test('an id has the form of RFC 9562, appendix A.6, for that example time and randomness', () => {
  // The example there: time 0x017F22E279B0, rand_a 0xCC3, rand_b 0x18C4DC0C0C07398F, id 017F22E2-79B0-7CC3-98C4-DC0C0C07398F.
  const random = Uint8Array.from([0x0c, 0xc3, 0x18, 0xc4, 0xdc, 0x0c, 0x0c, 0x07, 0x39, 0x8f]);
  const ids = createIds(
    () => random.slice(),
    () => 0x017f22e279b0,
  );
  expect(ids.newId()).toBe('017f22e2-79b0-7cc3-98c4-dc0c0c07398f');
});

test('ids of later milliseconds sort later', () => {
  let nowMs = 1_764_000_000_000;
  const ids = createIds(
    (count) => new Uint8Array(count),
    () => nowMs++,
  );
  const made = Array.from({ length: 50 }, () => ids.newId());
  expect(made.toSorted()).toEqual(made);
});

test('a token carries 256 bits', () => {
  const ids = createIds(
    (count) => new Uint8Array(count).fill(0xff),
    () => 0,
  );
  expect(Buffer.from(ids.newToken(), 'base64url')).toHaveLength(32);
});
