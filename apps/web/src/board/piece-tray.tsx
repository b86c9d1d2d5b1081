import { CounterSwatch, OrderSwatch } from '../marks/letter-plate.tsx';
import { words } from '../words/english.ts';
import { weightText } from '../words/measures.ts';
import { focusBlock } from './bar-ruler.tsx';
import type { BoardView } from './board-model.ts';
import type { BoardStore } from './board-store.ts';
import { fillText, lineText, ownerText, pieceTitle, placeTexts, sizeText } from './piece-words.ts';
import type { Piece } from './pieces-model.ts';
import { stepAlong } from './walk-model.ts';

function lineOf(piece: Piece, view: BoardView): string {
  const order = view.orderById.get(piece.holder?.orderId ?? '');
  const line = order?.lines.find(({ lineId }) => lineId === piece.holder?.lineId);
  if (line) return words.piece.line(lineText(line, view), fillText(line, view.board.shop));
  return piece.holder?.shareId ? words.piece.share : '';
}

function whereOf(piece: Piece, view: BoardView): string {
  const animal = view.animals.find(({ animalId }) => animalId === piece.animalId);
  const side = animal?.sides.find(({ sideId }) => sideId === piece.sideId);
  const bar = side?.bars.find(({ barId }) => barId === piece.barId);
  return [animal?.name, side && words.handWords[side.hand], bar?.name]
    .filter((part) => part !== undefined)
    .join(', ');
}

/** Neighbours of a piece on its own bar, so that a finger can step where it cannot aim. */
function neighboursOf(piece: Piece, view: BoardView) {
  const side = view.animals.flatMap(({ sides }) => sides).find(({ sideId }) => sideId === piece.sideId);
  const blocks =
    side?.bars.find(({ barId }) => barId === piece.barId)?.runs.flatMap((run) => run.blocks) ?? [];
  return {
    before: stepAlong(blocks, piece.pieceId, 'ArrowLeft'),
    after: stepAlong(blocks, piece.pieceId, 'ArrowRight'),
  };
}

interface StepProps {
  readonly label: string;
  readonly sign: string;
  readonly pieceId: string | undefined;
  readonly store: BoardStore;
}

function Step({ label, sign, pieceId, store }: StepProps) {
  return (
    <button
      type="button"
      class="tray-step"
      aria-label={label}
      disabled={pieceId === undefined}
      onClick={() => pieceId !== undefined && store.choosePiece(pieceId)}
    >
      {sign}
    </button>
  );
}

/** The piece that is looked at: what it is, how big, how heavy, whose, for which line, and where it lies. */
export function PieceTray({ view, store }: { readonly view: BoardView; readonly store: BoardStore }) {
  const piece = view.pieces.get(store.chosenPieceId.value ?? '');
  if (!piece) return null;
  const mark = view.marks.get(piece.holder?.orderId ?? '');
  const { before, after } = neighboursOf(piece, view);
  const size = sizeText(piece, view.board.shop);
  const weight = words.piece.about(weightText(piece.massMg, view.board.shop));
  const close = (): void => {
    const { pieceId } = piece;
    store.choosePiece(null);
    focusBlock(document, pieceId);
    store.choosePiece(null);
  };
  return (
    <aside class="tray" aria-label={words.piece.title}>
      {mark ? <OrderSwatch mark={mark} size={44} /> : <CounterSwatch size={44} />}
      <div class="tray-words">
        <p class="tray-title">
          <strong>{pieceTitle(piece)}</strong>
          {size !== '' && <span class="tray-size">{size}</span>}
          <span class="tray-weight">{weight}</span>
          <span class="tray-owner">{ownerText(piece, view)}</span>
        </p>
        <p class="tray-more">
          {[lineOf(piece, view), whereOf(piece, view), ...placeTexts(piece, view)]
            .filter((part) => part !== '')
            .join(' · ')}
        </p>
      </div>
      <div class="tray-steps">
        {piece.barId !== null && (
          <>
            <Step label={words.piece.before} sign="‹" pieceId={before?.pieceId} store={store} />
            <Step label={words.piece.after} sign="›" pieceId={after?.pieceId} store={store} />
          </>
        )}
        <button type="button" class="tray-step" aria-label={words.close} onClick={close}>
          ×
        </button>
      </div>
    </aside>
  );
}
