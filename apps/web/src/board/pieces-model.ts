import type { Portion } from '@flitchbook/carcass';
import type { CuttingPlan, Owner, SidePlan } from '@flitchbook/plan';
import type { Board } from '../wire/board.ts';

/** Whose a piece is: an order, through one of its lines or shares. Null: nobody's yet, it goes to the counter. */
export interface Holder {
  readonly orderId: string;
  readonly lineId: string | null;
  readonly shareId: string | null;
}

/** One piece of the day, wherever it comes from. */
export interface Piece {
  readonly pieceId: string;
  readonly animalId: string;
  readonly sideId: string | null;
  /** bar it lies on; null for a piece that leaves whole */
  readonly barId: string | null;
  /** cut of a portioned piece, item of a whole one */
  readonly name: string;
  readonly portion: Portion;
  readonly span: { readonly fromUm: number; readonly toUm: number } | null;
  readonly massMg: number;
  readonly holder: Holder | null;
  /** a stretch that is left whole after the last cut */
  readonly isFree: boolean;
}

/** Id of the free stretch of a run, which has none of its own. */
export const freeId = (
  sideId: string,
  bar: string,
  run: { readonly stock: string; readonly fromUm: number },
): string => `${sideId}:${bar}:${run.stock}:${run.fromUm}:free`;

/** Finds the order of a line or share. */
export class Holders {
  readonly #byLine = new Map<string, string>();
  readonly #byShare = new Map<string, string>();

  constructor({ cuttingDay }: Pick<Board, 'cuttingDay'>) {
    for (const line of cuttingDay.lines) this.#byLine.set(line.lineId, line.orderId);
    for (const share of cuttingDay.shares) this.#byShare.set(share.shareId, share.orderId);
  }

  ofLine(lineId: string): Holder | null {
    const orderId = this.#byLine.get(lineId);
    return orderId === undefined ? null : { orderId, lineId, shareId: null };
  }

  ofShare(shareId: string): Holder | null {
    const orderId = this.#byShare.get(shareId);
    return orderId === undefined ? null : { orderId, lineId: null, shareId };
  }

  of(owner: Owner): Holder | null {
    if (owner === null) return null;
    return 'lineId' in owner ? this.ofLine(owner.lineId) : this.ofShare(owner.shareId);
  }
}

interface Names {
  readonly cutOrItem: (id: string) => string;
  readonly stock: (id: string) => string;
}

function freeOfSide({ sideId, animalId, shareId, bars }: SidePlan, holders: Holders, names: Names): Piece[] {
  return bars.flatMap(({ bar, runs }) =>
    runs
      .filter(({ freeUm }) => freeUm > 0)
      .map((run): Piece => {
        const toUm = run.fromUm + run.usableUm;
        return {
          pieceId: freeId(sideId, bar, run),
          animalId,
          sideId,
          barId: bar,
          name: names.stock(run.stock),
          portion: { by: 'whole' },
          span: { fromUm: toUm - run.freeUm, toUm },
          massMg: run.freeMg,
          holder: shareId === null ? null : holders.ofShare(shareId),
          isFree: true,
        };
      }),
  );
}

function piecesOfSide(side: SidePlan, holders: Holders, names: Names): Piece[] {
  const { sideId, animalId } = side;
  const items = side.items.map(
    (item): Piece => ({
      pieceId: item.pieceId,
      animalId,
      sideId,
      barId: null,
      name: names.cutOrItem(item.item),
      portion: { by: 'whole' },
      span: null,
      massMg: item.massMg,
      holder: holders.of(item.owner),
      isFree: false,
    }),
  );
  const laid = side.bars.flatMap(({ bar, runs }) =>
    runs
      .flatMap((run) => run.pieces)
      .map(
        (piece): Piece => ({
          pieceId: piece.pieceId,
          animalId,
          sideId,
          barId: bar,
          name: names.cutOrItem(piece.cut),
          portion: piece.portion,
          span: { fromUm: piece.fromUm, toUm: piece.toUm },
          massMg: piece.massMg,
          holder: holders.of(piece.owner),
          isFree: false,
        }),
      ),
  );
  return [...laid, ...freeOfSide(side, holders, names), ...items];
}

/** Every piece of a plan by its id. `namesOf` knows what the cuts, items and stocks of an animal's species are called. */
export function piecesOf(
  plan: CuttingPlan,
  holders: Holders,
  namesOf: (animalId: string) => Names,
): ReadonlyMap<string, Piece> {
  const singles = plan.singles.map(
    (single): Piece => ({
      pieceId: single.pieceId,
      animalId: single.animalId,
      sideId: null,
      barId: null,
      name: namesOf(single.animalId).cutOrItem(single.item),
      portion: { by: 'whole' },
      span: null,
      massMg: single.massMg,
      holder: holders.of(single.owner),
      isFree: false,
    }),
  );
  const ofSides = plan.sides.flatMap((side) => piecesOfSide(side, holders, namesOf(side.animalId)));
  return new Map([...ofSides, ...singles].map((piece) => [piece.pieceId, piece]));
}
