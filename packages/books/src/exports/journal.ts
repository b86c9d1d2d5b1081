import type { Movement } from '../bill/account.ts';

/** The shop's own accounts, by what they are for. */
export interface Accounts {
  readonly owedByCustomers: string;
  readonly deposits: string;
  readonly sales: string;
  readonly tax: string;
  readonly cash: string;
  readonly cardTerminal: string;
  readonly bank: string;
  readonly letGo: string;
}

export interface JournalRow {
  readonly date: string;
  /** bill or order */
  readonly reference: string;
  readonly account: string;
  readonly debitMinor: number;
  readonly creditMinor: number;
}

interface Entry {
  readonly date: string;
  readonly reference: string;
}

/** Both sides of one entry; an amount of nothing is no row. */
function pair({ date, reference }: Entry, debit: string, credit: string, minor: number): JournalRow[] {
  if (minor === 0) return [];
  return [
    { date, reference, account: debit, debitMinor: minor, creditMinor: 0 },
    { date, reference, account: credit, debitMinor: 0, creditMinor: minor },
  ];
}

const purse = ({ method }: Movement, { cash, cardTerminal, bank }: Accounts): string =>
  ({ cash, 'card-terminal': cardTerminal, transfer: bank })[method];

/** A settled bill: sales and tax against what the customer owes, and the deposit used up. */
export const billRows = (
  entry: Entry,
  bill: { readonly netMinor: number; readonly taxMinor: number; readonly depositMinor: number },
  to: Accounts,
): JournalRow[] => [
  ...pair(entry, to.owedByCustomers, to.sales, bill.netMinor),
  ...pair(entry, to.owedByCustomers, to.tax, bill.taxMinor),
  ...pair(entry, to.deposits, to.owedByCustomers, bill.depositMinor),
];

/** Money that moved. @param isSettled a refund before the bill comes out of the deposits */
export function movementRows(
  entry: Entry,
  movement: Movement,
  isSettled: boolean,
  to: Accounts,
): JournalRow[] {
  const { kind, amountMinor } = movement;
  const owed = isSettled ? to.owedByCustomers : to.deposits;
  switch (kind) {
    case 'deposit':
      return pair(entry, purse(movement, to), to.deposits, amountMinor);
    case 'payment':
      return pair(entry, purse(movement, to), to.owedByCustomers, amountMinor);
    case 'refund':
      return pair(entry, owed, purse(movement, to), amountMinor);
    case 'credit':
      return pair(entry, to.letGo, to.owedByCustomers, amountMinor);
  }
}
