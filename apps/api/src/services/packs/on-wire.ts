import { type PackToMake, shownPrice } from '@flitchbook/books';
import type { PackOnWire, PackToMakeOnWire } from '@flitchbook/contracts';
import type { PackRecord } from '@flitchbook/db';
import { animalOf, type Bench, orderOf } from './bench.ts';

/** The price of a pack in the unit that the shop weighs in; null where it is not sold by the pack. */
export function priceOf(
  bench: Bench,
  pack: PackToMake,
): { readonly minor: number; readonly per: 'kg' | 'lb' } | null {
  if (pack.priceMinorPerKg === null || animalOf(bench, pack.animalId).legalMode === 'for-owner') return null;
  return shownPrice(pack.priceMinorPerKg, bench.shop.weightUnit);
}

export function toMakeOnWire(bench: Bench, pack: PackToMake): PackToMakeOnWire {
  const { key, animalId, sideId, thing, name, size, pieceIds, owner, expectedMg } = pack;
  const order = orderOf(bench, owner);
  return {
    key,
    animalId,
    animal: animalOf(bench, animalId).name,
    sideId,
    thing,
    name,
    size,
    pieceIds,
    orderId: order?.orderId ?? null,
    orderNumber: order?.number ?? null,
    owner: order?.owner ?? null,
    expectedMg,
    price: priceOf(bench, pack),
  };
}

export function packOnWire(pack: PackRecord): PackOnWire {
  const { shopId, thing, what, owner, handOverId, taxClass, packedBy, ...same } = pack;
  return {
    ...same,
    thing: { kind: thing, id: what },
    lineId: owner && 'lineId' in owner ? owner.lineId : null,
    shareId: owner && 'shareId' in owner ? owner.shareId : null,
    isGone: handOverId !== null,
  };
}
