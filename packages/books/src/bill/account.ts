import { addMinor } from '@flitchbook/plan';
import { type Made, made, slip } from '../slips.ts';

export type Method = 'cash' | 'card-terminal' | 'transfer';

/**
 * Money that moved, or a debt that was let go. Only ever added to.
 * deposit: before the bill; payment: on it; refund: money back; credit: part of the bill is not owed any more
 */
export interface Movement {
  readonly kind: 'deposit' | 'payment' | 'refund' | 'credit';
  readonly method: Method;
  readonly amountMinor: number;
}

/** Where an order stands. Positive `dueMinor` is owed by the customer, negative by the shop. */
export interface Account {
  /** null: not settled yet */
  readonly billedMinor: number | null;
  readonly depositMinor: number;
  /** deposits and payments less refunds */
  readonly paidMinor: number;
  readonly creditedMinor: number;
  readonly dueMinor: number;
}

export function accountOf(billedMinor: number | null, movements: readonly Movement[]): Account {
  const sum = (kind: Movement['kind']): number =>
    addMinor(movements.filter((movement) => movement.kind === kind).map(({ amountMinor }) => amountMinor));
  const depositMinor = sum('deposit');
  const paidMinor = depositMinor + sum('payment') - sum('refund');
  const creditedMinor = sum('credit');
  return {
    billedMinor,
    depositMinor,
    paidMinor,
    creditedMinor,
    dueMinor: (billedMinor ?? 0) - creditedMinor - paidMinor,
  };
}

/** Whether money may move so, as the account stands. */
export function checkMovement(account: Account, { kind, amountMinor }: Movement): Made<null> {
  const at = 'amountMinor';
  if (!Number.isSafeInteger(amountMinor) || amountMinor < 1)
    return slip(at, amountMinor, 'must be whole minor units, 1 or more');
  const { billedMinor, paidMinor, creditedMinor, dueMinor } = account;
  switch (kind) {
    case 'deposit':
      return billedMinor === null ? made(null) : slip('kind', kind, 'the order is settled; take a payment');
    case 'payment':
      if (billedMinor === null) return slip('kind', kind, 'the order has no bill yet; take a deposit');
      return amountMinor <= dueMinor
        ? made(null)
        : slip(at, amountMinor, `is more than the ${Math.max(0, dueMinor)} that are due`);
    case 'refund':
      return amountMinor <= paidMinor
        ? made(null)
        : slip(at, amountMinor, `is more than the ${paidMinor} that were paid`);
    case 'credit':
      if (billedMinor === null)
        return slip('kind', kind, 'the order has no bill yet, so nothing can be let go');
      return amountMinor <= billedMinor - creditedMinor
        ? made(null)
        : slip(at, amountMinor, `is more than the ${billedMinor - creditedMinor} that are left of the bill`);
  }
}
