import { randomBytes } from 'node:crypto';
import { type NewHold, usualCounter, usualTools } from '@flitchbook/contracts';
import {
  addAnimal,
  createDay,
  createShop,
  type Database,
  forShop,
  inTransaction,
  loadCuttingDay,
  loadPlan,
  migrate,
  openDatabase,
  touchDay,
} from '@flitchbook/db';
import { createIds } from '../../apps/api/src/ids.ts';
import { actAs, type Ctx, type Services } from '../../apps/api/src/services/ctx.ts';
import { KnownOffers } from '../../apps/api/src/services/days/offers.ts';
import { createPasswords } from '../../apps/api/src/services/passwords.ts';
import { DayTurns } from '../../apps/api/src/services/reservations/day-turns.ts';
import { KnownRefusals } from '../../apps/api/src/services/reservations/known-refusals.ts';
import type { DaySolver } from '../../apps/api/src/solve/day-solver.ts';
import { SolvePool } from '../../apps/api/src/solve/solve-pool.ts';

const threadFile = new URL('../../apps/api/src/solve/solve-thread-entry.mjs', import.meta.url);

export const startSolver = (threads: number): SolvePool =>
  new SolvePool({ threads, waitingMax: 500, graceSeconds: 20, threadFile });

const ids = createIds(randomBytes, () => Date.now());
export const newId = (): string => ids.newId();

/** What one process of the service has for itself: connections, turns, proofs. The solver may be shared. */
export function openProcess(db: Database, solver: DaySolver, notes: unknown[] = []): Services {
  return {
    db,
    clock: () => new Date(),
    ids,
    passwords: createPasswords(),
    solver,
    solveLimits: { deadlineSeconds: 2, gap: 0.05, seed: 1 },
    log: (entry) => {
      if (entry.level === 'error') notes.push(entry);
    },
    promises: { turns: new DayTurns(), refusals: new KnownRefusals(), offers: new KnownOffers() },
    shopAddress: 'https://shop.example',
    dayChanged: () => undefined,
  };
}

export const atCounter = (services: Services, shopId: string): Ctx =>
  actAs(services, { shopId, personId: null, role: 'counter' });

export async function openShopOn(db: Database): Promise<string> {
  const shopId = newId();
  const shop = { shopId, name: 'The Long Table', currency: 'EUR', timeZone: 'Europe/Lisbon' };
  await inTransaction(forShop(db, shopId), (tx) =>
    createShop(tx, { ...shop, weightUnit: 'kg', lengthUnit: 'mm' }),
  );
  return shopId;
}

let dates = 0;
/** A date of its own for each day of a run. */
const nextDate = (): string => new Date(Date.UTC(2030, 0, 1 + dates++)).toISOString().slice(0, 10);

export interface HogWish {
  readonly grams: number;
  readonly lostParts?: readonly string[];
}

/** A cutting day with hogs as they hang and nothing asked of them. */
export async function openDayOn(db: Database, shopId: string, hogs: readonly HogWish[]): Promise<string> {
  const dayId = newId();
  await inTransaction(forShop(db, shopId), async (tx) => {
    await createDay(tx, { shopId, dayId, date: nextDate(), tools: usualTools, counter: usualCounter });
    for (const [nth, { grams, lostParts = [] }] of hogs.entries()) {
      const touched = await touchDay(tx, { shopId, dayId });
      if (touched.outcome !== 'touched') throw new Error('the day is not there');
      const side = (hand: 'left' | 'right') => ({
        sideId: newId(),
        hand,
        massMg: grams * 500,
        weight: null,
        lostParts,
      });
      await addAnimal(tx, touched.day, {
        animalId: newId(),
        name: `Hog ${nth + 1}`,
        speciesId: 'hog',
        farmId: null,
        ribs: 15,
        hanging: { text: (grams / 1000).toFixed(3), unit: 'kg', grams },
        hotOrCold: 'cold',
        legalMode: 'for-sale',
        facts: ['skin-on', 'head', 'feet', 'organs'],
        lostItems: [],
        sides: [side('left'), side('right')],
      });
    }
  });
  return dayId;
}

export const readDay = (db: Database, shopId: string, dayId: string) =>
  inTransaction(
    forShop(db, shopId),
    async (tx) => {
      const stored = await loadCuttingDay(tx, shopId, dayId);
      const plan = await loadPlan(tx, shopId, dayId);
      if (!stored) throw new Error('the day is gone');
      return { stored, plan };
    },
    { reading: true },
  );

export async function openMigrated(url: string, connections: number): Promise<Database> {
  const db = await openDatabase({ engine: 'postgres', url, connections });
  await migrate(db);
  return db;
}

type Line = NewHold['lines'][number];

export const tenderloin = (pieces = 1): Line => ({
  cut: 'tenderloin',
  portion: { by: 'whole' },
  ask: { pieces },
});
export const chop = (cut: 'rib-chop' | 't-bone-chop', um: number, pieces = 1): Line => ({
  cut,
  portion: { by: 'thickness', um },
  ask: { pieces },
});

export const holdOf = (lines: readonly Line[], more: Partial<NewHold> = {}): NewHold => ({
  orderId: newId(),
  owner: 'Whoever comes',
  lines,
  shares: [],
  ...more,
});
