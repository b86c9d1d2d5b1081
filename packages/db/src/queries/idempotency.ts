import type { Tx } from '../database.ts';
import type { IdempotencyState, IdempotentRequest, StoredAnswer } from './shapes.ts';

/** Call it first in the transaction of the effect. */
export async function beginIdempotent(_tx: Tx, request: IdempotentRequest): Promise<IdempotencyState> {
  throw new Error('not yet');
}

export async function finishIdempotent(_tx: Tx, request: IdempotentRequest, answer: StoredAnswer): Promise<void> {
  throw new Error('not yet');
}

export async function forgetOldAnswers(_tx: Tx, shopId: string, olderThanDays: number): Promise<number> {
  throw new Error('not yet');
}
