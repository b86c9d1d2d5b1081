import type { Tx } from '../database.ts';
import type { NewOrder, OrderRecord, TouchedDay } from './shapes.ts';

export async function addOrder(_tx: Tx, day: TouchedDay, order: NewOrder): Promise<{ readonly number: number }> {
  throw new Error('not yet');
}

export async function cancelOrder(_tx: Tx, day: TouchedDay, order: { readonly orderId: string; readonly version: number }): Promise<'cancelled' | 'already' | 'stale' | 'unknown'> {
  throw new Error('not yet');
}

export async function listOrders(_tx: Tx, shopId: string, dayId: string): Promise<readonly OrderRecord[]> {
  throw new Error('not yet');
}

export async function findOrder(_tx: Tx, shopId: string, orderId: string): Promise<OrderRecord | undefined> {
  throw new Error('not yet');
}
