/** How an order is told from the others: a letter first, then an ink and a pattern. Colour never speaks alone. */
export interface OrderMark {
  readonly letter: string;
  /** 1 to `inkCount`: the class `ink-n` sets its colours */
  readonly ink: number;
  readonly pattern: Pattern;
}

const patterns = ['dots', 'upright', 'level', 'waves', 'crosses', 'rings', 'chevrons'] as const;
export type Pattern = (typeof patterns)[number];

const inkCount = 12;

/** No I and no O: on a block of meat they read as 1 and 0. */
const alphabet = 'ABCDEFGHJKLMNPQRSTUVWXYZ';

/** A, B ... Z, then AA, AB ... for the order at `index`, counted from 0. */
export function letterAt(index: number): string {
  const last = alphabet[index % alphabet.length] ?? '';
  const before = Math.floor(index / alphabet.length);
  return before === 0 ? last : letterAt(before - 1) + last;
}

/** Inks and patterns step in cycles of 12 and 7, so that a pair comes again only after 84 orders. */
const markAt = (index: number): OrderMark => ({
  letter: letterAt(index),
  ink: (index % inkCount) + 1,
  pattern: patterns[index % patterns.length] ?? 'dots',
});

/** Marks by order id, lettered by order number, so that a new order never renames an old one. */
export function markOrders(
  orders: readonly { readonly orderId: string; readonly number: number }[],
): ReadonlyMap<string, OrderMark> {
  const inTurn = [...orders].sort((left, right) => left.number - right.number);
  return new Map(inTurn.map(({ orderId }, index) => [orderId, markAt(index)]));
}
