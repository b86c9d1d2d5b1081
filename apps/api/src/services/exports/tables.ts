import {
  addDays,
  billRows,
  csv,
  decimalText,
  type JournalRow,
  localDateAt,
  movementRows,
  spanOf,
} from '@flitchbook/books';
import {
  type BillRecord,
  findOrder,
  findShop,
  listBills,
  listPaymentsBetween,
  type PaymentRecord,
  type Shop,
  type Tx,
} from '@flitchbook/db';
import { done, type Outcome, refused } from '../../refusals.ts';
import { bookSettingsIn } from '../book-settings/read.ts';
import type { Ctx } from '../ctx.ts';
import { authorise } from '../roles.ts';
import { look } from '../transact.ts';

export interface Dates {
  readonly from: string;
  readonly to: string;
}

interface Books {
  readonly shop: Shop;
  readonly bills: readonly BillRecord[];
  readonly payments: readonly PaymentRecord[];
}

async function booksOf(tx: Tx, ctx: Ctx, { from, to }: Dates): Promise<Outcome<Books>> {
  const { shopId } = ctx.actor;
  const shop = await findShop(tx, shopId);
  if (!shop) throw new Error('the shop of a session is gone');
  const first = spanOf({ date: from, from: '00:00', to: '23:59' }, shop.timeZone);
  const last = spanOf({ date: addDays(to, 1), from: '00:00', to: '23:59' }, shop.timeZone);
  if (!first.ok || !last.ok || to < from)
    return refused('request.invalid', 'The dates must be days, the first not after the last.');
  return done({
    shop,
    bills: await listBills(tx, shopId, from, to),
    payments: await listPaymentsBetween(tx, shopId, first.value.startsAt, last.value.startsAt),
  });
}

const billColumns = [
  'bill',
  'date',
  'order',
  'customer',
  'line',
  'kind',
  'name',
  'count',
  'weight',
  'unit',
  'price',
  'per',
  'amount',
  'tax class',
  'currency',
];

/** Every line of the bills of some days. */
export async function billsTable(ctx: Ctx, dates: Dates): Promise<Outcome<string>> {
  const refusal = authorise(ctx, 'exports.read');
  if (refusal) return refusal;
  return look(ctx.db, async (tx) => {
    const books = await booksOf(tx, ctx, dates);
    if (!books.ok) return books;
    const { shop, bills } = books.value;
    const rows = [];
    for (const { number, issuedOn, orderId, lines } of bills) {
      const order = await findOrder(tx, ctx.actor.shopId, orderId);
      for (const [place, { kind, name, count, weight, price, amountMinor, taxClass }] of lines.entries())
        rows.push([
          number,
          issuedOn,
          order?.number ?? null,
          order?.owner ?? null,
          place + 1,
          kind,
          name,
          count,
          weight?.text ?? null,
          weight?.unit ?? null,
          price && decimalText(price.minor, shop.currency),
          price?.per ?? null,
          amountMinor < 0
            ? `(${decimalText(-amountMinor, shop.currency)})`
            : decimalText(amountMinor, shop.currency),
          taxClass,
          shop.currency,
        ]);
    }
    return done(csv(billColumns, rows));
  });
}

/** Settled bills and moved money as double entries: each reference balances. */
export async function journalTable(ctx: Ctx, dates: Dates): Promise<Outcome<string>> {
  const refusal = authorise(ctx, 'exports.read');
  if (refusal) return refusal;
  return look(ctx.db, async (tx) => {
    const books = await booksOf(tx, ctx, dates);
    if (!books.ok) return books;
    const { shop, bills, payments } = books.value;
    const { accounts } = (await bookSettingsIn(tx, shop)).settings.money;
    const settledAt = new Map<string, string>();
    for (const { orderId, settledAt: at } of bills) settledAt.set(orderId, at);
    const rows: JournalRow[] = bills.flatMap((bill) =>
      billRows({ date: bill.issuedOn, reference: `bill ${bill.number}` }, bill, accounts),
    );
    for (const payment of payments) {
      const entry = {
        date: localDateAt(payment.at, shop.timeZone),
        reference: payment.orderId ? `payment ${payment.paymentId}` : `counter ${payment.handOverId}`,
      };
      // Over the counter nobody owes anything: the sale and its money are one entry.
      if (payment.orderId === null)
        rows.push(...movementRows(entry, payment, false, { ...accounts, owedByCustomers: accounts.sales }));
      else
        rows.push(
          ...movementRows(entry, payment, (settledAt.get(payment.orderId) ?? '9') <= payment.at, accounts),
        );
    }
    const text = (minor: number): string => decimalText(minor, shop.currency);
    return done(
      csv(
        ['date', 'reference', 'account', 'debit', 'credit', 'currency'],
        rows.map((row) => [
          row.date,
          row.reference,
          row.account,
          text(row.debitMinor),
          text(row.creditMinor),
          shop.currency,
        ]),
      ),
    );
  });
}
