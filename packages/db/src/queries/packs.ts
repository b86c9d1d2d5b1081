import { and, asc, eq, inArray, isNull, type SQL, sql } from 'drizzle-orm';
import type { Tx } from '../database.ts';
import { handleOf } from '../engines/engine.ts';
import {
  animals,
  cuttingDays,
  handOverPacks,
  labelRunPacks,
  labelRuns,
  packPieces,
  packs,
} from '../schema/index.ts';
import type { LabelRun, NewPack, PackFilter, PackRecord } from './book-shapes.ts';
import { nextNumber } from './counters.ts';

type Row = typeof packs.$inferSelect;

const ownerOf = ({ lineId, shareId }: Row): PackRecord['owner'] =>
  lineId !== null ? { lineId } : shareId !== null ? { shareId } : null;

function fromRow(
  row: Row,
  gone: Pick<typeof handOverPacks.$inferSelect, 'handOverId' | 'soldMinor'> | null,
): PackRecord {
  const {
    lineId,
    shareId,
    grossText,
    tareText,
    tareUnit,
    netText,
    unit,
    priceMinor,
    pricePer,
    packedAt,
    undoneAt,
    ...same
  } = row;
  return {
    ...same,
    owner: ownerOf(row),
    gross: { text: grossText, unit },
    tare: { text: tareText, unit: tareUnit },
    net: { text: netText, unit },
    price: priceMinor !== null && pricePer !== null ? { minor: priceMinor, per: pricePer } : null,
    packedAt: packedAt.toISOString(),
    handOverId: gone?.handOverId ?? null,
    soldMinor: gone?.soldMinor ?? null,
  };
}

/**
 * Ends the taking of orders on a day whose stored plan fits it: what is on the block is not planned again.
 * @returns open: the plan does not fit, nothing changed
 */
export async function stopOrders(
  tx: Tx,
  shopId: string,
  dayId: string,
): Promise<'closed' | 'open' | 'unknown'> {
  const thisDay = and(eq(cuttingDays.shopId, shopId), eq(cuttingDays.dayId, dayId));
  const handle = handleOf(tx);
  await handle
    .update(cuttingDays)
    .set({
      state: 'closed',
      version: sql`${cuttingDays.version} + 1`,
      plannedVersion: sql`${cuttingDays.version} + 1`,
    })
    .where(and(thisDay, eq(cuttingDays.state, 'open'), eq(cuttingDays.plannedVersion, cuttingDays.version)));
  const [day] = await handle.select({ state: cuttingDays.state }).from(cuttingDays).where(thisDay);
  return day?.state ?? 'unknown';
}

/** Keeps an animal as it is until this unit ends: packs are added and animals closed one after the other. */
export async function holdAnimal(
  tx: Tx,
  shopId: string,
  animalId: string,
): Promise<{ readonly legalMode: 'for-sale' | 'for-owner' } | undefined> {
  const [animal] = await handleOf(tx)
    .select({ legalMode: animals.legalMode })
    .from(animals)
    .where(and(eq(animals.shopId, shopId), eq(animals.animalId, animalId)))
    .for('update');
  return animal;
}

/**
 * @throws ConstraintViolation pack_pieces_packed_once, packs_owner_only, packs_animal_open, packs_one_per_id, ...
 * @returns the serial of the pack
 */
export async function addPack(tx: Tx, pack: NewPack): Promise<number> {
  const { pieceIds, owner, gross, tare, net, price, ...same } = pack;
  const { shopId, dayId, packId } = pack;
  const serial = await nextNumber(tx, shopId, 'pack');
  const handle = handleOf(tx);
  await handle.insert(packs).values({
    ...same,
    serial,
    pieces: pieceIds.length,
    lineId: owner && 'lineId' in owner ? owner.lineId : null,
    shareId: owner && 'shareId' in owner ? owner.shareId : null,
    grossText: gross.text,
    unit: gross.unit,
    tareText: tare.text,
    tareUnit: tare.unit,
    netText: net.text,
    priceMinor: price?.minor ?? null,
    pricePer: price?.per ?? null,
  });
  if (pieceIds.length > 0)
    await handle.insert(packPieces).values(pieceIds.map((pieceId) => ({ shopId, dayId, pieceId, packId })));
  return serial;
}

function conditions(filter: PackFilter): (SQL | undefined)[] {
  const { dayId, orderId, animalId, packIds, serial, stillHere } = filter;
  return [
    dayId === undefined ? undefined : eq(packs.dayId, dayId),
    orderId === undefined ? undefined : eq(packs.orderId, orderId),
    animalId === undefined ? undefined : eq(packs.animalId, animalId),
    packIds === undefined ? undefined : inArray(packs.packId, [...packIds]),
    serial === undefined ? undefined : eq(packs.serial, serial),
    stillHere === true ? isNull(handOverPacks.handOverId) : undefined,
  ];
}

/** By serial; packs that were undone are no packs. */
export async function listPacks(tx: Tx, shopId: string, filter: PackFilter): Promise<readonly PackRecord[]> {
  if (filter.packIds?.length === 0) return [];
  const found = await handleOf(tx)
    .select({ pack: packs, gone: handOverPacks })
    .from(packs)
    .leftJoin(
      handOverPacks,
      and(eq(handOverPacks.shopId, packs.shopId), eq(handOverPacks.packId, packs.packId)),
    )
    .where(and(eq(packs.shopId, shopId), isNull(packs.undoneAt), ...conditions(filter)))
    .orderBy(asc(packs.serial));
  return found.map(({ pack, gone }) => fromRow(pack, gone));
}

/** Pieces of a day that are in a pack, by id. */
export async function listPackedPieces(tx: Tx, shopId: string, dayId: string): Promise<readonly string[]> {
  const found = await handleOf(tx)
    .select({ pieceId: packPieces.pieceId })
    .from(packPieces)
    .where(and(eq(packPieces.shopId, shopId), eq(packPieces.dayId, dayId)));
  return found.map(({ pieceId }) => pieceId);
}

/** Opens a pack again: its pieces are free, its serial is spent. @returns false when there was no such pack */
export async function undoPack(tx: Tx, shopId: string, packId: string): Promise<boolean> {
  const handle = handleOf(tx);
  const undone = await handle
    .update(packs)
    .set({ undoneAt: sql`now()` })
    .where(and(eq(packs.shopId, shopId), eq(packs.packId, packId), isNull(packs.undoneAt)))
    .returning({ packId: packs.packId });
  if (undone.length === 0) return false;
  await handle.delete(packPieces).where(and(eq(packPieces.shopId, shopId), eq(packPieces.packId, packId)));
  return true;
}

/** What nobody fetched goes to the counter. Packs that left already, or were cut for their owner, stay what they are. */
export async function releasePacks(tx: Tx, shopId: string, orderId: string): Promise<number> {
  const released = await handleOf(tx)
    .update(packs)
    .set({ orderId: null, lineId: null, shareId: null })
    .where(
      and(
        eq(packs.shopId, shopId),
        eq(packs.orderId, orderId),
        eq(packs.legalMode, 'for-sale'),
        isNull(packs.undoneAt),
        sql`${packs.priceMinor} is not null`,
        sql`not exists (select from ${handOverPacks} where ${handOverPacks.shopId} = ${packs.shopId} and ${handOverPacks.packId} = ${packs.packId})`,
      ),
    )
    .returning({ packId: packs.packId });
  return released.length;
}

/** @throws ConstraintViolation label_run_packs_once, label_run_packs_pack_known */
export async function startLabelRun(
  tx: Tx,
  run: {
    readonly shopId: string;
    readonly runId: string;
    readonly startedBy: string | null;
    readonly packIds: readonly string[];
  },
): Promise<void> {
  const { shopId, runId, startedBy, packIds } = run;
  const handle = handleOf(tx);
  await handle.insert(labelRuns).values({ shopId, runId, startedBy });
  await handle
    .insert(labelRunPacks)
    .values(packIds.map((packId, place) => ({ shopId, runId, place, packId })));
}

export async function findLabelRun(tx: Tx, shopId: string, runId: string): Promise<LabelRun | undefined> {
  const found = await handleOf(tx)
    .select({ packId: labelRunPacks.packId, printedAt: labelRunPacks.printedAt })
    .from(labelRunPacks)
    .where(and(eq(labelRunPacks.shopId, shopId), eq(labelRunPacks.runId, runId)))
    .orderBy(asc(labelRunPacks.place));
  if (found.length === 0) return undefined;
  return { runId, packs: found.map(({ packId, printedAt }) => ({ packId, isPrinted: printedAt !== null })) };
}

/** Says that labels came out of the printer; once said it stays. */
export async function confirmPrinted(
  tx: Tx,
  shopId: string,
  runId: string,
  packIds: readonly string[],
): Promise<void> {
  await handleOf(tx)
    .update(labelRunPacks)
    .set({ printedAt: sql`now()` })
    .where(
      and(
        eq(labelRunPacks.shopId, shopId),
        eq(labelRunPacks.runId, runId),
        inArray(labelRunPacks.packId, [...packIds]),
        isNull(labelRunPacks.printedAt),
      ),
    );
}
