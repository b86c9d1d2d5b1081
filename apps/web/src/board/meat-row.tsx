import { LetterPlate } from '../marks/letter-plate.tsx';
import { fillOf } from '../marks/pattern-fills.tsx';
import { silent } from '../marks/silent.ts';
import { words } from '../words/english.ts';
import { lengthText } from '../words/measures.ts';
import { meatHeight } from './bar-rows.ts';
import type { BoardView } from './board-model.ts';
import { sayPiece, sizeText } from './piece-words.ts';
import type { Piece } from './pieces-model.ts';
import { placePlates } from './plates-model.ts';
import type { RulerBlock, RulerRun } from './ruler-model.ts';
import { fitText, shorter } from './text-fit.ts';

export interface MeatLook {
  readonly view: BoardView;
  readonly pxPerUm: number;
  readonly y: number;
  readonly litOrderId: string | null;
  readonly chosenPieceId: string | null;
  /** the block that takes part in the tab order */
  readonly currentId: string | null;
  /** a block has the focus. Not listened for on the drawing: that would make the whole of it focusable */
  readonly onTake: (pieceId: string) => void;
}

function litClass(piece: Piece | undefined, { litOrderId, chosenPieceId }: MeatLook): string {
  if (piece && piece.pieceId === chosenPieceId) return ' chosen';
  if (litOrderId === null) return '';
  return piece?.holder?.orderId === litOrderId ? ' lit' : ' dim';
}

interface BlockProps {
  readonly block: RulerBlock;
  readonly look: MeatLook;
}

/** Slivers thinner than this cannot be aimed at; the pieces beside them can. */
export const leastBlockPx = 2.5;

function Block({ block, look }: BlockProps) {
  const { view, pxPerUm, y } = look;
  const piece = view.pieces.get(block.pieceId);
  const mark = view.marks.get(piece?.holder?.orderId ?? '');
  const x = block.fromUm * pxPerUm;
  const width = Math.max(1, (block.toUm - block.fromUm) * pxPerUm - (block.isFree ? 1 : 0));
  const shape = { x, y: y + 0.75, width, height: meatHeight - 1.5, rx: Math.min(3, width / 4) };
  const kind = block.isFree ? 'block free' : 'block';
  return (
    // biome-ignore lint/a11y/useSemanticElements: a button cannot stand inside a drawing
    <g
      class={`${kind}${mark ? ` ink-${mark.ink}` : ''}${litClass(piece, look)}`}
      role="button"
      aria-label={piece ? sayPiece(piece, view) : ''}
      aria-pressed={look.chosenPieceId === block.pieceId}
      tabindex={look.currentId === block.pieceId ? 0 : -1}
      data-piece={block.pieceId}
      onFocus={() => look.onTake(block.pieceId)}
    >
      <rect class={mark ? 'tint' : 'free-ground'} {...shape} />
      <rect class="fill" {...shape} fill={block.isFree ? 'url(#fill-free)' : mark ? fillOf(mark) : 'none'} />
      <rect class={mark ? 'edge' : 'free-edge'} {...shape} />
    </g>
  );
}

function FreeWords({ block, look }: BlockProps) {
  const { view, pxPerUm, y } = look;
  const piece = view.pieces.get(block.pieceId);
  if (!piece) return null;
  const width = (block.toUm - block.fromUm) * pxPerUm;
  const length = sizeText(piece, view.board.shop);
  const kind = piece.holder ? words.sides.leftWhole : words.sides.freeStretch;
  const text = fitText([`${kind} ${length}`, length], width - 14, 12);
  if (text === null) return null;
  const middle = ((block.fromUm + block.toUm) / 2) * pxPerUm;
  const half = (text.length * 7) / 2 + 4;
  return (
    <g class="free-words" {...silent}>
      <rect x={middle - half} y={y + meatHeight / 2 - 9} width={half * 2} height="18" rx="3" />
      <text x={middle} y={y + meatHeight / 2 + 4.3}>
        {text}
      </text>
    </g>
  );
}

/** The pieces of a run as they lie on the block, and the letters over them. */
export function MeatRow({ run, look }: { readonly run: RulerRun; readonly look: MeatLook }) {
  const { view, pxPerUm, y } = look;
  const seen = run.blocks.filter((block) => (block.toUm - block.fromUm) * pxPerUm >= leastBlockPx);
  const plates = placePlates(
    seen.filter(({ isFree }) => !isFree),
    view.pieces,
    pxPerUm,
  );
  const lostUm = run.toUm - run.drawnToUm;
  return (
    <g>
      {lostUm > 0 && (
        <rect
          class="drawn-away"
          x={run.drawnToUm * pxPerUm}
          y={y + 1}
          width={Math.max(0, lostUm * pxPerUm - 2)}
          height={meatHeight - 2}
        />
      )}
      {seen.map((block) => (
        <Block key={block.pieceId} block={block} look={look} />
      ))}
      <g class="plates" {...silent}>
        {plates.map(({ orderId, middlePx, sizePx }) => (
          <g key={middlePx} class={look.litOrderId === null || look.litOrderId === orderId ? '' : 'dim'}>
            <LetterPlate
              letter={view.marks.get(orderId)?.letter ?? ''}
              x={middlePx}
              y={y + meatHeight / 2}
              size={sizePx}
            />
          </g>
        ))}
      </g>
      {seen
        .filter(({ isFree }) => isFree)
        .map((block) => (
          <FreeWords key={block.pieceId} block={block} look={look} />
        ))}
    </g>
  );
}

const captionSize = 11.5;

/** What a run is called, under it, and how much a boned one draws up. */
export function RunCaption({ run, look }: { readonly run: RulerRun; readonly look: MeatLook }) {
  const { view, pxPerUm, y } = look;
  const drawsUp =
    run.toUm > run.drawnToUm
      ? words.sides.drawsUp(lengthText(run.toUm - run.drawnToUm, view.board.shop))
      : '';
  const names = shorter(run.stockName);
  const full = drawsUp === '' ? [] : names.map((name) => `${name} · ${drawsUp}`);
  const text = fitText([...full, ...names], (run.toUm - run.fromUm) * pxPerUm - 4, captionSize);
  if (text === null) return null;
  return (
    <text class="run-caption" x={run.fromUm * pxPerUm + 1} y={y} {...silent}>
      {text}
    </text>
  );
}
