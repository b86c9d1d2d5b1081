import type { Portion } from '@flitchbook/carcass';
import type { CarcassShare, CuttingPlan, DemandLine, Rank, Shortfall } from '@flitchbook/plan';
import { markOrders, type OrderMark } from '../marks/order-marks.ts';
import type { Board, BoardOrder } from '../wire/board.ts';
import type { Holders } from './pieces-model.ts';

/** Why something falls short, and what else wants the same meat. */
export interface Want {
  readonly says: string;
  readonly kind: Shortfall['kind'];
  /** other orders it clashes with, in letter order */
  readonly orderIds: readonly string[];
  /** a choice that the butcher settled stands in the way */
  readonly byLock: boolean;
}

export interface LineView {
  readonly lineId: string;
  readonly speciesId: string;
  readonly cut: string;
  readonly portion: Portion;
  readonly rank: Rank;
  /** `asked` and `filled` are pieces, or grams of loose meat */
  readonly counts: 'pieces' | 'grams';
  readonly asked: number;
  readonly filled: number;
  readonly pieceIds: readonly string[];
  readonly short: Want | null;
  readonly isShort: boolean;
}

export interface ShareView {
  readonly shareId: string;
  readonly size: CarcassShare['size'];
  readonly rank: Rank;
  readonly sideIds: readonly string[];
  readonly short: Want | null;
  readonly isShort: boolean;
}

export interface OrderView {
  readonly orderId: string;
  readonly number: number;
  readonly owner: string;
  readonly note: string;
  readonly mark: OrderMark;
  readonly lines: readonly LineView[];
  readonly shares: readonly ShareView[];
  readonly isShort: boolean;
}

interface Book {
  readonly board: Board;
  readonly plan: CuttingPlan | null;
  readonly holders: Holders;
  readonly marks: ReadonlyMap<string, OrderMark>;
}

const fallbackMark: OrderMark = { letter: '?', ink: 1, pattern: 'dots' };

function readShortfall(book: Book, orderId: string, shortfall: Shortfall | null | undefined): Want | null {
  if (!shortfall) return null;
  const holders = [
    ...shortfall.withLines.map((lineId) => book.holders.ofLine(lineId)),
    ...shortfall.withShares.map((shareId) => book.holders.ofShare(shareId)),
  ];
  const others = new Set(
    holders.flatMap((holder) => (holder && holder.orderId !== orderId ? [holder.orderId] : [])),
  );
  return {
    says: shortfall.says,
    kind: shortfall.kind,
    orderIds: [...book.marks.keys()].filter((id) => others.has(id)),
    byLock: shortfall.kind === 'locked' || shortfall.withLocks.length > 0,
  };
}

function viewLine(book: Book, line: DemandLine): LineView {
  const fill = book.plan?.lines.find((candidate) => candidate.lineId === line.lineId);
  const asked = 'pieces' in line.ask ? line.ask.pieces : line.ask.grams;
  const filled = fill?.filled ?? 0;
  return {
    lineId: line.lineId,
    speciesId: line.speciesId,
    cut: line.cut,
    portion: line.portion,
    rank: line.rank,
    counts: 'pieces' in line.ask ? 'pieces' : 'grams',
    asked,
    filled,
    pieceIds: fill?.pieceIds ?? [],
    short: readShortfall(book, line.orderId, fill?.shortfall),
    isShort: book.plan !== null && filled < asked,
  };
}

function viewShare(book: Book, share: CarcassShare): ShareView {
  const fill = book.plan?.shares.find((candidate) => candidate.shareId === share.shareId);
  const sidesWanted = share.size === 'whole' ? 2 : 1;
  return {
    shareId: share.shareId,
    size: share.size,
    rank: share.rank,
    sideIds: fill?.sideIds ?? [],
    short: readShortfall(book, share.orderId, fill?.shortfall),
    isShort: book.plan !== null && (fill?.sideIds.length ?? 0) < sidesWanted,
  };
}

function viewOrder(book: Book, order: BoardOrder): OrderView {
  const { lines: allLines, shares: allShares } = book.board.cuttingDay;
  const lines = allLines.filter((line) => line.orderId === order.orderId).map((line) => viewLine(book, line));
  const shares = allShares
    .filter((share) => share.orderId === order.orderId)
    .map((share) => viewShare(book, share));
  return {
    orderId: order.orderId,
    number: order.number,
    owner: order.owner,
    note: order.note,
    mark: book.marks.get(order.orderId) ?? fallbackMark,
    lines: [...lines].sort((left, right) => Number(right.isShort) - Number(left.isShort)),
    shares,
    isShort: [...lines, ...shares].some(({ isShort }) => isShort),
  };
}

/** 0: a promise is short, 1: only wishes are short, 2: all filled. */
function urgency(order: OrderView): number {
  const short = [...order.lines, ...order.shares].filter(({ isShort }) => isShort);
  if (short.length === 0) return 2;
  return short.some(({ rank }) => rank === 'promised') ? 0 : 1;
}

/** The orders of a day: short promises first, then short wishes, then the rest, each by number. */
export function viewOrders(board: Board, plan: CuttingPlan | null, holders: Holders): OrderView[] {
  const book: Book = { board, plan, holders, marks: markOrders(board.orders) };
  return board.orders
    .map((order) => viewOrder(book, order))
    .sort((left, right) => urgency(left) - urgency(right) || left.number - right.number);
}

export interface Tally {
  readonly lines: number;
  readonly filledLines: number;
  readonly shortPromised: number;
  readonly shortWished: number;
}

/** Lines and shares of a day, counted. */
export function tallyOrders(orders: readonly OrderView[]): Tally {
  const all = orders.flatMap((order) => [...order.lines, ...order.shares]);
  const short = all.filter(({ isShort }) => isShort);
  const shortPromised = short.filter(({ rank }) => rank === 'promised').length;
  return {
    lines: all.length,
    filledLines: all.length - short.length,
    shortPromised,
    shortWished: short.length - shortPromised,
  };
}
