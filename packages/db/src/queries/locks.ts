import type { Lock } from '@flitchbook/plan';
import type { Tx } from '../database.ts';
import type { TouchedDay } from './shapes.ts';

export async function replaceLocks(_tx: Tx, day: TouchedDay, locks: readonly Lock[]): Promise<void> {
  throw new Error('not yet');
}

export async function listLocks(_tx: Tx, shopId: string, dayId: string): Promise<readonly Lock[]> {
  throw new Error('not yet');
}
