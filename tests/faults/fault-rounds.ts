import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { createDatabase, freshName, type OwnPostgres, startOwnPostgres } from '@flitchbook/test-harness';
import { seededBelow } from '../concurrency/seeded.ts';
import { CounterHand } from './counter-hand.ts';
import { ServiceProcess } from './service-process.ts';

export const faults = ['kill-service', 'kill-postgres', 'freeze-postgres'] as const;
type Fault = (typeof faults)[number];

interface FaultsWish {
  readonly fault: Fault;
  readonly rounds: number;
  readonly seed: number;
}

interface FaultsReport extends FaultsWish {
  readonly acknowledged: number;
  /** sent, and no answer 201 came */
  readonly unknown: number;
  /** acknowledged and not there, or there twice, or there and never sent */
  readonly faults: readonly string[];
  /** times that the service ended by itself */
  readonly exits: number;
  /** longest that a request took to be answered or given up, milliseconds */
  readonly slowestMs: number;
  readonly seconds: number;
}

const hands = 4;

class Rounds {
  readonly #server: OwnPostgres;
  readonly #environment: Readonly<Record<string, string>>;
  readonly #below: (count: number) => number;
  readonly #fault: Fault;
  readonly found: string[] = [];
  #service: ServiceProcess;
  #address = '';
  acknowledged = 0;
  unknown = 0;
  exits = 0;
  slowestMs = 0;

  constructor(server: OwnPostgres, environment: Readonly<Record<string, string>>, wish: FaultsWish) {
    this.#server = server;
    this.#environment = environment;
    this.#below = seededBelow(wish.seed);
    this.#fault = wish.fault;
    this.#service = new ServiceProcess(environment);
  }

  async #doHarm(): Promise<void> {
    await sleep(this.#below(200));
    if (this.#fault === 'kill-service') {
      await this.#service.end('SIGKILL');
      this.#service = new ServiceProcess(this.#environment);
      this.#address = await this.#service.ready();
      return;
    }
    if (this.#fault === 'kill-postgres') {
      await this.#server.crash();
      await sleep(this.#below(500));
      await this.#server.revive();
      return;
    }
    this.#server.freeze();
    await sleep(300 + this.#below(2500));
    this.#server.thaw();
  }

  /** It ended though nobody ended it. */
  #exited = (): boolean => this.#service.child.exitCode !== null || this.#service.child.signalCode !== null;

  async #untilReady(): Promise<void> {
    const deadline = performance.now() + 30_000;
    while (performance.now() < deadline) {
      const answer = await fetch(`${this.#address}/ready`).catch(() => undefined);
      await answer?.arrayBuffer();
      if (answer?.status === 200) return;
      await sleep(50);
    }
    throw new Error('the service did not become ready again');
  }

  async #resend(hand: CounterHand, dayId: string): Promise<void> {
    for (const order of hand.unknown) {
      let status = 0;
      for (let tries = 0; tries < 20 && status !== 201; tries++) {
        const answer = await hand.send(dayId, order);
        await answer.arrayBuffer();
        status = answer.status;
        if (status !== 201) await sleep(200);
      }
      if (status !== 201) this.found.push(`${order.owner}: sent again, answered ${status}`);
    }
  }

  async #check(hand: CounterHand, dayId: string, round: number): Promise<void> {
    const kept = (await hand.orders(dayId)).map(({ orderId }) => orderId);
    const sent = [...hand.acknowledged, ...hand.unknown].map(({ orderId }) => orderId);
    const lost = sent.filter((orderId) => !kept.includes(orderId));
    const strange = kept.filter((orderId) => !sent.includes(orderId));
    if (lost.length > 0) this.found.push(`round ${round}: ${lost.length} lost`);
    if (strange.length > 0) this.found.push(`round ${round}: ${strange.length} that nobody sent`);
    if (new Set(kept).size !== kept.length) this.found.push(`round ${round}: an order is there twice`);
  }

  async run(rounds: number): Promise<void> {
    this.#address = await this.#service.ready();
    for (let round = 0; round < rounds; round++) {
      const hand = new CounterHand(this.#address);
      await hand.signIn();
      const date = new Date(Date.UTC(2031, 0, 1 + round)).toISOString().slice(0, 10);
      const dayId = await hand.openDay(date);
      const working = Promise.all(Array.from({ length: hands }, (_, nth) => hand.takeOrders(dayId, nth)));
      const deadline = performance.now() + 30_000;
      while (hand.acknowledged.length < 6 && performance.now() < deadline) await sleep(5);
      await this.#doHarm();
      hand.stop();
      await working;
      if (this.#exited()) {
        this.exits += 1;
        this.#service = new ServiceProcess(this.#environment);
        this.#address = await this.#service.ready();
      }
      hand.address = this.#address;
      await this.#untilReady();
      const acknowledged = hand.acknowledged.length;
      await this.#resend(hand, dayId);
      await this.#check(hand, dayId, round);
      this.acknowledged += acknowledged;
      this.unknown += hand.unknown.length;
      this.slowestMs = Math.max(this.slowestMs, Math.round(hand.slowestMs));
    }
  }

  end = () => this.#service.end('SIGKILL');
}

/** Rounds of one fault while orders are taken over HTTP: nothing acknowledged is lost, nothing is there twice. */
export async function runFaults(wish: FaultsWish): Promise<FaultsReport> {
  const began = performance.now();
  const server = await startOwnPostgres();
  if (!server) throw new Error('No Postgres server was found.');
  const home = mkdtempSync(join(tmpdir(), 'flitchbook-rounds-'));
  const url = await createDatabase(server.url, freshName('rounds'));
  const rounds = new Rounds(server, { DATABASE_URL: url, DATA_DIR: home }, wish);
  try {
    await rounds.run(wish.rounds);
  } finally {
    await rounds.end();
    await server.stop();
    rmSync(home, { recursive: true, force: true });
  }
  const { acknowledged, unknown, found, exits, slowestMs } = rounds;
  const seconds = Math.round((performance.now() - began) / 1000);
  return { ...wish, acknowledged, unknown, faults: found, exits, slowestMs, seconds };
}
