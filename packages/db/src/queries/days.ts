import type { Tx } from '../database.ts';
import type { DayRecord, DaySummary, NewDay, StoredDay, Touch } from './shapes.ts';

export async function createDay(_tx: Tx, day: NewDay): Promise<void> {
  throw new Error('not yet');
}

export async function listDays(_tx: Tx, shopId: string): Promise<readonly DaySummary[]> {
  throw new Error('not yet');
}

export async function findDay(_tx: Tx, shopId: string, dayId: string): Promise<DayRecord | undefined> {
  throw new Error('not yet');
}

/** Call it with `reading: true`: several reads that must see one state. */
export async function loadCuttingDay(_tx: Tx, shopId: string, dayId: string): Promise<StoredDay | undefined> {
  throw new Error('not yet');
}

/** Locks the day and raises its version: first of all in every unit that changes a day. */
export async function touchDay(_tx: Tx, day: { readonly shopId: string; readonly dayId: string; readonly ifVersion?: number }): Promise<Touch> {
  throw new Error('not yet');
}

/** False when the version is stale or the day closed already. */
export async function closeDay(_tx: Tx, day: { readonly shopId: string; readonly dayId: string; readonly version: number }): Promise<boolean> {
  throw new Error('not yet');
}
