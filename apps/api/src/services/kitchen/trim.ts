import { localDateAt } from '@flitchbook/books';
import type { TrimPoolOnWire } from '@flitchbook/contracts';
import { knownSpecies } from '@flitchbook/contracts';
import {
  drawnGrams,
  findAnimal,
  findShop,
  listPacks,
  listPoolConsents,
  type PackRecord,
  type Tx,
} from '@flitchbook/db';
import { poolByKind, type TrimLot, usualTrimKinds } from '@flitchbook/kitchen';
import { done, type Outcome } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { authorise } from '../roles.ts';
import { look } from '../transact.ts';

/** A pack of loose trim as the kitchen sees it, with what is left of it. */
export interface LotInPool {
  readonly pack: PackRecord;
  readonly lot: TrimLot;
}

const meatName: Readonly<Record<string, string>> = { hog: 'pork', 'beef-fore': 'beef' };

/** Packs of loose meat and fat that are in the house, less what batches took. Bone and skin are no meat. */
export async function lotsInPool(tx: Tx, ctx: Ctx): Promise<readonly LotInPool[]> {
  const { shopId } = ctx.actor;
  const packs = await listPacks(tx, shopId, { stillHere: true });
  const drawn = await drawnGrams(tx, shopId);
  const consents = await listPoolConsents(tx, shopId);
  const species = new Map<string, string>();
  const found: LotInPool[] = [];
  for (const pack of packs) {
    const kind = usualTrimKinds.find(({ id }) => id === pack.what);
    const leftGrams = pack.netGrams - (drawn.get(pack.packId) ?? 0);
    // Loose meat that a line of an order asked for is sold as it is.
    const isSold = pack.owner !== null && 'lineId' in pack.owner;
    if (pack.thing !== 'bulk' || !kind || leftGrams <= 0 || isSold) continue;
    const { packId, animalId, orderId } = pack;
    if (!species.has(animalId)) {
      const animal = await findAnimal(tx, shopId, animalId);
      species.set(animalId, animal?.speciesId ?? '');
    }
    const speciesId = species.get(animalId) ?? '';
    const costMinorPerKg = knownSpecies[speciesId]?.bulks[kind.id]?.worthMinorPerKg ?? 0;
    const lot: TrimLot = {
      lotId: packId,
      kind: kind.id,
      species: meatName[speciesId] ?? speciesId,
      animalId,
      ownerId: orderId,
      mayPool: orderId !== null && consents.has(orderId),
      massMg: leftGrams * 1000,
      fatPpm: kind.fatPpm,
      fatFrom: 'book',
      cutOn: pack.packedOn,
      weight: 'scale',
      costMinorPerKg,
    };
    found.push({ pack, lot });
  }
  return found;
}

export async function todayAt(tx: Tx, ctx: Ctx): Promise<string> {
  const shop = await findShop(tx, ctx.actor.shopId);
  return localDateAt(ctx.clock().toISOString(), shop?.timeZone ?? 'UTC');
}

const dayMs = 86_400_000;
const daysBetween = (from: string, to: string): number =>
  Math.round((Date.parse(to) - Date.parse(from)) / dayMs);

/** What lies in the tubs, the oldest first, and how much of each kind. */
export async function readTrimPool(ctx: Ctx): Promise<Outcome<TrimPoolOnWire>> {
  const refusal = authorise(ctx, 'kitchen.read');
  if (refusal) return refusal;
  return look(ctx.db, async (tx) => {
    const today = await todayAt(tx, ctx);
    const pool = await lotsInPool(tx, ctx);
    const kinds = poolByKind(
      pool.map(({ lot }) => lot),
      today,
    );
    return done({
      lots: pool
        .toSorted((a, b) => (a.lot.cutOn < b.lot.cutOn ? -1 : Number(a.lot.cutOn > b.lot.cutOn)))
        .map(({ pack, lot }) => ({
          packId: pack.packId,
          serial: pack.serial,
          kind: lot.kind,
          name: pack.name,
          animalId: lot.animalId,
          lot: pack.lot,
          orderId: pack.orderId,
          mayPool: lot.mayPool,
          cutOn: lot.cutOn,
          ageDays: daysBetween(lot.cutOn, today),
          leftGrams: lot.massMg / 1000,
          fatPpm: lot.fatPpm,
        })),
      kinds: kinds.map(({ kind, massMg, fatMg, lots, oldestDays }) => ({
        kind,
        grams: Math.round(massMg / 1000),
        fatGrams: Math.round(fatMg / 1000),
        lots,
        oldestDays,
      })),
    });
  });
}
