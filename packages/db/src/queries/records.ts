import { and, asc, desc, eq, gt } from 'drizzle-orm';
import type { Tx } from '../database.ts';
import { handleOf } from '../engines/engine.ts';
import { audit, ledger } from '../schema/index.ts';
import { nextNumber } from './counters.ts';
import type { AuditEntry, LedgerEntry, LedgerRecord } from './shapes.ts';

/** Call it late: it holds the shop's ledger until the unit ends. @returns its number in the shop's ledger */
export async function appendLedger(tx: Tx, entry: LedgerEntry): Promise<number> {
  const seq = await nextNumber(tx, entry.shopId, 'ledger');
  await handleOf(tx)
    .insert(ledger)
    .values({ ...entry, seq });
  return seq;
}

export async function listLedger(
  tx: Tx,
  shopId: string,
  page: { readonly after: number; readonly limit: number },
): Promise<readonly LedgerRecord[]> {
  const found = await handleOf(tx)
    .select()
    .from(ledger)
    .where(and(eq(ledger.shopId, shopId), gt(ledger.seq, page.after)))
    .orderBy(asc(ledger.seq))
    .limit(page.limit);
  return found.map((row) => ({ ...row, at: row.at.toISOString() }));
}

/** 0 while there is none. */
export async function lastLedgerSeq(tx: Tx, shopId: string): Promise<number> {
  const [last] = await handleOf(tx)
    .select({ seq: ledger.seq })
    .from(ledger)
    .where(eq(ledger.shopId, shopId))
    .orderBy(desc(ledger.seq))
    .limit(1);
  return last?.seq ?? 0;
}

/** Entries of one kind about one day, in order. */
export async function listLedgerOfDay(
  tx: Tx,
  shopId: string,
  dayId: string,
  kind: string,
): Promise<readonly LedgerRecord[]> {
  const found = await handleOf(tx)
    .select()
    .from(ledger)
    .where(and(eq(ledger.shopId, shopId), eq(ledger.dayId, dayId), eq(ledger.kind, kind)))
    .orderBy(asc(ledger.seq));
  return found.map((row) => ({ ...row, at: row.at.toISOString() }));
}

export async function appendAudit(tx: Tx, entry: AuditEntry): Promise<void> {
  await handleOf(tx).insert(audit).values(entry);
}
