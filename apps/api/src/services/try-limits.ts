/** `tries` at once, and as many again spread over `perSeconds`. */
export interface TryLimit {
  readonly tries: number;
  readonly perSeconds: number;
}

interface Bucket {
  left: number;
  atMs: number;
}

const bucketsMax = 20_000;

/** Token buckets by key. `nowMs` only has to run forward. */
export class TryCounter {
  readonly #limit: TryLimit;
  readonly #nowMs: () => number;
  readonly #buckets = new Map<string, Bucket>();

  constructor(limit: TryLimit, nowMs: () => number) {
    this.#limit = limit;
    this.#nowMs = nowMs;
  }

  #filled(key: string): Bucket {
    const nowMs = this.#nowMs();
    const bucket = this.#buckets.get(key) ?? { left: this.#limit.tries, atMs: nowMs };
    const gained = ((nowMs - bucket.atMs) / 1000 / this.#limit.perSeconds) * this.#limit.tries;
    return { left: Math.min(this.#limit.tries, bucket.left + Math.max(0, gained)), atMs: nowMs };
  }

  /** Takes one try. 0 when it was there, else the whole seconds until there is one. */
  take(key: string): number {
    const bucket = this.#filled(key);
    if (bucket.left < 1) {
      return Math.ceil(((1 - bucket.left) * this.#limit.perSeconds) / this.#limit.tries);
    }
    this.#buckets.delete(key);
    this.#buckets.set(key, { ...bucket, left: bucket.left - 1 });
    this.#forgetOldest();
    return 0;
  }

  /** Gives the last try back: it was not a guess. */
  giveBack(key: string): void {
    const bucket = this.#filled(key);
    this.#buckets.set(key, { ...bucket, left: Math.min(this.#limit.tries, bucket.left + 1) });
  }

  // The map keeps the order of last use, so the first keys are the ones nobody has used for longest.
  #forgetOldest(): void {
    for (const key of this.#buckets.keys()) {
      if (this.#buckets.size <= bucketsMax) return;
      this.#buckets.delete(key);
    }
  }
}

/** The network an address belongs to: itself for IPv4, the first 64 bits for IPv6. */
export function networkOf(address: string): string {
  const plain = address.startsWith('::ffff:') ? address.slice(7) : address;
  if (!plain.includes(':')) return plain;
  const [head = '', tail = ''] = plain.split('::');
  const before = head === '' ? [] : head.split(':');
  const after = tail === '' ? [] : tail.split(':');
  const zeros = plain.includes('::') ? Array(Math.max(0, 8 - before.length - after.length)).fill('0') : [];
  return `${[...before, ...zeros, ...after].slice(0, 4).join(':')}::/64`;
}
