import { checklist, type LineToGive, localDateAt, noShowSteps, type PackToGive } from '@flitchbook/books';
import type { HandOverList, PickUpOnWire } from '@flitchbook/contracts';
import { knownSpecies } from '@flitchbook/contracts';
import { findPickUp, type PackRecord, type PickUpRecord, type Tx } from '@flitchbook/db';
import { done, type Outcome } from '../../refusals.ts';
import { type AtTill, readAtTill } from '../bills/order-account.ts';
import type { Ctx } from '../ctx.ts';
import { authorise } from '../roles.ts';
import { look } from '../transact.ts';

/** What a pack holds of its line: pieces, or grams of loose meat. */
export const packToGive = ({
  packId,
  serial,
  orderId,
  owner,
  thing,
  pieces,
  netGrams,
  handOverId,
}: PackRecord): PackToGive => ({
  packId,
  serial,
  orderId,
  lineId: owner && 'lineId' in owner ? owner.lineId : null,
  holds: thing === 'bulk' ? netGrams : pieces,
  isGone: handOverId !== null,
});

const linesToGive = ({ order, bench }: AtTill): LineToGive[] =>
  order.lines.map(({ lineId, ask }) => ({
    lineId,
    asked: 'pieces' in ask ? ask.pieces : ask.grams,
    filled: bench.plan.lines.find((fill) => fill.lineId === lineId)?.filled ?? 0,
    unpacked: bench.toMake.filter(({ owner }) => owner && 'lineId' in owner && owner.lineId === lineId)
      .length,
    readyOn: null,
  }));

function pickUpOnWire(pickUp: PickUpRecord, till: Pick<AtTill, 'bench'>, now: string): PickUpOnWire {
  const { date, fromTime, toTime, startsAt, endsAt, place, version, steps } = pickUp;
  const { settings, shop } = till.bench;
  const due = noShowSteps(settings.pickUp.noShow, { endsAt, now, timeZone: shop.timeZone, done: steps });
  return { date, from: fromTime, to: toTime, startsAt, endsAt, place, version, due };
}

/** What an order asks against what is packed for it. */
export async function handOverListIn(
  tx: Tx,
  ctx: Ctx,
  orderId: string,
): Promise<Outcome<{ readonly list: HandOverList; readonly till: AtTill }>> {
  const till = await readAtTill(tx, ctx, orderId);
  if (!till.ok) return till;
  const { order, bench, account, bill } = till.value;
  const now = ctx.clock().toISOString();
  const mine = bench.packs.filter((pack) => pack.orderId === orderId);
  const checked = checklist(
    linesToGive(till.value),
    mine.map(packToGive),
    localDateAt(now, bench.shop.timeZone),
  );
  const pickUp = await findPickUp(tx, ctx.actor.shopId, orderId);
  const list: HandOverList = {
    orderId,
    number: order.number,
    owner: order.owner,
    note: order.note,
    lines: order.lines.flatMap(({ lineId, speciesId, cut, ask }) => {
      const line = checked.find((each) => each.lineId === lineId);
      return line
        ? [{ ...line, name: knownSpecies[speciesId]?.cuts[cut]?.name ?? cut, byWeight: 'grams' in ask }]
        : [];
    }),
    packs: mine.map(({ packId, serial, name, pieces, net, lot, frozen, handOverId }) => ({
      packId,
      serial,
      name,
      pieces,
      net,
      lot,
      frozen,
      isGone: handOverId !== null,
    })),
    pickUp: pickUp ? pickUpOnWire(pickUp, till.value, now) : null,
    dueMinor: account.dueMinor,
    isSettled: bill !== undefined,
  };
  return done({ list, till: till.value });
}

export async function readHandOverList(ctx: Ctx, orderId: string): Promise<Outcome<HandOverList>> {
  const refusal = authorise(ctx, 'hand-overs.read');
  if (refusal) return refusal;
  return look(ctx.db, async (tx) => {
    const found = await handOverListIn(tx, ctx, orderId);
    return found.ok ? done(found.value.list) : found;
  });
}
