import { checkMovement } from '@flitchbook/books';
import type { NewPaymentOnWire, OrderAccount } from '@flitchbook/contracts';
import { addPayment, appendLedger, holdOrder, type Tx } from '@flitchbook/db';
import { done, type Outcome, refused } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { type OnceAnswer, type OnceKey, once } from '../once.ts';
import { authorise } from '../roles.ts';
import { transact } from '../transact.ts';
import { accountOnWire, orderUnknown, readAtTill } from './order-account.ts';

async function takeIn(
  tx: Tx,
  ctx: Ctx,
  orderId: string,
  input: NewPaymentOnWire,
): Promise<Outcome<OrderAccount>> {
  const { shopId, personId } = ctx.actor;
  if (!(await holdOrder(tx, shopId, orderId))) return orderUnknown(orderId);
  const till = await readAtTill(tx, ctx, orderId);
  if (!till.ok) return till;
  const { kind, method, amountMinor, note = '', paymentId = ctx.ids.newId() } = input;
  const checked = checkMovement(till.value.account, { kind, method, amountMinor });
  if (!checked.ok)
    return refused('payment.invalid', 'Money cannot move so; errors says why.', { faults: checked.slips });
  await addPayment(tx, {
    shopId,
    paymentId,
    orderId,
    handOverId: null,
    kind,
    method,
    amountMinor,
    note,
    takenBy: personId,
  });
  const facts = { paymentId, method, amountMinor };
  await appendLedger(tx, {
    shopId,
    kind: `payment.${kind}`,
    dayId: till.value.order.dayId,
    orderId,
    personId,
    facts,
  });
  const after = await readAtTill(tx, ctx, orderId);
  return after.ok ? done(accountOnWire(after.value)) : after;
}

/**
 * Records money that moved: cash, a card terminal, a transfer. No network is asked; `docs/books.md` says where one would
 * be joined on.
 */
export async function takePayment(
  ctx: Ctx,
  orderId: string,
  input: NewPaymentOnWire,
  key: OnceKey,
): Promise<Outcome<OnceAnswer<OrderAccount>>> {
  const refusal = authorise(ctx, 'payments.take');
  if (refusal) return refusal;
  return transact(ctx.db, (tx) => once(tx, ctx.actor, key, () => takeIn(tx, ctx, orderId, input)));
}
