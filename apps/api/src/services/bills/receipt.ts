import { moneyText } from '@flitchbook/books';
import { done, type Outcome, refused } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { ownOrder } from '../reservations/own-order.ts';
import { authorise } from '../roles.ts';
import { look } from '../transact.ts';
import { readAtTill } from './order-account.ts';

/** A receipt as rows of words: the same for a page and for a PDF. */
export interface Receipt {
  readonly shop: string;
  readonly title: string;
  readonly subtitle: string;
  readonly rows: readonly {
    readonly name: string;
    readonly weight: string;
    readonly price: string;
    readonly amount: string;
  }[];
  readonly sums: readonly { readonly name: string; readonly amount: string }[];
  /** set where meat was cut for its owner */
  readonly caution: string | null;
}

const ownersCaution =
  'For the owner’s own table. Not for sale, swap or gift. Ask your inspector if the owner’s plan is different.';

/** The settled bill of an order and the money that moved for it. */
export async function readReceipt(ctx: Ctx, orderId: string): Promise<Outcome<Receipt>> {
  const refusal = authorise(ctx, 'receipts.read');
  if (refusal) return refusal;
  return look(ctx.db, async (tx) => {
    const own = await ownOrder(tx, ctx, orderId);
    if (!own.ok) return own;
    const till = await readAtTill(tx, ctx, orderId);
    if (!till.ok) return till;
    const { order, bench, bill, account, payments } = till.value;
    if (!bill) return refused('bill.missing', `Order ${order.number} has no bill yet: settle it first.`);
    const money = (minor: number): string => moneyText(minor, bench.shop.currency);
    const isOwners = bench.packs.some((pack) => pack.orderId === orderId && pack.legalMode === 'for-owner');
    return done({
      shop: bench.settings.seller.name,
      title: `Bill ${bill.number}`,
      subtitle: `${bill.issuedOn} · order ${order.number}, ${order.owner}`,
      rows: bill.lines.map(({ name, count, weight, price, amountMinor }) => ({
        name: weight === null && count > 1 ? `${count} × ${name}` : name,
        weight: weight ? `${weight.text} ${weight.unit}` : '',
        price: price ? `${money(price.minor)}/${price.per}` : '',
        amount: money(amountMinor),
      })),
      sums: [
        ...bill.taxes
          .filter(({ taxMinor }) => taxMinor > 0)
          .map(({ name, taxMinor }) => ({ name: `Tax, ${name}`, amount: money(taxMinor) })),
        { name: 'Total', amount: money(bill.totalMinor) },
        ...payments.map(({ kind, at, amountMinor }) => ({
          name: `${kind}, ${at.slice(0, 10)}`,
          amount: money(kind === 'refund' ? amountMinor : -amountMinor),
        })),
        account.dueMinor < 0
          ? { name: 'We owe you', amount: money(-account.dueMinor) }
          : { name: 'Due', amount: money(account.dueMinor) },
      ],
      caution: isOwners ? ownersCaution : null,
    });
  });
}
