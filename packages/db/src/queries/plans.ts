import type { Tx } from '../database.ts';
import type { PlanToStore, StoredPlan } from './shapes.ts';

/** Swaps the day's plan whole. @returns the day's new version; undefined, and nothing changed, when the day is no longer the one it was made for */
export async function storePlan(_tx: Tx, store: PlanToStore): Promise<number | undefined> {
  throw new Error('not yet');
}

export async function loadPlan(_tx: Tx, shopId: string, dayId: string): Promise<StoredPlan | undefined> {
  throw new Error('not yet');
}
