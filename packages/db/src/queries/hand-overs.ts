import { and, asc, eq, inArray, sql } from 'drizzle-orm';
import type { Tx } from '../database.ts';
import { handleOf } from '../engines/engine.ts';
import {
  animalClosings,
  calendarFeeds,
  handOverPacks,
  handOvers,
  pickUpSteps,
  pickUps,
} from '../schema/index.ts';
import type { ClosingRecord, NewClosing, NewHandOver, PickUp, PickUpRecord } from './book-shapes.ts';

/** @throws ConstraintViolation hand_over_packs_once: somebody else gave a pack away a moment ago */
export async function addHandOver(tx: Tx, handOver: NewHandOver): Promise<void> {
  const { packs, ...same } = handOver;
  const { shopId, handOverId } = handOver;
  const handle = handleOf(tx);
  await handle.insert(handOvers).values(same);
  await handle.insert(handOverPacks).values(packs.map((pack) => ({ ...pack, shopId, handOverId })));
}

/** One plan for each order; changed by who knows its version. @returns undefined when somebody changed it meanwhile */
export async function setPickUp(
  tx: Tx,
  pickUp: PickUp,
  ifVersion: number | null,
): Promise<number | undefined> {
  const handle = handleOf(tx);
  const row = { ...pickUp, startsAt: new Date(pickUp.startsAt), endsAt: new Date(pickUp.endsAt) };
  if (ifVersion === null) {
    const made = await handle
      .insert(pickUps)
      .values(row)
      .onConflictDoNothing()
      .returning({ version: pickUps.version });
    return made[0]?.version;
  }
  const [changed] = await handle
    .update(pickUps)
    .set({ ...row, version: ifVersion + 1, changedAt: sql`now()` })
    .where(
      and(
        eq(pickUps.shopId, pickUp.shopId),
        eq(pickUps.orderId, pickUp.orderId),
        eq(pickUps.version, ifVersion),
      ),
    )
    .returning({ version: pickUps.version });
  return changed?.version;
}

async function withSteps(
  tx: Tx,
  shopId: string,
  found: readonly (typeof pickUps.$inferSelect)[],
): Promise<readonly PickUpRecord[]> {
  if (found.length === 0) return [];
  const steps = await handleOf(tx)
    .select()
    .from(pickUpSteps)
    .where(
      and(
        eq(pickUpSteps.shopId, shopId),
        inArray(
          pickUpSteps.orderId,
          found.map(({ orderId }) => orderId),
        ),
      ),
    );
  return found.map((row) => ({
    ...row,
    startsAt: row.startsAt.toISOString(),
    endsAt: row.endsAt.toISOString(),
    changedAt: row.changedAt.toISOString(),
    steps: steps.filter(({ orderId }) => orderId === row.orderId).map(({ step }) => step),
  }));
}

export async function findPickUp(tx: Tx, shopId: string, orderId: string): Promise<PickUpRecord | undefined> {
  const found = await handleOf(tx)
    .select()
    .from(pickUps)
    .where(and(eq(pickUps.shopId, shopId), eq(pickUps.orderId, orderId)));
  const [pickUp] = await withSteps(tx, shopId, found);
  return pickUp;
}

/** From an instant on, in their order. */
export async function listPickUps(
  tx: Tx,
  shopId: string,
  from: string,
  limit: number,
): Promise<readonly PickUpRecord[]> {
  const found = await handleOf(tx)
    .select()
    .from(pickUps)
    .where(and(eq(pickUps.shopId, shopId), sql`${pickUps.startsAt} >= ${from}::timestamptz`))
    .orderBy(asc(pickUps.startsAt), asc(pickUps.orderId))
    .limit(limit);
  return withSteps(tx, shopId, found);
}

/** @throws ConstraintViolation pick_up_steps_once */
export async function addPickUpStep(
  tx: Tx,
  step: {
    readonly shopId: string;
    readonly orderId: string;
    readonly step: 'remind' | 'freeze' | 'release';
    readonly doneBy: string | null;
  },
): Promise<void> {
  await handleOf(tx).insert(pickUpSteps).values(step);
}

/** @throws ConstraintViolation animal_closings_once, animal_closings_balance */
export async function addClosing(tx: Tx, closing: NewClosing): Promise<void> {
  await handleOf(tx)
    .insert(animalClosings)
    .values({ ...closing, outs: [...closing.outs] });
}

export async function findClosing(
  tx: Tx,
  shopId: string,
  animalId: string,
): Promise<ClosingRecord | undefined> {
  const [found] = await handleOf(tx)
    .select()
    .from(animalClosings)
    .where(and(eq(animalClosings.shopId, shopId), eq(animalClosings.animalId, animalId)));
  return found && { ...found, closedAt: found.closedAt.toISOString() };
}

export async function addCalendarFeed(
  tx: Tx,
  feed: {
    readonly shopId: string;
    readonly tokenHash: string;
    readonly name: string;
    readonly madeBy: string | null;
  },
): Promise<void> {
  await handleOf(tx).insert(calendarFeeds).values(feed);
}

/** @returns the feed's name, unless there is none or it was taken back */
export async function findCalendarFeed(
  tx: Tx,
  shopId: string,
  tokenHash: string,
): Promise<string | undefined> {
  const [found] = await handleOf(tx)
    .select({ name: calendarFeeds.name, revokedAt: calendarFeeds.revokedAt })
    .from(calendarFeeds)
    .where(and(eq(calendarFeeds.shopId, shopId), eq(calendarFeeds.tokenHash, tokenHash)));
  return found?.revokedAt === null ? found.name : undefined;
}

/** Takes every feed of a person back. */
export async function revokeCalendarFeeds(tx: Tx, shopId: string, madeBy: string): Promise<number> {
  const revoked = await handleOf(tx)
    .update(calendarFeeds)
    .set({ revokedAt: sql`now()` })
    .where(
      and(
        eq(calendarFeeds.shopId, shopId),
        eq(calendarFeeds.madeBy, madeBy),
        sql`${calendarFeeds.revokedAt} is null`,
      ),
    )
    .returning({ tokenHash: calendarFeeds.tokenHash });
  return revoked.length;
}
