import type { CarcassShare, DemandLine } from '@flitchbook/plan';
import { and, asc, eq, inArray, type SQL, sql } from 'drizzle-orm';
import type { Tx } from '../database.ts';
import { handleOf } from '../engines/engine.ts';
import { carcassShares, cuttingDays, orderLines, orders } from '../schema/index.ts';
import { nextNumber } from './counters.ts';
import type { Beginning, NewLine, NewOrder, NewShare, OrderRecord, TouchedDay } from './shapes.ts';

type OrderRow = typeof orders.$inferSelect;
type Owned = { readonly shopId: string; readonly orderId: string };

const lineRow = (order: Owned, line: NewLine, place: number): typeof orderLines.$inferInsert => ({
  ...order,
  place,
  lineId: line.lineId,
  speciesId: line.speciesId,
  cut: line.cut,
  portion: line.portion,
  askPieces: 'pieces' in line.ask ? line.ask.pieces : null,
  askGrams: 'grams' in line.ask ? line.ask.grams : null,
  rank: line.rank,
  priceMinorPerKg: line.priceMinorPerKg,
  sameAnimal: line.sameAnimal,
  onlyAnimal: line.onlyAnimal ?? null,
  onlyHand: line.onlyHand ?? null,
  substitutes: [...line.substitutes],
});

const lineFrom = (row: typeof orderLines.$inferSelect, owner: string): DemandLine => ({
  lineId: row.lineId,
  orderId: row.orderId,
  owner,
  speciesId: row.speciesId,
  cut: row.cut,
  portion: row.portion,
  // The database holds exactly one of the two.
  ask: row.askPieces === null ? { grams: row.askGrams ?? 0 } : { pieces: row.askPieces },
  rank: row.rank,
  priceMinorPerKg: row.priceMinorPerKg,
  sameAnimal: row.sameAnimal,
  ...(row.onlyAnimal !== null && { onlyAnimal: row.onlyAnimal }),
  ...(row.onlyHand !== null && { onlyHand: row.onlyHand }),
  substitutes: row.substitutes,
});

const shareRow = (order: Owned, share: NewShare, place: number): typeof carcassShares.$inferInsert => ({
  ...order,
  place,
  shareId: share.shareId,
  speciesId: share.speciesId,
  size: share.size,
  rank: share.rank,
  priceMinorPerKg: share.priceMinorPerKg,
  onlyAnimal: share.onlyAnimal ?? null,
  instructions: share.instructions,
});

const shareFrom = (row: typeof carcassShares.$inferSelect, owner: string): CarcassShare => ({
  shareId: row.shareId,
  orderId: row.orderId,
  owner,
  speciesId: row.speciesId,
  size: row.size,
  rank: row.rank,
  priceMinorPerKg: row.priceMinorPerKg,
  ...(row.onlyAnimal !== null && { onlyAnimal: row.onlyAnimal }),
  instructions: row.instructions,
});

function orderFrom(
  row: OrderRow,
  lines: readonly (typeof orderLines.$inferSelect)[],
  shares: readonly (typeof carcassShares.$inferSelect)[],
): OrderRecord {
  const { orderId, dayId, number, owner, personId, note, state, assured, depositMinor, version } = row;
  return {
    orderId,
    dayId,
    number,
    owner,
    personId,
    note,
    state,
    assured,
    heldUntil: row.heldUntil?.toISOString() ?? null,
    depositMinor,
    version,
    placedAt: row.placedAt.toISOString(),
    lines: lines.filter((line) => line.orderId === orderId).map((line) => lineFrom(line, owner)),
    shares: shares.filter((share) => share.orderId === orderId).map((share) => shareFrom(share, owner)),
  };
}

/** Orders that the plan of their day serves. */
export const isServed = ({ state }: Pick<OrderRecord, 'state'>): boolean =>
  state === 'standing' || state === 'held';

async function readOrders(tx: Tx, shopId: string, which: SQL): Promise<readonly OrderRecord[]> {
  const handle = handleOf(tx);
  const found = await handle
    .select()
    .from(orders)
    .where(and(eq(orders.shopId, shopId), which))
    .orderBy(asc(orders.number));
  if (found.length === 0) return [];
  const ids = found.map((row) => row.orderId);
  const lines = await handle
    .select()
    .from(orderLines)
    .where(and(eq(orderLines.shopId, shopId), inArray(orderLines.orderId, ids)))
    .orderBy(asc(orderLines.orderId), asc(orderLines.place));
  const shares = await handle
    .select()
    .from(carcassShares)
    .where(and(eq(carcassShares.shopId, shopId), inArray(carcassShares.orderId, ids)))
    .orderBy(asc(carcassShares.orderId), asc(carcassShares.place));
  return found.map((row) => orderFrom(row, lines, shares));
}

const inSeconds = (seconds: number): SQL => sql`now() + make_interval(secs => ${seconds})`;

const heldColumns = ({ holdSeconds, depositMinor }: { holdSeconds: number; depositMinor: number }) => ({
  state: 'held' as const,
  assured: true,
  heldUntil: inSeconds(holdSeconds),
  depositMinor,
});

const beginningColumns = (beginning: Beginning) =>
  beginning.state === 'held' ? heldColumns(beginning) : beginning;

/** @throws ConstraintViolation orders_one_per_id, order_lines_one_per_id, order_lines_animal_known, ... and the limits */
export async function addOrder(
  tx: Tx,
  day: TouchedDay,
  order: NewOrder,
  beginning: Beginning = { state: 'standing', assured: false },
): Promise<{ readonly number: number }> {
  const { shopId, dayId } = day;
  const { orderId, owner, personId, note, lines, shares } = order;
  const handle = handleOf(tx);
  const number = await nextNumber(tx, shopId, 'order');
  const common = { shopId, dayId, orderId, number, owner, personId, note };
  await handle.insert(orders).values({ ...common, ...beginningColumns(beginning) });
  const own = { shopId, orderId };
  if (lines.length > 0) {
    await handle.insert(orderLines).values(lines.map((line, place) => lineRow(own, line, place)));
  }
  if (shares.length > 0) {
    await handle.insert(carcassShares).values(shares.map((share, place) => shareRow(own, share, place)));
  }
  return { number };
}

/** A cancelled order keeps its number and lines; it is planned no more. */
export async function cancelOrder(
  tx: Tx,
  day: TouchedDay,
  order: { readonly orderId: string; readonly version: number },
): Promise<'cancelled' | 'already' | 'stale' | 'unknown'> {
  const { orderId, version } = order;
  const handle = handleOf(tx);
  const thisOrder = and(
    eq(orders.shopId, day.shopId),
    eq(orders.dayId, day.dayId),
    eq(orders.orderId, orderId),
  );
  const cancelled = await handle
    .update(orders)
    .set({ state: 'cancelled', assured: false, version: version + 1 })
    .where(and(thisOrder, eq(orders.version, version), eq(orders.state, 'standing')))
    .returning({ orderId: orders.orderId });
  if (cancelled.length > 0) return 'cancelled';
  const [found] = await handle.select({ state: orders.state }).from(orders).where(thisOrder);
  if (!found) return 'unknown';
  return found.state === 'cancelled' ? 'already' : 'stale';
}

/** From one state to another: everything that can become of a hold or a place in the queue. */
export type Passage =
  | { readonly to: 'standing' }
  | { readonly to: 'lapsed' }
  | { readonly to: 'released' }
  /** a hold that the day can no longer keep: it keeps its number, and with it its turn */
  | { readonly to: 'queued' }
  | { readonly to: 'held'; readonly holdSeconds: number; readonly depositMinor: number };

function passageColumns(passage: Passage) {
  switch (passage.to) {
    case 'held':
      return heldColumns(passage);
    case 'standing':
      return { state: passage.to, assured: true, heldUntil: null };
    default:
      return { state: passage.to, assured: false, heldUntil: null };
  }
}

/** Where a passage may begin. The database's clock alone says whether a hold has lapsed. */
const mayPass = (to: Passage['to']): SQL | undefined => {
  switch (to) {
    case 'standing':
      return and(eq(orders.state, 'held'), sql`${orders.heldUntil} > now()`);
    case 'lapsed':
      return and(eq(orders.state, 'held'), sql`${orders.heldUntil} <= now()`);
    case 'queued':
      return eq(orders.state, 'held');
    case 'released':
      return inArray(orders.state, ['held', 'queued']);
    case 'held':
      return eq(orders.state, 'queued');
  }
};

/**
 * Moves an order on, once: whoever comes second finds it moved.
 * @returns its new version; undefined, and nothing changed, where it is not where the passage begins
 */
export async function passOrder(
  tx: Tx,
  day: TouchedDay,
  order: { readonly orderId: string; readonly version?: number | undefined },
  passage: Passage,
): Promise<number | undefined> {
  const [passed] = await handleOf(tx)
    .update(orders)
    .set({ ...passageColumns(passage), version: sql`${orders.version} + 1` })
    .where(
      and(
        eq(orders.shopId, day.shopId),
        eq(orders.dayId, day.dayId),
        eq(orders.orderId, order.orderId),
        order.version === undefined ? undefined : eq(orders.version, order.version),
        mayPass(passage.to),
      ),
    )
    .returning({ version: orders.version });
  return passed?.version;
}

/**
 * Gives a hold that stands its full time anew, but never past so many seconds from when the order was placed. By the
 * database's clock alone.
 * @returns its new version; undefined where it is not held, or not any more
 */
export async function holdLonger(
  tx: Tx,
  day: TouchedDay,
  orderId: string,
  { holdSeconds, longestSeconds }: { readonly holdSeconds: number; readonly longestSeconds: number },
): Promise<number | undefined> {
  const latest = sql`${orders.placedAt} + make_interval(secs => ${longestSeconds})`;
  const [held] = await handleOf(tx)
    .update(orders)
    .set({
      heldUntil: sql`greatest(${orders.heldUntil}, least(${inSeconds(holdSeconds)}, ${latest}))`,
      version: sql`${orders.version} + 1`,
    })
    .where(
      and(
        eq(orders.shopId, day.shopId),
        eq(orders.dayId, day.dayId),
        eq(orders.orderId, orderId),
        eq(orders.state, 'held'),
        sql`${orders.heldUntil} > now()`,
      ),
    )
    .returning({ version: orders.version });
  return held?.version;
}

/** Standing orders that the plan covers now, or does not cover any more. */
export async function setAssured(
  tx: Tx,
  day: Pick<TouchedDay, 'shopId' | 'dayId'>,
  orderIds: readonly string[],
  assured: boolean,
): Promise<void> {
  if (orderIds.length === 0) return;
  await handleOf(tx)
    .update(orders)
    .set({ assured })
    .where(
      and(
        eq(orders.shopId, day.shopId),
        eq(orders.dayId, day.dayId),
        inArray(orders.orderId, [...orderIds]),
        eq(orders.state, 'standing'),
      ),
    );
}

/** Holds of a shop that the database's clock says have lapsed, by day, oldest order first. */
export async function listLapsed(
  tx: Tx,
  shopId: string,
  dayId?: string,
): Promise<readonly { readonly dayId: string; readonly orderId: string }[]> {
  return await handleOf(tx)
    .select({ dayId: orders.dayId, orderId: orders.orderId })
    .from(orders)
    .where(
      and(
        eq(orders.shopId, shopId),
        dayId === undefined ? undefined : eq(orders.dayId, dayId),
        sql`${orders.heldUntil} <= now()`,
      ),
    )
    .orderBy(asc(orders.dayId), asc(orders.number));
}

/** Closed days on which somebody still waits in the queue. */
export async function listDaysWaitedForInVain(tx: Tx, shopId: string): Promise<readonly string[]> {
  const found = await handleOf(tx)
    .selectDistinct({ dayId: orders.dayId })
    .from(orders)
    .innerJoin(cuttingDays, and(eq(cuttingDays.shopId, orders.shopId), eq(cuttingDays.dayId, orders.dayId)))
    .where(and(eq(orders.shopId, shopId), eq(orders.state, 'queued'), eq(cuttingDays.state, 'closed')))
    .orderBy(asc(orders.dayId));
  return found.map(({ dayId }) => dayId);
}

/** Every order of the day, cancelled ones too, by number. */
export async function listOrders(tx: Tx, shopId: string, dayId: string): Promise<readonly OrderRecord[]> {
  return await readOrders(tx, shopId, eq(orders.dayId, dayId));
}

/** Of one customer, by number. */
export async function listOrdersOf(
  tx: Tx,
  shopId: string,
  personId: string,
): Promise<readonly OrderRecord[]> {
  return await readOrders(tx, shopId, eq(orders.personId, personId));
}

export async function findOrder(tx: Tx, shopId: string, orderId: string): Promise<OrderRecord | undefined> {
  const [order] = await readOrders(tx, shopId, eq(orders.orderId, orderId));
  return order;
}
