import type { DayAnimal } from '@flitchbook/plan';
import { and, asc, eq, sql } from 'drizzle-orm';
import type { Tx } from '../database.ts';
import { handleOf } from '../engines/engine.ts';
import { animals, cuttingDays, orders, plans } from '../schema/index.ts';
import { listAnimals } from './animals.ts';
import { listLocks } from './locks.ts';
import { isServed, listOrders } from './orders.ts';
import type { AnimalRecord, DayRecord, DaySummary, NewDay, StoredDay, Touch, TouchedDay } from './shapes.ts';

const thisDay = (shopId: string, dayId: string) =>
  and(eq(cuttingDays.shopId, shopId), eq(cuttingDays.dayId, dayId));

const planOfDay = and(eq(plans.shopId, cuttingDays.shopId), eq(plans.dayId, cuttingDays.dayId));

/** @throws ConstraintViolation cutting_days_one_per_date, cutting_days_one_per_id */
export async function createDay(tx: Tx, day: NewDay): Promise<void> {
  await handleOf(tx).insert(cuttingDays).values(day);
}

/** By date. */
export async function listDays(tx: Tx, shopId: string): Promise<readonly DaySummary[]> {
  return await handleOf(tx)
    .select({
      dayId: cuttingDays.dayId,
      date: cuttingDays.date,
      state: cuttingDays.state,
      version: cuttingDays.version,
      plannedVersion: cuttingDays.plannedVersion,
      animals: sql<number>`(select count(*)::int from ${animals} where ${animals.shopId} = ${cuttingDays.shopId} and ${animals.dayId} = ${cuttingDays.dayId})`,
      orders: sql<number>`(select count(*)::int from ${orders} where ${orders.shopId} = ${cuttingDays.shopId} and ${orders.dayId} = ${cuttingDays.dayId} and ${orders.state} in ('standing', 'held'))`,
      shortLines: plans.shortLines,
    })
    .from(cuttingDays)
    .leftJoin(plans, planOfDay)
    .where(eq(cuttingDays.shopId, shopId))
    .orderBy(asc(cuttingDays.date));
}

export async function findDay(tx: Tx, shopId: string, dayId: string): Promise<DayRecord | undefined> {
  const [found] = await handleOf(tx)
    .select({ day: cuttingDays, madeAt: plans.madeAt })
    .from(cuttingDays)
    .leftJoin(plans, planOfDay)
    .where(thisDay(shopId, dayId));
  if (!found) return undefined;
  const { date, tools, counter, state, version, plannedVersion } = found.day;
  const plannedAt = found.madeAt?.toISOString() ?? null;
  const customersUntil = found.day.customersUntil?.toISOString() ?? null;
  return { shopId, dayId, date, tools, counter, state, customersUntil, version, plannedVersion, plannedAt };
}

const dayAnimal = (animal: AnimalRecord): DayAnimal => ({
  animalId: animal.animalId,
  name: animal.name,
  speciesId: animal.speciesId,
  lostItems: animal.lostItems,
  sides: animal.sides.map(({ sideId, hand, massMg, lostParts }) => ({
    sideId,
    animalId: animal.animalId,
    hand,
    massMg,
    carcassGrams: animal.hanging.grams,
    ribs: animal.ribs,
    facts: animal.facts,
    lostParts,
  })),
});

/** Call it with `reading: true`: several reads that must see one state. */
export async function loadCuttingDay(tx: Tx, shopId: string, dayId: string): Promise<StoredDay | undefined> {
  const day = await findDay(tx, shopId, dayId);
  if (!day) return undefined;
  const booked = await listAnimals(tx, shopId, dayId);
  const taken = await listOrders(tx, shopId, dayId);
  const served = taken.filter(isServed);
  const cuttingDay = {
    dayId,
    date: day.date,
    animals: booked.map(dayAnimal),
    lines: served.flatMap((order) => order.lines),
    shares: served.flatMap((order) => order.shares),
    locks: await listLocks(tx, shopId, dayId),
    tools: day.tools,
    counter: day.counter,
  };
  return { day, cuttingDay, animals: booked, orders: taken };
}

/**
 * Locks the day and raises its version: first of all in every unit that changes a day.
 * A closed day takes no orders; `evenClosed` is for what is still settled then: animals, locks.
 */
export async function touchDay(
  tx: Tx,
  touch: {
    readonly shopId: string;
    readonly dayId: string;
    readonly ifVersion?: number | undefined;
    readonly evenClosed?: boolean;
  },
): Promise<Touch> {
  const { shopId, dayId, ifVersion, evenClosed = false } = touch;
  const handle = handleOf(tx);
  const [touched] = await handle
    .update(cuttingDays)
    .set({ version: sql`${cuttingDays.version} + 1` })
    .where(
      and(
        thisDay(shopId, dayId),
        ifVersion === undefined ? undefined : eq(cuttingDays.version, ifVersion),
        evenClosed ? undefined : eq(cuttingDays.state, 'open'),
      ),
    )
    .returning({ version: cuttingDays.version });
  if (touched) return { outcome: 'touched', day: { shopId, dayId, version: touched.version } };
  const [found] = await handle
    .select({ state: cuttingDays.state, version: cuttingDays.version })
    .from(cuttingDays)
    .where(thisDay(shopId, dayId));
  if (!found) return { outcome: 'unknown' };
  if (found.state === 'closed' && !evenClosed) return { outcome: 'closed' };
  return { outcome: 'stale', version: found.version };
}

/** Customers may ask until then: null is until the day is closed. */
export async function setCustomersUntil(tx: Tx, day: TouchedDay, until: Date | null): Promise<void> {
  await handleOf(tx).update(cuttingDays).set({ customersUntil: until }).where(thisDay(day.shopId, day.dayId));
}

/** By the database's clock. */
const openToCustomers = and(
  eq(cuttingDays.state, 'open'),
  sql`coalesce(${cuttingDays.customersUntil} > now(), true)`,
);

export async function isOpenToCustomers(tx: Tx, shopId: string, dayId: string): Promise<boolean> {
  const [found] = await handleOf(tx)
    .select({ dayId: cuttingDays.dayId })
    .from(cuttingDays)
    .where(and(thisDay(shopId, dayId), openToCustomers));
  return found !== undefined;
}

/** Days that customers may ask for something of, by date; until when: an ISO instant, null until the day is closed. */
export async function listDaysOpenToCustomers(
  tx: Tx,
  shopId: string,
): Promise<
  readonly { readonly dayId: string; readonly date: string; readonly customersUntil: string | null }[]
> {
  const found = await handleOf(tx)
    .select({
      dayId: cuttingDays.dayId,
      date: cuttingDays.date,
      customersUntil: cuttingDays.customersUntil,
    })
    .from(cuttingDays)
    .where(and(eq(cuttingDays.shopId, shopId), openToCustomers))
    .orderBy(asc(cuttingDays.date));
  return found.map((day) => ({ ...day, customersUntil: day.customersUntil?.toISOString() ?? null }));
}

/** No more orders. @returns false when the version is stale or the day is closed already */
export async function closeDay(
  tx: Tx,
  day: { readonly shopId: string; readonly dayId: string; readonly version: number },
): Promise<boolean> {
  const closed = await handleOf(tx)
    .update(cuttingDays)
    .set({ state: 'closed', version: day.version + 1 })
    .where(
      and(
        thisDay(day.shopId, day.dayId),
        eq(cuttingDays.version, day.version),
        eq(cuttingDays.state, 'open'),
      ),
    )
    .returning({ dayId: cuttingDays.dayId });
  return closed.length > 0;
}
