import { balanceAnimal, marginOf, type NamedOut, type Sold } from '@flitchbook/books';
import type { Closing } from '@flitchbook/contracts';
import {
  type ClosingRecord,
  findAnimal,
  findBill,
  findClosing,
  listFarms,
  type PackRecord,
  type Tx,
} from '@flitchbook/db';
import { done, type Outcome, type Refusal, refused } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { type Bench, readBench } from '../packs/bench.ts';
import { authorise } from '../roles.ts';
import { look } from '../transact.ts';

const animalUnknown = (animalId: string): Refusal =>
  refused('animal.unknown', `The shop has no animal ${animalId}.`);

/** What the closer says: named outs, the time it took, what the animal cost. */
export interface Said {
  readonly outs: readonly NamedOut[];
  readonly note: string;
  readonly minutes: number;
  readonly animalMinor: number;
}

const nothingSaid: Said = { outs: [], note: '', minutes: 0, animalMinor: 0 };

const saidIn = ({ outs, note, minutes, animalMinor }: ClosingRecord): Said => ({
  outs: outs as readonly NamedOut[],
  note,
  minutes,
  animalMinor,
});

/** Planned against packed, by what it is called in the trade. */
function yieldsOf(bench: Bench, animalId: string, packs: readonly PackRecord[]): Closing['yields'] {
  const rows = new Map<string, { name: string; plannedGrams: number; packedGrams: number }>();
  const rowOf = (id: string, name: string) => {
    const row = rows.get(id) ?? { name, plannedGrams: 0, packedGrams: 0 };
    rows.set(id, row);
    return row;
  };
  let plannedMg = 0;
  for (const { thing, name, expectedMg } of bench.foreseen.filter((pack) => pack.animalId === animalId)) {
    // Rounded on the running sum, so that the column adds up.
    const before = Math.round(plannedMg / 1000);
    plannedMg += expectedMg;
    rowOf(`${thing.kind}:${thing.id}`, name).plannedGrams += Math.round(plannedMg / 1000) - before;
  }
  for (const { thing, what, name, netGrams } of packs)
    rowOf(`${thing}:${what}`, name).packedGrams += netGrams;
  return [...rows.values()];
}

/** What each pack of the animal brought: by its bill line, by its share's hanging weight, or over the counter. */
async function soldOf(tx: Tx, ctx: Ctx, bench: Bench, packs: readonly PackRecord[]): Promise<Sold[]> {
  const sold: Sold[] = packs.flatMap(
    ({ orderId, owner, netGrams, amountMinor, soldMinor, handOverId }): Sold[] => {
      if (orderId === null)
        return handOverId === null ? [] : [{ channel: 'counter', grams: netGrams, minor: soldMinor ?? 0 }];
      return owner && 'lineId' in owner
        ? [{ channel: 'order', grams: netGrams, minor: amountMinor ?? 0 }]
        : [];
    },
  );
  const shareIds = new Set(
    packs.flatMap(({ owner }) => (owner && 'shareId' in owner ? [owner.shareId] : [])),
  );
  const orders = bench.stored.orders.filter(({ shares }) =>
    shares.some(({ shareId }) => shareIds.has(shareId)),
  );
  for (const { orderId } of orders) {
    const bill = await findBill(tx, ctx.actor.shopId, orderId);
    for (const { about, amountMinor } of bill?.lines.filter(
      ({ kind, about }) => kind === 'hanging' && shareIds.has(about),
    ) ?? []) {
      const grams = packs
        .filter(({ owner }) => owner && 'shareId' in owner && owner.shareId === about)
        .reduce((sum, { netGrams }) => sum + netGrams, 0);
      sold.push({ channel: 'share', grams, minor: amountMinor });
    }
  }
  return sold;
}

/** The animal as it stands, or as `said` would close it. */
export async function closingIn(tx: Tx, ctx: Ctx, animalId: string, wish?: Said): Promise<Outcome<Closing>> {
  const { shopId } = ctx.actor;
  const animal = await findAnimal(tx, shopId, animalId);
  if (!animal) return animalUnknown(animalId);
  const found = await readBench(tx, ctx, animal.dayId);
  if (!found.ok) return found;
  const bench = found.value;
  const closed = await findClosing(tx, shopId, animalId);
  const said = closed ? saidIn(closed) : (wish ?? nothingSaid);
  const packs = bench.packs.filter((pack) => pack.animalId === animalId);
  const apart = packs
    .filter(({ sideId }) => sideId === null)
    .map(({ name, netGrams }) => ({ name, grams: netGrams }));
  const packedGrams = packs.reduce((sum, { netGrams }) => sum + netGrams, 0);
  const balance = balanceAnimal({
    hangingGrams: animal.hanging.grams,
    apart,
    packedGrams,
    outs: said.outs,
    tolerancePpm: bench.settings.closeTolerancePpm,
  });
  const { labourMinorPerHour } = bench.stored.cuttingDay.counter;
  const farm = (await listFarms(tx, shopId)).find(({ farmId }) => farmId === animal.farmId);
  return done({
    animalId,
    name: animal.name,
    farm: farm?.name ?? null,
    dayId: animal.dayId,
    isClosed: closed !== undefined,
    hangingGrams: animal.hanging.grams,
    hotOrCold: animal.hotOrCold,
    apartGrams: balance.inGrams - animal.hanging.grams,
    packedGrams,
    namedGrams: balance.namedGrams,
    restGrams: balance.restGrams,
    flag: balance.flag,
    outs: said.outs,
    note: said.note,
    unpacked: bench.toMake.filter((pack) => pack.animalId === animalId).length,
    stillHere: packs.filter(({ handOverId }) => handOverId === null).length,
    yields: yieldsOf(bench, animalId, packs),
    margin: marginOf(await soldOf(tx, ctx, bench, packs), {
      animalMinor: said.animalMinor,
      minutes: said.minutes,
      labourMinorPerHour,
    }),
  });
}

/** Where an animal's meat went, and what it brought. */
export async function readClosing(ctx: Ctx, animalId: string): Promise<Outcome<Closing>> {
  const refusal = authorise(ctx, 'closings.read');
  if (refusal) return refusal;
  return look(ctx.db, (tx) => closingIn(tx, ctx, animalId));
}
