import type { Piece } from './pieces-model.ts';
import type { RulerBlock } from './ruler-model.ts';

/** A letter on the drawing, over one piece or over a row of pieces too narrow for a letter each. Lengths in px. */
export interface Plate {
  readonly orderId: string;
  readonly middlePx: number;
  readonly sizePx: number;
}

/** A letter is legible from here on. */
const leastPx = 13;
const mostPx = 24;

interface Row {
  orderId: string;
  name: string;
  fromPx: number;
  toPx: number;
  narrow: boolean;
}

/**
 * Where letters go on the pieces of a run. Narrow neighbours of one order and one cut share a letter; a piece or row
 * that is narrower still has none: its ink, its pattern and its name remain.
 */
export function placePlates(
  blocks: readonly RulerBlock[],
  pieces: ReadonlyMap<string, Piece>,
  pxPerUm: number,
): Plate[] {
  const rows: Row[] = [];
  for (const { pieceId, fromUm, toUm } of blocks) {
    const piece = pieces.get(pieceId);
    if (!piece?.holder) continue;
    const [fromPx, toPx] = [fromUm * pxPerUm, toUm * pxPerUm];
    const narrow = toPx - fromPx < leastPx + 3;
    const last = rows.at(-1);
    if (narrow && last?.narrow && last.orderId === piece.holder.orderId && last.name === piece.name)
      last.toPx = toPx;
    else rows.push({ orderId: piece.holder.orderId, name: piece.name, fromPx, toPx, narrow });
  }
  return rows
    .filter(({ fromPx, toPx }) => toPx - fromPx >= leastPx - 3)
    .map(({ orderId, fromPx, toPx }) => ({
      orderId,
      middlePx: (fromPx + toPx) / 2,
      sizePx: Math.min(mostPx, Math.max(leastPx, toPx - fromPx - 4)),
    }));
}
