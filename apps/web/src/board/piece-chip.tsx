import { OrderSwatch } from '../marks/letter-plate.tsx';
import { weightText } from '../words/measures.ts';
import type { BoardView } from './board-model.ts';
import type { BoardStore } from './board-store.ts';
import { sayPiece } from './piece-words.ts';
import type { Piece } from './pieces-model.ts';

interface PieceChipProps {
  readonly piece: Piece;
  readonly view: BoardView;
  readonly store: BoardStore;
}

/** A piece that leaves whole: tenderloin, back ribs, a porchetta, the head. */
export function PieceChip({ piece, view, store }: PieceChipProps) {
  const mark = view.marks.get(piece.holder?.orderId ?? '');
  const lit = store.litOrderId.value;
  const isChosen = store.chosenPieceId.value === piece.pieceId;
  const shade = isChosen ? ' chosen' : lit === null ? '' : piece.holder?.orderId === lit ? ' lit' : ' dim';
  return (
    <button
      type="button"
      class={`chip${mark ? '' : ' unowned'}${shade}`}
      data-piece={piece.pieceId}
      aria-pressed={isChosen}
      aria-label={sayPiece(piece, view)}
      onClick={() => store.choosePiece(isChosen ? null : piece.pieceId)}
    >
      {mark && <OrderSwatch mark={mark} size={28} />}
      <span class="chip-name">{piece.name}</span>
      <span class="chip-weight">{weightText(piece.massMg, view.board.shop)}</span>
    </button>
  );
}
