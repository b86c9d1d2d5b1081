import { openDatabase } from '@flitchbook/db';
import type { CuttingDay } from '@flitchbook/plan';
import type { Services } from '../../apps/api/src/services/ctx.ts';
import { claimDayOf } from '../../apps/api/src/services/reservations/claim-day.ts';
import type { SolvePool } from '../../apps/api/src/solve/solve-pool.ts';
import { type Below, oneRound, type RoundWish, type Shop, type Tally } from './claim-rounds.ts';
import { seededBelow } from './seeded.ts';
import {
  chop,
  openDayOn,
  openMigrated,
  openProcess,
  openShopOn,
  readDay,
  startSolver,
  tenderloin,
} from './shop-on-postgres.ts';
import { type SlowWire, stretchWire } from './slow-wire.ts';

export interface RoundsWish {
  readonly url: string;
  readonly seed: number;
  readonly rounds: number;
  readonly buyers: number;
  /** longest that a packet is held back, milliseconds */
  readonly delayMs: number;
}

export interface RoundsReport {
  readonly seed: number;
  readonly rounds: number;
  readonly attempts: number;
  readonly accepted: number;
  readonly refused: number;
  readonly retries: number;
  /** rounds in which as many were accepted as there was room for, and no more */
  readonly exact: number;
  readonly faults: readonly string[];
  readonly seconds: number;
}

/** Two processes of the service, each on a wire of its own that holds every tenth packet back. */
export async function openTown(url: string, below: Below, delayMs: number) {
  const db = await openMigrated(url, 4);
  const solver = startSolver(1);
  const errors: unknown[] = [];
  const wires: SlowWire[] = [];
  const processes: Services[] = [];
  for (let nth = 0; nth < 2; nth++) {
    const wire = await stretchWire(url, () => (below(10) === 0 ? below(delayMs + 1) : 0));
    wires.push(wire);
    const over = await openDatabase({ engine: 'postgres', url: wire.url, connections: 10 });
    processes.push(openProcess(over, solver, errors));
  }
  const shop: Shop = { shopId: await openShopOn(db), db, processes };
  const close = async (): Promise<void> => {
    await solver.close();
    for (const process of processes) await process.db.close();
    for (const wire of wires) await wire.close();
    await db.close();
  };
  return { shop, solver, errors, close };
}

/** Lines that share nothing but their shape, and a day they are asked of. What there is room for is from 1 to some 40. */
function drawRound(below: Below, buyers: number): RoundWish {
  const hog = { grams: 70_000 + below(30_000) };
  const um = 12_000 + 50 * below(1000);
  switch (below(4)) {
    case 0:
      return { hogs: Array.from({ length: 1 + below(4) }, () => hog), buyers, line: tenderloin() };
    case 1:
      return { hogs: [hog], buyers, line: chop('t-bone-chop', um) };
    default:
      return { hogs: [hog], buyers, line: chop('rib-chop', um) };
  }
}

/** Most that a day can give of a line with nothing else asked for: a solve of its own, to the end. */
async function roomFor(shop: Shop, solver: SolvePool, wish: RoundWish): Promise<number> {
  const dayId = await openDayOn(shop.db, shop.shopId, wish.hogs);
  const { stored } = await readDay(shop.db, shop.shopId, dayId);
  const asked = {
    ...wish.line,
    lineId: 'all-of-it',
    orderId: 'order',
    owner: 'everybody',
    speciesId: 'hog',
    ask: { pieces: 400 },
    rank: 'promised' as const,
    priceMinorPerKg: 1000,
    sameAnimal: false,
    substitutes: [],
  } as unknown as CuttingDay['lines'][number];
  const claimed = { lineIds: new Set(['all-of-it']), shareIds: new Set<string>() };
  const nothing = { lineIds: new Set<string>(), shareIds: new Set<string>() };
  const question = claimDayOf({ ...stored.cuttingDay, lines: [asked] }, null, nothing, claimed);
  const answer = await solver.solve(question.day, { deadlineSeconds: 10, gap: 0, seed: 1 });
  if (!answer.ok || answer.plan.proof?.status !== 'optimal') throw new Error('the room is not known');
  return answer.plan.lines[0]?.filled ?? 0;
}

/** Rounds of many buyers for few units. */
export async function runRounds(wish: RoundsWish): Promise<RoundsReport> {
  const began = performance.now();
  const below = seededBelow(wish.seed);
  const town = await openTown(wish.url, seededBelow(wish.seed + 1), wish.delayMs);
  const tallies: Tally[] = [];
  const faults: string[] = [];
  let exact = 0;
  try {
    for (let round = 0; round < wish.rounds; round++) {
      const drawn = drawRound(below, wish.buyers);
      const room = await roomFor(town.shop, town.solver, drawn);
      const { tally, faults: found } = await oneRound(town.shop, drawn, below);
      tallies.push(tally);
      const due = Math.min(wish.buyers, room);
      if (tally.accepted === due && tally.refused === wish.buyers - due) exact += 1;
      else
        faults.push(`round ${round}: ${tally.accepted} accepted, ${tally.refused} refused, room for ${room}`);
      faults.push(...found.map((says) => `round ${round}: ${says}`));
    }
  } finally {
    await town.close();
  }
  const sum = (pick: (tally: Tally) => number): number =>
    tallies.reduce((total, tally) => total + pick(tally), 0);
  return {
    seed: wish.seed,
    rounds: wish.rounds,
    attempts: wish.rounds * wish.buyers,
    accepted: sum(({ accepted }) => accepted),
    refused: sum(({ refused }) => refused),
    retries: sum(({ retries }) => retries),
    exact,
    faults: [...faults, ...town.errors.map((entry) => JSON.stringify(entry))],
    seconds: Math.round((performance.now() - began) / 1000),
  };
}
