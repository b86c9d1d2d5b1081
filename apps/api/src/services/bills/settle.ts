import { localDateAt } from '@flitchbook/books';
import type { OrderAccount, Settle } from '@flitchbook/contracts';
import { addBill, appendAudit, appendLedger, holdOrder, type Tx } from '@flitchbook/db';
import { done, type Outcome, refused } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { billList } from '../mails/mail-lists.ts';
import { tellOwner } from '../mails/write-mail.ts';
import { type OnceAnswer, type OnceKey, once } from '../once.ts';
import { authorise } from '../roles.ts';
import { transact } from '../transact.ts';
import { accountOnWire, draftBill, orderUnknown, readAtTill } from './order-account.ts';

async function settleIn(
  tx: Tx,
  ctx: Ctx,
  orderId: string,
  { fees, hasConsent = false }: Settle,
): Promise<Outcome<OrderAccount>> {
  const { shopId, personId } = ctx.actor;
  if (!(await holdOrder(tx, shopId, orderId))) return orderUnknown(orderId);
  const till = await readAtTill(tx, ctx, orderId);
  if (!till.ok) return till;
  const { order, bill, unpacked, account, bench } = till.value;
  if (bill)
    return refused(
      'bill.already-settled',
      `Order ${order.number} is settled: bill ${bill.number}. One order has one bill.`,
    );
  if (unpacked > 0)
    return refused(
      'bill.too-early',
      `${unpacked} packs of order ${order.number} are not weighed yet. The bill waits for the scale.`,
    );
  const drawn = draftBill(till.value, { fees, hasConsent });
  if (!drawn.ok)
    return refused('bill.invalid', 'The bill cannot be drawn; errors says why.', { faults: drawn.slips });
  const { lines, taxes, netMinor, taxMinor, totalMinor, needsConsent, over } = drawn.value;
  if (needsConsent) {
    const faults = over.map(({ lineId, limitMinor, amountMinor }) => ({
      at: lineId,
      value: amountMinor,
      says: `is above ${limitMinor}, the estimate and its grace`,
    }));
    return refused(
      'bill.needs-consent',
      'Some lines weigh more than was said. Ask the customer, then settle with consent.',
      { faults },
    );
  }
  const billId = ctx.ids.newId();
  const issuedOn = localDateAt(ctx.clock().toISOString(), bench.shop.timeZone);
  const depositMinor = account.paidMinor;
  const number = await addBill(tx, {
    shopId,
    billId,
    orderId,
    issuedOn,
    netMinor,
    taxMinor,
    totalMinor,
    depositMinor,
    taxes,
    lines,
    settledBy: personId,
  });
  const facts = { number, totalMinor };
  await appendLedger(tx, { shopId, kind: 'order.settled', dayId: order.dayId, orderId, personId, facts });
  await appendAudit(tx, { shopId, personId, action: 'order.settle', subject: orderId, facts });
  const after = await readAtTill(tx, ctx, orderId);
  if (!after.ok) return after;
  const settled = after.value;
  await tellOwner(tx, ctx, 'order.receipt', settled.order, (voice) =>
    settled.bill ? [billList(voice, settled.bill, settled.account.dueMinor)] : [],
  );
  return done(accountOnWire(settled));
}

/** Draws the one bill of an order, on what its packs weigh. */
export async function settleOrder(
  ctx: Ctx,
  orderId: string,
  input: Settle,
  key: OnceKey,
): Promise<Outcome<OnceAnswer<OrderAccount>>> {
  const refusal = authorise(ctx, 'bills.settle');
  if (refusal) return refusal;
  return transact(ctx.db, (tx) => once(tx, ctx.actor, key, () => settleIn(tx, ctx, orderId, input)));
}
