import { hash, verify } from '@node-rs/argon2';

/** OWASP Password Storage Cheat Sheet: argon2id with 19 MiB, two passes, one lane. Argon2id is the library's default. */
const hashing = { memoryCost: 19_456, timeCost: 2, parallelism: 1, outputLen: 32 } as const;

const hashesAtOnce = 2;
const waitingMax = 64;

const zeros = (bytes: number): string => Buffer.alloc(bytes).toString('base64').replaceAll('=', '');

/** Costs as much to check as a real one and matches nothing: for addresses that nobody has. */
const nobodysHash = `$argon2id$v=19$m=${hashing.memoryCost},t=${hashing.timeCost},p=${hashing.parallelism}$${zeros(16)}$${zeros(hashing.outputLen)}`;

/** The queue for hashing is full: the caller may try again. */
export class HashingBusy extends Error {}

export interface Passwords {
  hash(password: string): Promise<string>;
  /** With no stored hash the answer is false after the same work. @throws HashingBusy */
  matches(password: string, storedHash: string | undefined): Promise<boolean>;
}

/** At most two hashes at a time, whatever comes in: each takes 19 MiB and a core for about 28 ms. */
export function createPasswords(): Passwords {
  let running = 0;
  const waiting: (() => void)[] = [];

  async function inTurn<T>(work: () => Promise<T>): Promise<T> {
    if (running >= hashesAtOnce) {
      if (waiting.length >= waitingMax) throw new HashingBusy('too many passwords to check');
      await new Promise<void>((resolve) => waiting.push(resolve));
    } else running += 1;
    try {
      return await work();
    } finally {
      // The place is handed on, not given back and taken again.
      const next = waiting.shift();
      if (next) next();
      else running -= 1;
    }
  }

  return {
    hash: (password) => inTurn(() => hash(password, hashing)),
    matches: (password, storedHash) =>
      inTurn(async () => (await verify(storedHash ?? nobodysHash, password)) && storedHash !== undefined),
  };
}
