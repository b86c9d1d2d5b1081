import { and, asc, between, eq, inArray, type SQL, sql } from 'drizzle-orm';
import type { Tx } from '../database.ts';
import { handleOf } from '../engines/engine.ts';
import { billLines, bills, orders, payments } from '../schema/index.ts';
import type { BillRecord, NewBill, NewPayment, PaymentRecord, StoredBillLine } from './book-shapes.ts';
import { nextNumber } from './counters.ts';

/** Money and packs of one order move one after the other. @returns false when there is no such order */
export async function holdOrder(tx: Tx, shopId: string, orderId: string): Promise<boolean> {
  const found = await handleOf(tx)
    .select({ orderId: orders.orderId })
    .from(orders)
    .where(and(eq(orders.shopId, shopId), eq(orders.orderId, orderId)))
    .for('update');
  return found.length > 0;
}

/** @throws ConstraintViolation bills_one_per_order, bills_lines_add_up (when the unit ends), bill_lines_pack_once */
export async function addBill(tx: Tx, bill: NewBill): Promise<number> {
  const { lines, taxes, ...same } = bill;
  const { shopId, billId } = bill;
  const handle = handleOf(tx);
  const number = await nextNumber(tx, shopId, 'bill');
  await handle.insert(bills).values({ ...same, number, taxes: [...taxes] });
  if (lines.length > 0)
    await handle.insert(billLines).values(
      lines.map(({ weight, price, ...line }, place) => ({
        ...line,
        shopId,
        billId,
        place,
        packId: line.kind === 'pack' ? line.about : null,
        weightText: weight?.text ?? null,
        weightUnit: weight?.unit ?? null,
        priceMinor: price?.minor ?? null,
        pricePer: price?.per ?? null,
      })),
    );
  return number;
}

function lineFrom(row: typeof billLines.$inferSelect): StoredBillLine {
  const { kind, name, about, count, weightText, weightUnit, priceMinor, pricePer, amountMinor, taxClass } =
    row;
  return {
    kind,
    name,
    about,
    count,
    weight: weightText !== null && weightUnit !== null ? { text: weightText, unit: weightUnit } : null,
    price: priceMinor !== null && pricePer !== null ? { minor: priceMinor, per: pricePer } : null,
    amountMinor,
    taxClass,
  };
}

async function readBills(tx: Tx, shopId: string, which: SQL | undefined): Promise<readonly BillRecord[]> {
  const handle = handleOf(tx);
  const found = await handle
    .select()
    .from(bills)
    .where(and(eq(bills.shopId, shopId), which))
    .orderBy(asc(bills.number));
  if (found.length === 0) return [];
  const ids = found.map(({ billId }) => billId);
  const lines = await handle
    .select()
    .from(billLines)
    .where(and(eq(billLines.shopId, shopId), inArray(billLines.billId, ids)))
    .orderBy(asc(billLines.billId), asc(billLines.place));
  return found.map((row) => ({
    ...row,
    settledAt: row.settledAt.toISOString(),
    lines: lines.filter(({ billId }) => billId === row.billId).map(lineFrom),
  }));
}

export async function findBill(tx: Tx, shopId: string, orderId: string): Promise<BillRecord | undefined> {
  const [bill] = await readBills(tx, shopId, eq(bills.orderId, orderId));
  return bill;
}

/** Settled on the dates from `from` to `to`, both of them in. */
export const listBills = (tx: Tx, shopId: string, from: string, to: string): Promise<readonly BillRecord[]> =>
  readBills(tx, shopId, between(bills.issuedOn, from, to));

export async function addPayment(tx: Tx, payment: NewPayment): Promise<void> {
  await handleOf(tx).insert(payments).values(payment);
}

async function readPayments(
  tx: Tx,
  shopId: string,
  which: SQL | undefined,
): Promise<readonly PaymentRecord[]> {
  const found = await handleOf(tx)
    .select()
    .from(payments)
    .where(and(eq(payments.shopId, shopId), which))
    .orderBy(asc(payments.at), asc(payments.paymentId));
  return found.map((row) => ({ ...row, at: row.at.toISOString() }));
}

export const listPayments = (tx: Tx, shopId: string, orderId: string): Promise<readonly PaymentRecord[]> =>
  readPayments(tx, shopId, eq(payments.orderId, orderId));

/** Moved between two instants: the first is in, the second is not. */
export const listPaymentsBetween = (
  tx: Tx,
  shopId: string,
  from: string,
  to: string,
): Promise<readonly PaymentRecord[]> =>
  readPayments(
    tx,
    shopId,
    sql`${payments.at} >= ${from}::timestamptz and ${payments.at} < ${to}::timestamptz`,
  );
