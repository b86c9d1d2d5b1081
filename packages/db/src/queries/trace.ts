import { and, asc, between, eq, inArray, isNull, type SQL } from 'drizzle-orm';
import type { Tx } from '../database.ts';
import { handleOf } from '../engines/engine.ts';
import { animals, cuttingDays, farms, handOverPacks, handOvers, orders, packs } from '../schema/index.ts';
import type { TraceFrom, TraceRow } from './book-shapes.ts';

function startsAt(from: TraceFrom): SQL | undefined {
  if ('packId' in from) return eq(packs.packId, from.packId);
  if ('serial' in from) return eq(packs.serial, from.serial);
  if ('lot' in from) return eq(packs.lot, from.lot);
  if ('animalId' in from) return eq(packs.animalId, from.animalId);
  if ('packIds' in from) return inArray(packs.packId, [...from.packIds]);
  if ('stillHere' in from) return isNull(handOverPacks.handOverId);
  return and(eq(animals.farmId, from.farmId), between(cuttingDays.date, from.from, from.to));
}

/**
 * One step back and one forward for every pack that a trace reaches, in one statement: farm, animal and day before it,
 * customer and hand-over after it. A recall list is the trace of a lot, an animal or a farm's animals.
 */
export async function trace(tx: Tx, shopId: string, from: TraceFrom): Promise<readonly TraceRow[]> {
  const found = await handleOf(tx)
    .select({
      packId: packs.packId,
      serial: packs.serial,
      lot: packs.lot,
      name: packs.name,
      netGrams: packs.netGrams,
      packedOn: packs.packedOn,
      animalId: packs.animalId,
      animal: animals.name,
      farm: farms.name,
      cutOn: cuttingDays.date,
      orderNumber: orders.number,
      customer: orders.owner,
      leftAt: handOvers.at,
      takenBy: handOvers.takenBy,
    })
    .from(packs)
    .innerJoin(animals, and(eq(animals.shopId, packs.shopId), eq(animals.animalId, packs.animalId)))
    .innerJoin(cuttingDays, and(eq(cuttingDays.shopId, packs.shopId), eq(cuttingDays.dayId, packs.dayId)))
    .leftJoin(farms, and(eq(farms.shopId, animals.shopId), eq(farms.farmId, animals.farmId)))
    .leftJoin(orders, and(eq(orders.shopId, packs.shopId), eq(orders.orderId, packs.orderId)))
    .leftJoin(
      handOverPacks,
      and(eq(handOverPacks.shopId, packs.shopId), eq(handOverPacks.packId, packs.packId)),
    )
    .leftJoin(
      handOvers,
      and(eq(handOvers.shopId, handOverPacks.shopId), eq(handOvers.handOverId, handOverPacks.handOverId)),
    )
    .where(and(eq(packs.shopId, shopId), isNull(packs.undoneAt), startsAt(from)))
    .orderBy(asc(packs.serial));
  return found.map((row) => ({ ...row, leftAt: row.leftAt?.toISOString() ?? null }));
}
