import { describe, expect, test } from 'vitest';
import { networkOf, TryCounter } from './try-limits.ts';

describe('TryCounter', () => {
  test('as many tries as the limit, then a wait, then one more', () => {
    let nowMs = 0;
    const counter = new TryCounter({ tries: 10, perSeconds: 900 }, () => nowMs);
    for (let round = 0; round < 10; round++) expect(counter.take('a')).toBe(0);
    expect(counter.take('a')).toBe(90);
    expect(counter.take('b')).toBe(0);
    nowMs = 89_000;
    expect(counter.take('a')).toBe(1);
    nowMs = 90_000;
    expect(counter.take('a')).toBe(0);
    expect(counter.take('a')).toBe(90);
  });

  test('a refused try costs nothing, so waiting helps', () => {
    let nowMs = 0;
    const counter = new TryCounter({ tries: 1, perSeconds: 10 }, () => nowMs);
    counter.take('a');
    for (; nowMs < 9000; nowMs += 1000) expect(counter.take('a')).toBeGreaterThan(0);
    nowMs = 10_000;
    expect(counter.take('a')).toBe(0);
  });

  test('giving back never exceeds the limit', () => {
    const counter = new TryCounter({ tries: 2, perSeconds: 10 }, () => 0);
    counter.giveBack('a');
    expect([counter.take('a'), counter.take('a')]).toEqual([0, 0]);
    expect(counter.take('a')).toBeGreaterThan(0);
  });
});

test.each([
  ['203.0.113.9', '203.0.113.9'],
  ['::ffff:203.0.113.9', '203.0.113.9'],
  ['2001:db8:1:2:3:4:5:6', '2001:db8:1:2::/64'],
  ['2001:db8:1:2::9', '2001:db8:1:2::/64'],
  ['2001:db8::9', '2001:db8:0:0::/64'],
  ['::1', '0:0:0:0::/64'],
])('the network of %s is %s', (address, network) => {
  expect(networkOf(address)).toBe(network);
});
