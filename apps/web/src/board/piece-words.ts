import { words } from '../words/english.ts';
import {
  gramsText,
  lengthText,
  otherLengthText,
  portionText,
  type Units,
  weightText,
} from '../words/measures.ts';
import type { BoardView } from './board-model.ts';
import { allSpecies, nameIn } from './board-model.ts';
import type { LineView } from './orders-model.ts';
import type { Piece } from './pieces-model.ts';
import { ribsOver } from './ruler-model.ts';

/** Size of a piece: as it was asked for, or for a free stretch its length. */
export function sizeText(piece: Piece, units: Units): string {
  if (piece.isFree && piece.span) return lengthText(piece.span.toUm - piece.span.fromUm, units);
  return portionText(piece.portion, units);
}

export function ownerText(piece: Piece, view: BoardView): string {
  const order = view.orderById.get(piece.holder?.orderId ?? '');
  if (!order) return words.piece.forCounter;
  return words.piece.forOwner(order.mark.letter, order.owner);
}

export function pieceTitle({ name, isFree, holder }: Piece): string {
  if (!isFree) return name;
  return holder ? words.piece.leftWhole(name) : words.piece.free(name);
}

/** A piece in one breath, for a screen reader: what, size, weight, whose. */
export function sayPiece(piece: Piece, view: BoardView): string {
  const { shop } = view.board;
  return [
    pieceTitle(piece),
    sizeText(piece, shop),
    words.piece.about(weightText(piece.massMg, shop)),
    ownerText(piece, view),
  ]
    .filter((part) => part !== '')
    .join(', ');
}

/** "6 × Bone-in rib chop, 1¼ in" */
export function lineText(line: LineView, view: BoardView): string {
  const { shop } = view.board;
  const name = nameIn(allSpecies[line.speciesId], line.cut);
  const size = portionText(line.portion, shop);
  const much = line.counts === 'pieces' ? words.orders.times(line.asked) : gramsText(line.asked, shop);
  return `${much} ${name}${size === '' ? '' : `, ${size}`}`;
}

export function fillText(line: LineView, units: Units): string {
  const say = (amount: number): string =>
    line.counts === 'pieces' ? String(amount) : gramsText(amount, units);
  return words.orders.of(say(line.filled), say(line.asked));
}

/** Where a piece lies: ribs over it, and its place on the rule in the shop's unit and the other. */
export function placeTexts(piece: Piece, view: BoardView): string[] {
  const side = view.animals.flatMap(({ sides }) => sides).find(({ sideId }) => sideId === piece.sideId);
  const bar = side?.bars.find(({ barId }) => barId === piece.barId);
  const run = bar?.runs.find(({ blocks }) => blocks.some(({ pieceId }) => pieceId === piece.pieceId));
  if (!bar || !run || !piece.span) return [];
  const { shop } = view.board;
  const { fromUm, toUm } = piece.span;
  const ribs = ribsOver(bar, run, piece.span);
  const at = words.piece.at(lengthText(fromUm, shop), lengthText(toUm, shop));
  const size = otherLengthText(toUm - fromUm, shop);
  return [...(ribs ? [words.piece.ribs(ribs.first, ribs.last)] : []), `${at} (${size})`];
}
