import type { CuttingPlan, Owner, SidePlan } from '@flitchbook/plan';
import { and, eq, sql } from 'drizzle-orm';
import type { PgTable } from 'drizzle-orm/pg-core';
import type { Tx } from '../database.ts';
import { handleOf } from '../engines/engine.ts';
import { cuttingDays, planOperations, planPieces, planSides, plans } from '../schema/index.ts';
import type { PlanToStore, StoredPlan, TouchedDay } from './shapes.ts';

type PieceRow = typeof planPieces.$inferInsert;
type Key = { readonly shopId: string; readonly planId: string };

const ownerColumns = (owner: Owner): Pick<PieceRow, 'lineId' | 'shareId'> => ({
  lineId: owner && 'lineId' in owner ? owner.lineId : null,
  shareId: owner && 'shareId' in owner ? owner.shareId : null,
});

function sidePieces(key: Key, side: SidePlan): PieceRow[] {
  const { sideId } = side;
  const items = side.items.map(
    ({ pieceId, item, from, massMg, owner }): PieceRow => ({
      ...key,
      pieceId,
      kind: 'item',
      sideId,
      origin: from,
      what: item,
      massMg,
      ...ownerColumns(owner),
    }),
  );
  const spans = side.bars.flatMap(({ bar, runs }) =>
    runs.flatMap(({ pieces }) =>
      pieces.map(
        ({ pieceId, cut, fromUm, toUm, massMg, owner }): PieceRow => ({
          ...key,
          pieceId,
          kind: 'span',
          sideId,
          bar,
          span: `[${fromUm},${toUm})`,
          what: cut,
          massMg,
          ...ownerColumns(owner),
        }),
      ),
    ),
  );
  return [...items, ...spans];
}

const singlePieces = (key: Key, plan: CuttingPlan): PieceRow[] =>
  plan.singles.map(({ pieceId, animalId, item, massMg, owner }) => ({
    ...key,
    pieceId,
    kind: 'single',
    animalId,
    what: item,
    massMg,
    ...ownerColumns(owner),
  }));

// Far below the 65 534 values that one statement may carry.
const rowsAtOnce = 500;

async function insertAll<T extends PgTable>(
  tx: Tx,
  table: T,
  all: readonly T['$inferInsert'][],
): Promise<void> {
  for (let from = 0; from < all.length; from += rowsAtOnce) {
    await handleOf(tx)
      .insert(table)
      .values(all.slice(from, from + rowsAtOnce) as T['$inferInsert'][]);
  }
}

async function insertPlan(tx: Tx, { shopId, planId, plan }: PlanToStore, dayVersion: number): Promise<void> {
  const key = { shopId, planId };
  const shortLines = plan.lines.filter((line) => line.filled < line.asked).length;
  await handleOf(tx)
    .insert(plans)
    .values({ ...key, dayId: plan.dayId, dayVersion, shortLines, proof: plan.proof, plan });
  const { sides } = plan;
  await insertAll(
    tx,
    planSides,
    sides.map(({ sideId, shareId, massMg }) => ({ ...key, sideId, shareId, massMg })),
  );
  await insertAll(
    tx,
    planOperations,
    sides.flatMap(({ sideId, operations }) =>
      Object.entries(operations).map(([part, operation]) => ({ ...key, sideId, part, operation })),
    ),
  );
  await insertAll(tx, planPieces, [
    ...sides.flatMap((side) => sidePieces(key, side)),
    ...singlePieces(key, plan),
  ]);
}

/**
 * Swaps the day's plan whole, if the day is still the one it was made for.
 * @returns the day's new version; undefined, and nothing changed, when somebody was faster
 * @throws ConstraintViolation plan_pieces_no_overlap, plan_pieces_one_line, plan_sides_one_share, ... for a plan that breaks a rule
 */
export async function storePlan(tx: Tx, store: PlanToStore): Promise<number | undefined> {
  const { shopId, madeFor, plan } = store;
  const handle = handleOf(tx);
  // One statement: it waits for whoever holds the day and then looks at the version again.
  const next = sql`${cuttingDays.version} + 1`;
  const [day] = await handle
    .update(cuttingDays)
    .set({ version: next, plannedVersion: next })
    .where(
      and(
        eq(cuttingDays.shopId, shopId),
        eq(cuttingDays.dayId, plan.dayId),
        eq(cuttingDays.version, madeFor),
      ),
    )
    .returning({ version: cuttingDays.version });
  if (!day) return undefined;
  await handle.delete(plans).where(and(eq(plans.shopId, shopId), eq(plans.dayId, plan.dayId)));
  await insertPlan(tx, store, day.version);
  return day.version;
}

export async function loadPlan(tx: Tx, shopId: string, dayId: string): Promise<StoredPlan | undefined> {
  const [found] = await handleOf(tx)
    .select({ planId: plans.planId, dayVersion: plans.dayVersion, madeAt: plans.madeAt, plan: plans.plan })
    .from(plans)
    .where(and(eq(plans.shopId, shopId), eq(plans.dayId, dayId)));
  return found && { ...found, madeAt: found.madeAt.toISOString() };
}

/** The day was touched by something that asks nothing new of it: its plan, if it was of the version before, still fits. */
export async function keepPlan(tx: Tx, day: TouchedDay): Promise<void> {
  const handle = handleOf(tx);
  const { shopId, dayId, version } = day;
  await handle
    .update(plans)
    .set({ dayVersion: version })
    .where(and(eq(plans.shopId, shopId), eq(plans.dayId, dayId), eq(plans.dayVersion, version - 1)));
  await handle
    .update(cuttingDays)
    .set({ plannedVersion: version })
    .where(
      and(
        eq(cuttingDays.shopId, shopId),
        eq(cuttingDays.dayId, dayId),
        eq(cuttingDays.plannedVersion, version - 1),
      ),
    );
}
