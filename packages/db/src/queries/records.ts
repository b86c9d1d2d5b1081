import type { Tx } from '../database.ts';
import type { AuditEntry, LedgerEntry, LedgerRecord } from './shapes.ts';

/** @returns its number in the shop's ledger */
export async function appendLedger(_tx: Tx, entry: LedgerEntry): Promise<number> {
  throw new Error('not yet');
}

export async function listLedger(_tx: Tx, shopId: string, page: { readonly after: number; readonly limit: number }): Promise<readonly LedgerRecord[]> {
  throw new Error('not yet');
}

export async function appendAudit(_tx: Tx, entry: AuditEntry): Promise<void> {
  throw new Error('not yet');
}
