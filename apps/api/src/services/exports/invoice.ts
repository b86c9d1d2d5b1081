import { addDays, type Party, ublInvoice } from '@flitchbook/books';
import { done, type Outcome, refused } from '../../refusals.ts';
import { readAtTill } from '../bills/order-account.ts';
import type { Ctx } from '../ctx.ts';
import { authorise } from '../roles.ts';
import { look } from '../transact.ts';

const daysToPay = 14;

/** The settled bill of a business customer as an invoice that their program reads (UBL 2.1). */
export async function readInvoice(ctx: Ctx, orderId: string, buyer: Party): Promise<Outcome<string>> {
  const refusal = authorise(ctx, 'accounts.read');
  if (refusal) return refusal;
  return look(ctx.db, async (tx) => {
    const till = await readAtTill(tx, ctx, orderId);
    if (!till.ok) return till;
    const { order, bench, bill, account } = till.value;
    if (!bill) return refused('bill.missing', `Order ${order.number} has no bill yet: settle it first.`);
    const invoice = ublInvoice({
      number: bill.number,
      issuedOn: bill.issuedOn,
      dueOn: addDays(bill.issuedOn, daysToPay),
      currency: bench.shop.currency,
      orderNumber: order.number,
      seller: bench.settings.seller,
      buyer,
      bill: { ...bill, over: [], needsConsent: false },
      paidMinor: account.paidMinor,
    });
    return done(invoice);
  });
}
