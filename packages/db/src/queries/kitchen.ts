import { and, asc, desc, eq, inArray, sql } from 'drizzle-orm';
import type { Tx } from '../database.ts';
import { handleOf } from '../engines/engine.ts';
import { kitchenBatches, kitchenDraws, poolConsents } from '../schema/index.ts';

export interface NewKitchenBatch {
  readonly shopId: string;
  readonly batchId: string;
  readonly kind: 'sausage' | 'cure' | 'lard';
  readonly name: string;
  /** local date, yyyy-mm-dd */
  readonly madeOn: string;
  readonly record: Readonly<Record<string, unknown>>;
  readonly madeBy: string | null;
  readonly draws: readonly { readonly packId: string; readonly grams: number }[];
}

export interface KitchenBatchRecord extends NewKitchenBatch {
  readonly madeAt: string;
}

/** @throws ConstraintViolation kitchen_draws_within_pack, kitchen_draws_pack_here, kitchen_draws_pack_known, ... */
export async function addKitchenBatch(tx: Tx, { draws, ...batch }: NewKitchenBatch): Promise<void> {
  const { shopId, batchId } = batch;
  const handle = handleOf(tx);
  await handle.insert(kitchenBatches).values(batch);
  // By id, so that two batches that draw from the same packs lock them in one order.
  const sorted = draws.toSorted((a, b) => (a.packId < b.packId ? -1 : 1));
  if (sorted.length > 0)
    await handle.insert(kitchenDraws).values(sorted.map((draw) => ({ shopId, batchId, ...draw })));
}

/** The latest first. */
export async function listKitchenBatches(
  tx: Tx,
  shopId: string,
  { limit, batchId }: { readonly limit: number; readonly batchId?: string },
): Promise<readonly KitchenBatchRecord[]> {
  const handle = handleOf(tx);
  const only = batchId === undefined ? undefined : eq(kitchenBatches.batchId, batchId);
  const rows = await handle
    .select()
    .from(kitchenBatches)
    .where(and(eq(kitchenBatches.shopId, shopId), only))
    .orderBy(desc(kitchenBatches.madeAt), desc(kitchenBatches.batchId))
    .limit(limit);
  if (rows.length === 0) return [];
  const ids = rows.map((row) => row.batchId);
  const draws = await handle
    .select()
    .from(kitchenDraws)
    .where(and(eq(kitchenDraws.shopId, shopId), inArray(kitchenDraws.batchId, ids)))
    .orderBy(asc(kitchenDraws.packId));
  return rows.map(({ madeAt, ...row }) => ({
    ...row,
    madeAt: madeAt.toISOString(),
    draws: draws
      .filter((draw) => draw.batchId === row.batchId)
      .map(({ packId, grams }) => ({ packId, grams })),
  }));
}

/** Grams that batches took, by pack. */
export async function drawnGrams(tx: Tx, shopId: string): Promise<ReadonlyMap<string, number>> {
  const rows = await handleOf(tx)
    .select({ packId: kitchenDraws.packId, grams: sql<string>`sum(${kitchenDraws.grams})` })
    .from(kitchenDraws)
    .where(eq(kitchenDraws.shopId, shopId))
    .groupBy(kitchenDraws.packId);
  return new Map(rows.map(({ packId, grams }) => [packId, Number(grams)]));
}

/** Orders whose owners agreed to have their trim pooled. */
export async function listPoolConsents(tx: Tx, shopId: string): Promise<ReadonlySet<string>> {
  const rows = await handleOf(tx)
    .select({ orderId: poolConsents.orderId })
    .from(poolConsents)
    .where(eq(poolConsents.shopId, shopId));
  return new Set(rows.map(({ orderId }) => orderId));
}

/** Writes a consent down, or takes it back. What was ground with it stays ground. */
export async function setPoolConsent(
  tx: Tx,
  consent: { readonly shopId: string; readonly orderId: string; readonly saidBy: string | null },
  mayPool: boolean,
): Promise<void> {
  const handle = handleOf(tx);
  const { shopId, orderId } = consent;
  if (mayPool) await handle.insert(poolConsents).values(consent).onConflictDoNothing();
  else
    await handle
      .delete(poolConsents)
      .where(and(eq(poolConsents.shopId, shopId), eq(poolConsents.orderId, orderId)));
}
