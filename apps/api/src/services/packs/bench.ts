import { type BookSettings, type PackToMake, packsToMake } from '@flitchbook/books';
import { knownSpecies } from '@flitchbook/contracts';
import {
  type AnimalRecord,
  findShop,
  listPackedPieces,
  listPacks,
  loadCuttingDay,
  loadPlan,
  type OrderRecord,
  type PackRecord,
  type Shop,
  type StoredDay,
  type Tx,
} from '@flitchbook/db';
import type { CuttingPlan } from '@flitchbook/plan';
import { done, type Outcome, refused } from '../../refusals.ts';
import { bookSettingsIn } from '../book-settings/read.ts';
import type { Ctx } from '../ctx.ts';
import { dayUnknown } from '../transact.ts';

/** A day as the scale sees it: the packs that its plan foresees, and those that are made. */
export interface Bench {
  readonly shop: Shop;
  readonly settings: BookSettings;
  readonly stored: StoredDay;
  readonly plan: CuttingPlan;
  readonly isStale: boolean;
  readonly foreseen: readonly PackToMake[];
  readonly toMake: readonly PackToMake[];
  readonly packs: readonly PackRecord[];
}

/** The rest of a foreseen pack when some of its pieces are packed; undefined when nothing is left to pack. */
function leftOf(
  pack: PackToMake,
  packedPieces: ReadonlySet<string>,
  madeKeys: ReadonlySet<string>,
): PackToMake | undefined {
  if (pack.pieceIds.length === 0) return madeKeys.has(pack.key) ? undefined : pack;
  const pieceIds = pack.pieceIds.filter((pieceId) => !packedPieces.has(pieceId));
  if (pieceIds.length === 0) return undefined;
  return {
    ...pack,
    pieceIds,
    expectedMg: Math.round((pack.expectedMg * pieceIds.length) / pack.pieceIds.length),
  };
}

export async function readBench(tx: Tx, ctx: Ctx, dayId: string): Promise<Outcome<Bench>> {
  const { shopId } = ctx.actor;
  const shop = await findShop(tx, shopId);
  const stored = await loadCuttingDay(tx, shopId, dayId);
  if (!shop || !stored) return dayUnknown(dayId);
  const plan = await loadPlan(tx, shopId, dayId);
  if (!plan) return refused('plan.missing', 'The day has no plan yet. Wait a moment, or plan it.');
  const { settings } = await bookSettingsIn(tx, shop);
  const shown = { lengthUnit: shop.lengthUnit, weightUnit: shop.weightUnit };
  const foreseen = packsToMake({ ...stored.cuttingDay, species: knownSpecies }, plan.plan, shown);
  const packs = await listPacks(tx, shopId, { dayId });
  const packedPieces = new Set(await listPackedPieces(tx, shopId, dayId));
  const madeKeys = new Set(packs.map((pack) => pack.foreseen));
  return done({
    shop,
    settings,
    stored,
    plan: plan.plan,
    isStale: stored.day.plannedVersion !== stored.day.version,
    foreseen,
    toMake: foreseen.flatMap((pack) => leftOf(pack, packedPieces, madeKeys) ?? []),
    packs,
  });
}

/** Whose a pack is: the order of its line or share. */
export function orderOf(
  { stored }: Pick<Bench, 'stored'>,
  owner: PackToMake['owner'],
): OrderRecord | undefined {
  if (owner === null) return undefined;
  return stored.orders.find(({ lines, shares }) =>
    'lineId' in owner
      ? lines.some(({ lineId }) => lineId === owner.lineId)
      : shares.some(({ shareId }) => shareId === owner.shareId),
  );
}

export function animalOf({ stored }: Pick<Bench, 'stored'>, animalId: string): AnimalRecord {
  const animal = stored.animals.find((each) => each.animalId === animalId);
  if (!animal) throw new Error(`animal ${animalId} of the plan is not on the day`);
  return animal;
}
