import { forShop, inTransaction, type LedgerRecord, listLedger } from '@flitchbook/db';
import type { Services } from '../ctx.ts';

/** Entries that are kept at hand for whoever follows; who is further behind reads the database. */
const keptMax = 500;
const pageMax = 200;
const pollMs = 1000;

/** The end of one shop's ledger, read once for all who follow it in this process. */
class ShopTail {
  readonly #read: (after: number) => Promise<readonly LedgerRecord[]>;
  #kept: readonly LedgerRecord[] = [];
  #seenUpTo: number;
  #waiting: (() => void)[] = [];
  #timer: NodeJS.Timeout | undefined;
  followers = 0;

  constructor(read: (after: number) => Promise<readonly LedgerRecord[]>, from: number) {
    this.#read = read;
    this.#seenUpTo = from;
  }

  /** Entries after `seq` as far as one page goes; none when nothing came for a while. */
  async after(seq: number): Promise<readonly LedgerRecord[]> {
    const first = this.#kept[0]?.seq ?? this.#seenUpTo + 1;
    if (seq < this.#seenUpTo) {
      if (seq < first - 1) return this.#read(seq);
      return this.#kept.filter((entry) => entry.seq > seq).slice(0, pageMax);
    }
    await this.#news();
    return this.#kept.filter((entry) => entry.seq > seq).slice(0, pageMax);
  }

  #news(): Promise<void> {
    this.#timer ??= setTimeout(() => void this.#poll(), pollMs);
    return new Promise((resolve) => this.#waiting.push(resolve));
  }

  async #poll(): Promise<void> {
    try {
      const fresh = await this.#read(this.#seenUpTo);
      this.#seenUpTo = fresh.at(-1)?.seq ?? this.#seenUpTo;
      this.#kept = [...this.#kept, ...fresh].slice(-keptMax);
    } catch {
      // The database is away: followers wait for the next look, or leave.
    }
    this.#timer = undefined;
    for (const resolve of this.#waiting.splice(0)) resolve();
  }
}

/** Follows the ledgers of shops. A shop that nobody follows is not read. */
export class LedgerTails {
  readonly #shops = new Map<string, ShopTail>();

  /** @returns a reader of pages, and what to call when nobody reads any more */
  follow({ db }: Pick<Services, 'db'>, shopId: string, from: number) {
    const read = (after: number) =>
      inTransaction(forShop(db, shopId), (tx) => listLedger(tx, shopId, { after, limit: pageMax }), {
        reading: true,
      });
    const tail = this.#shops.get(shopId) ?? new ShopTail(read, from);
    this.#shops.set(shopId, tail);
    tail.followers += 1;
    return {
      after: (seq: number) => tail.after(seq),
      leave: () => {
        tail.followers -= 1;
        if (tail.followers === 0) this.#shops.delete(shopId);
      },
    };
  }
}
