import { isDeepStrictEqual } from 'node:util';
import { type Database, forShop, inTransaction, listLedger, type OrderRecord } from '@flitchbook/db';
import type { Outcome } from '../../apps/api/src/refusals.ts';
import type { Services } from '../../apps/api/src/services/ctx.ts';
import type { OnceAnswer, OnceKey } from '../../apps/api/src/services/once.ts';
import { takeOrder } from '../../apps/api/src/services/orders/take.ts';
import { holdOrder } from '../../apps/api/src/services/reservations/hold.ts';
import { ownThread } from '../../apps/api/src/testing/own-thread.ts';
import { seededBelow, shuffled } from './seeded.ts';
import { atCounter, newId, openDayOn, openProcess, openShopOn, readDay } from './shop-on-postgres.ts';

type Answer = Outcome<OnceAnswer<OrderRecord>>;

interface StormWish {
  readonly requests: number;
  readonly seed: number;
  /** sent and not yet answered, at most */
  readonly atOnce: number;
}

interface StormReport extends StormWish {
  readonly sends: number;
  /** answers that whoever sent never saw */
  readonly lostReplies: number;
  readonly replayed: number;
  /** told that a twin was still at it */
  readonly stillRunning: number;
  /** keys that came with another request, and were refused for it */
  readonly reused: number;
  readonly faults: readonly string[];
  readonly seconds: number;
}

interface Request {
  readonly owner: string;
  readonly dayId: string;
  readonly send: (otherwise?: boolean) => Promise<Answer>;
  seen: OrderRecord | undefined;
}

// Requests of one day wait for each other; a shop's day has some dozens of orders.
const requestsOfDay = 20;
const hog = { grams: 80_000, lostParts: ['side'] };
const again = ['idempotency.still-running', 'reservation.contended', 'server.busy'];

class Storm {
  readonly #shopId: string;
  readonly #processes: readonly Services[];
  readonly #below: (count: number) => number;
  readonly #wish: StormWish;
  readonly #faults: string[] = [];
  #sends = 0;
  #lost = 0;
  #replayed = 0;
  #running = 0;
  #reused = 0;

  constructor(wish: StormWish, shopId: string, processes: readonly Services[]) {
    this.#wish = wish;
    this.#shopId = shopId;
    this.#processes = processes;
    this.#below = seededBelow(wish.seed);
  }

  /** One in five holds the heart of a hog, the others are orders that the counter writes down. */
  request(dayId: string, nth: number): Request {
    const owner = `Sender ${nth}`;
    const isHold = nth % 5 === 0;
    const route = isHold ? 'holds' : 'orders';
    const line = { cut: isHold ? 'heart' : 'liver', portion: { by: 'whole' as const }, ask: { pieces: 1 } };
    const key = { key: newId(), route, status: 201 as const };
    const send = (otherwise = false): Promise<Answer> => {
      const process = this.#processes[this.#below(this.#processes.length)] as Services;
      const ctx = atCounter(process, this.#shopId);
      const order = { owner, note: otherwise ? 'Another request' : '', shares: [] };
      const held = { ...order, lines: [line], orQueue: true };
      const taken = { ...order, lines: [{ ...line, rank: 'wished' as const }] };
      const once: OnceKey = { ...key, request: [dayId, isHold ? held : taken] };
      return isHold ? holdOrder(ctx, { dayId, input: held, key: once }) : takeOrder(ctx, dayId, taken, once);
    };
    return { owner, dayId, send, seen: undefined };
  }

  /** Sends once. Half of the answers never reach whoever sent. */
  async deliver(request: Request, isSafe = false): Promise<boolean> {
    this.#sends += 1;
    const answer = await request.send();
    if (!answer.ok) {
      if (answer.type === 'idempotency.still-running') this.#running += 1;
      if (!again.includes(answer.type)) this.#faults.push(`${request.owner}: ${answer.type}`);
      return false;
    }
    if (answer.value.replayed) this.#replayed += 1;
    if (!isSafe && this.#below(2) === 0) {
      this.#lost += 1;
      return false;
    }
    const body = JSON.parse(JSON.stringify(answer.value.body)) as OrderRecord;
    if (request.seen && !isDeepStrictEqual(request.seen, body))
      this.#faults.push(`${request.owner}: two answers to one request`);
    request.seen ??= body;
    return true;
  }

  async run(requests: readonly Request[]): Promise<void> {
    const copies = requests.flatMap((request) => Array<Request>(1 + this.#below(5)).fill(request));
    const waiting = shuffled(copies, this.#below);
    const work = async (): Promise<void> => {
      for (let next = waiting.pop(); next; next = waiting.pop()) await this.deliver(next);
    };
    await Promise.all(Array.from({ length: this.#wish.atOnce }, work));
    // Whoever never saw an answer goes on until there is one.
    for (const request of requests) {
      for (let tries = 0; !request.seen && tries < 50; tries++) await this.deliver(request, true);
      if (!request.seen) this.#faults.push(`${request.owner}: never answered`);
    }
    for (const request of requests.filter((_, nth) => nth % 10 === 0)) {
      const answer = await request.send(true);
      if (!answer.ok && answer.type === 'idempotency.key-reused') this.#reused += 1;
      else this.#faults.push(`${request.owner}: a key served two requests`);
    }
  }

  /** One order and one entry in the ledger for each request, and the order is the one that was answered. */
  async check(db: Database, requests: readonly Request[]): Promise<void> {
    for (const dayId of new Set(requests.map((request) => request.dayId))) {
      const { stored } = await readDay(db, this.#shopId, dayId);
      const mine = requests.filter((request) => request.dayId === dayId);
      if (stored.orders.length !== mine.length)
        this.#faults.push(`${dayId}: ${stored.orders.length} orders of ${mine.length} requests`);
      for (const { owner, seen } of mine) {
        const kept = stored.orders.filter((order) => order.owner === owner).map(({ orderId }) => orderId);
        if (kept.length !== 1 || kept[0] !== seen?.orderId)
          this.#faults.push(`${owner}: answered ${seen?.orderId}, kept ${kept.join(', ') || 'nothing'}`);
      }
    }
    const kinds = ['order.taken', 'order.held', 'order.queued'];
    const entries = await inTransaction(forShop(db, this.#shopId), (tx) =>
      listLedger(tx, this.#shopId, { after: 0, limit: 100_000 }),
    );
    const effects = entries.filter(({ kind }) => kinds.includes(kind)).length;
    if (effects !== requests.length)
      this.#faults.push(`${effects} entries in the ledger of ${requests.length} requests`);
    if (entries.some(({ seq }, place) => seq !== place + 1)) this.#faults.push('the ledger has a gap');
  }

  report(seconds: number): StormReport {
    return {
      ...this.#wish,
      sends: this.#sends,
      lostReplies: this.#lost,
      replayed: this.#replayed,
      stillRunning: this.#running,
      reused: this.#reused,
      faults: this.#faults,
      seconds,
    };
  }
}

/** Requests that are each sent up to five times and more, in any order, through two processes, with half of the replies lost. */
export async function stormOfKeys(db: Database, wish: StormWish): Promise<StormReport> {
  const began = performance.now();
  const shopId = await openShopOn(db);
  const storm = new Storm(wish, shopId, [openProcess(db, ownThread), openProcess(db, ownThread)]);
  const requests: Request[] = [];
  while (requests.length < wish.requests) {
    const dayId = await openDayOn(db, shopId, [hog, hog, hog, hog]);
    const many = Math.min(requestsOfDay, wish.requests - requests.length);
    for (let nth = 0; nth < many; nth++) requests.push(storm.request(dayId, requests.length));
  }
  await storm.run(requests);
  await storm.check(db, requests);
  return storm.report(Math.round((performance.now() - began) / 1000));
}
