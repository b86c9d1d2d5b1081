import type { Portion, Species } from '@flitchbook/carcass';
import { portionKey } from '@flitchbook/carcass';
import { type DealsOnWire, knownSpecies } from '@flitchbook/contracts';
import { loadCuttingDay, loadPlan, type Tx } from '@flitchbook/db';
import {
  type CarcassShare,
  type CuttingDay,
  type CuttingPlan,
  counterWorth,
  type DealtPiece,
  dealPieces,
  lineWorth,
  type SidePlan,
} from '@flitchbook/plan';
import { done, type Outcome, refused } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { ownOrder } from '../reservations/own-order.ts';
import { authorise } from '../roles.ts';
import { look } from '../transact.ts';

interface Piece extends DealtPiece {
  readonly name: string;
  readonly portion: Portion;
}

const whole: Portion = { by: 'whole' };

/** The pieces of a share's side as they lie in the plan, what stays with the shop left out. */
function piecesOf(day: CuttingDay, share: CarcassShare, side: SidePlan): readonly Piece[] {
  const species = day.species[share.speciesId] as Species;
  const stays = share.instructions.leaves ?? [];
  const piece = (
    pieceId: string,
    massMg: number,
    { table, id, name, portion }: { table: 'items' | 'stocks'; id: string; name: string; portion: Portion },
  ): Piece => {
    const grams = Math.round(massMg / 1000);
    const worthMinor = lineWorth(grams, counterWorth(day, share.speciesId, table, id));
    return { pieceId, kind: `${name} ${portionKey(portion)}`, name, portion, grams, worthMinor };
  };
  const items = side.items
    .filter(({ item }) => !stays.includes(item))
    .map(({ pieceId, item, massMg }) => {
      const name = species.items[item]?.name ?? item;
      return piece(pieceId, massMg, { table: 'items', id: item, name, portion: whole });
    });
  const spans = side.bars.flatMap(({ bar, runs }) =>
    runs.flatMap(({ stock, pieces, fromUm, freeMg }) => {
      const of = { table: 'stocks', id: stock } as const;
      const cut = pieces.map(({ pieceId, cut: id, massMg, portion }) =>
        piece(pieceId, massMg, { ...of, name: species.cuts[id]?.name ?? id, portion }),
      );
      if (freeMg === 0) return cut;
      const name = species.stocks[stock]?.name ?? stock;
      return [...cut, piece(`${side.sideId}:${bar}:${fromUm}`, freeMg, { ...of, name, portion: whole })];
    }),
  );
  return [...items, ...spans];
}

type PileOnWire = DealsOnWire['deals'][number]['piles'][number];

/** Alike pieces as one row. */
function rowsOf(pieces: readonly Piece[]): PileOnWire['pieces'] {
  const rows = new Map<string, { name: string; portion: Portion; count: number; grams: number }>();
  for (const { kind, name, portion, grams } of pieces) {
    const row = rows.get(kind) ?? { name, portion, count: 0, grams: 0 };
    rows.set(kind, { ...row, count: row.count + 1, grams: row.grams + grams });
  }
  return [...rows.values()];
}

/** Loose meat is no piece: each gets half of every kind, the odd gram goes to the first. */
function looseOf(day: CuttingDay, share: CarcassShare, side: SidePlan, turn: 0 | 1): PileOnWire['loose'] {
  const stays = [...(share.instructions.leaves ?? []), 'loss', 'lost'];
  return Object.entries(side.bulkMg)
    .filter(([bulk, mg]) => mg > 0 && !stays.includes(bulk))
    .map(([bulk, mg]) => {
      const grams = Math.round(mg / 1000);
      const half = turn === 0 ? Math.ceil(grams / 2) : Math.floor(grams / 2);
      return { bulk, name: day.species[share.speciesId]?.bulks[bulk]?.name ?? bulk, grams: half };
    });
}

function dealOf(day: CuttingDay, plan: CuttingPlan, share: CarcassShare): DealsOnWire['deals'] {
  const { sharedWith } = share.instructions;
  const sides = plan.sides.filter(({ shareId }) => shareId === share.shareId);
  if (sharedWith === undefined || sides.length === 0) return [];
  const pieces = sides.flatMap((side) => piecesOf(day, share, side));
  const { piles, apart, fair } = dealPieces(pieces);
  const names = [share.owner, sharedWith];
  return [
    {
      shareId: share.shareId,
      apartPercent: Math.round(apart * 1000) / 10,
      fair,
      piles: piles.map(({ pieceIds, grams, worthMinor }, turn) => ({
        name: names[turn] ?? '',
        grams,
        worthMinor,
        pieces: rowsOf(pieces.filter(({ pieceId }) => pieceIds.includes(pieceId))),
        loose: sides.flatMap((side) => looseOf(day, share, side, turn === 0 ? 0 : 1)),
      })),
    },
  ];
}

async function dealsIn(tx: Tx, ctx: Ctx, orderId: string): Promise<Outcome<DealsOnWire>> {
  const order = await ownOrder(tx, ctx, orderId);
  if (!order.ok) return order;
  const { dayId, shares } = order.value;
  const stored = await loadCuttingDay(tx, ctx.actor.shopId, dayId);
  const plan = await loadPlan(tx, ctx.actor.shopId, dayId);
  if (!stored || !plan) return refused('plan.missing', 'The day is not planned yet: nothing can be dealt.');
  const day = { ...stored.cuttingDay, species: knownSpecies };
  return done({ deals: shares.flatMap((share) => dealOf(day, plan.plan, share)) });
}

/** Who gets which pieces of a half that two names share, by the plan as it stands. */
export async function readDeals(ctx: Ctx, orderId: string): Promise<Outcome<DealsOnWire>> {
  const refusal = authorise(ctx, 'deals.read');
  if (refusal) return refusal;
  return look(ctx.db, (tx) => dealsIn(tx, ctx, orderId));
}
