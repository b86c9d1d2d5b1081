import type { BoardView } from '../board/board-model.ts';
import type { LineView, OrderView, ShareView } from '../board/orders-model.ts';

/** A customer who does not get all of what was asked. */
export interface Affected {
  readonly orderId: string;
  readonly number: number;
  readonly owner: string;
  readonly lines: readonly LineView[];
  readonly shares: readonly ShareView[];
  /** customers who have what this one lacks, each once */
  readonly others: readonly string[];
}

export interface Watch {
  /** promised and not there: to be settled before the first cut */
  readonly promised: readonly Affected[];
  /** wished and not there */
  readonly wished: readonly Affected[];
}

function affectedOf(view: BoardView, order: OrderView, rank: LineView['rank']): Affected[] {
  const isMeant = (entry: LineView | ShareView): boolean => entry.isShort && entry.rank === rank;
  const lines = order.lines.filter(isMeant);
  const shares = order.shares.filter(isMeant);
  if (lines.length + shares.length === 0) return [];
  const holders = [...lines, ...shares].flatMap(({ short }) => short?.orderIds ?? []);
  const others = [...new Set(holders)].flatMap((orderId) => view.orderById.get(orderId)?.owner ?? []);
  const { orderId, number, owner } = order;
  return [{ orderId, number, owner, lines, shares, others: [...new Set(others)] }];
}

/** Everybody whom the animals of a day leave short, each once in a list, by order number. */
export function watchOf(view: BoardView): Watch {
  const orders = view.orders.toSorted((a, b) => a.number - b.number);
  return {
    promised: orders.flatMap((order) => affectedOf(view, order, 'promised')),
    wished: orders.flatMap((order) => affectedOf(view, order, 'wished')),
  };
}
