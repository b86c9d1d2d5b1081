import { and, eq, lt, sql } from 'drizzle-orm';
import type { Tx } from '../database.ts';
import { handleOf } from '../engines/engine.ts';
import { rows } from '../engines/rows.ts';
import { idempotencyKeys } from '../schema/index.ts';
import type { IdempotencyState, IdempotentRequest, StoredAnswer } from './shapes.ts';

const sameRequest = ({ shopId, principal, route, key }: IdempotentRequest) =>
  and(
    eq(idempotencyKeys.shopId, shopId),
    eq(idempotencyKeys.principal, principal),
    eq(idempotencyKeys.route, route),
    eq(idempotencyKeys.key, key),
  );

/**
 * Call it first in the transaction of the effect (semantics: IETF draft-ietf-httpapi-idempotency-key-header-07).
 * @returns running: a twin is in its transaction at this moment; reused: the key came with another request
 */
export async function beginIdempotent(tx: Tx, request: IdempotentRequest): Promise<IdempotencyState> {
  const { shopId, principal, route, key, fingerprint } = request;
  const handle = handleOf(tx);
  // A lock by name, held to the end of the transaction: a twin is told at once instead of waiting for our commit.
  const name = JSON.stringify([shopId, principal, route, key]);
  const lock = await handle.execute(
    sql`select pg_try_advisory_xact_lock(hashtextextended(${name}, 0)) as free`,
  );
  if (!rows<{ free: boolean }>(lock)[0]?.free) return { state: 'running' };
  const [done] = await handle.select().from(idempotencyKeys).where(sameRequest(request));
  if (!done) return { state: 'fresh' };
  if (done.fingerprint !== fingerprint) return { state: 'reused' };
  return { state: 'replay', answer: { status: done.status, body: done.response } };
}

/** Keeps the answer, in the transaction of the effect. */
export async function finishIdempotent(
  tx: Tx,
  request: IdempotentRequest,
  answer: StoredAnswer,
): Promise<void> {
  await handleOf(tx)
    .insert(idempotencyKeys)
    .values({ ...request, status: answer.status, response: answer.body });
}

/** @returns how many answers were dropped */
export async function forgetOldAnswers(tx: Tx, shopId: string, olderThanDays: number): Promise<number> {
  const dropped = await handleOf(tx)
    .delete(idempotencyKeys)
    .where(
      and(
        eq(idempotencyKeys.shopId, shopId),
        lt(idempotencyKeys.createdAt, sql`now() - make_interval(days => ${olderThanDays})`),
      ),
    )
    .returning({ key: idempotencyKeys.key });
  return dropped.length;
}
