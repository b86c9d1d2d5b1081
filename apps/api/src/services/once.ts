import { createHash } from 'node:crypto';
import { beginIdempotent, finishIdempotent, type IdempotentRequest, type Tx } from '@flitchbook/db';
import { done, type Outcome, refused } from '../refusals.ts';
import type { Actor } from './ctx.ts';

/** The caller's key and what it was sent with. */
export interface OnceKey {
  readonly key: string;
  /** method and route's pattern */
  readonly route: string;
  /** the body as it came, parsed, and the values in the address */
  readonly request: unknown;
  /** of the answer, when all goes well */
  readonly status: 200 | 201;
}

/** What a verb answers that runs once per key: `replayed` when it was done before. */
export interface OnceAnswer<T> {
  readonly body: T;
  readonly replayed: boolean;
}

/** Names sorted at every level, so that the order of members makes no difference. */
function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  if (value === null || typeof value !== 'object') return JSON.stringify(value) ?? 'null';
  const members = Object.entries(value)
    .filter(([, member]) => member !== undefined)
    .toSorted(([a], [b]) => (a < b ? -1 : 1));
  return `{${members.map(([name, member]) => `${JSON.stringify(name)}:${canonical(member)}`).join(',')}}`;
}

function idempotentRequest(actor: Actor, { key, route, request }: OnceKey): IdempotentRequest {
  const principal = actor.personId ?? 'service';
  const fingerprint = createHash('sha256')
    .update(canonical([principal, route, request]))
    .digest('hex');
  return { shopId: actor.shopId, principal, route, key, fingerprint };
}

const stillRunning = refused(
  'idempotency.still-running',
  'A request with this key is still running. Ask again in a moment.',
  { retryAfterSeconds: 1 },
);
const keyReused = refused(
  'idempotency.key-reused',
  'This key came with another request before. Make a new key for a new request.',
);

/** The answer given before to this key, for work that begins before its transaction; undefined where there is none. */
export async function givenBefore<T>(
  tx: Tx,
  actor: Actor,
  key: OnceKey,
): Promise<Outcome<OnceAnswer<T> | undefined>> {
  const before = await beginIdempotent(tx, idempotentRequest(actor, key));
  if (before.state === 'running') return stillRunning;
  if (before.state === 'reused') return keyReused;
  return done(before.state === 'replay' ? { body: before.answer.body as T, replayed: true } : undefined);
}

/**
 * Runs `effect` unless the key was used before; the answer is stored in the transaction of the effect, so both are there
 * or neither is (IETF draft-ietf-httpapi-idempotency-key-header-07). Refusals are not stored: the request may be sent again.
 */
export async function once<T>(
  tx: Tx,
  actor: Actor,
  key: OnceKey,
  effect: () => Promise<Outcome<T>>,
): Promise<Outcome<OnceAnswer<T>>> {
  const request = idempotentRequest(actor, key);
  const before = await beginIdempotent(tx, request);
  switch (before.state) {
    case 'replay':
      return done({ body: before.answer.body as T, replayed: true });
    case 'running':
      return stillRunning;
    case 'reused':
      return keyReused;
    case 'fresh': {
      const outcome = await effect();
      if (!outcome.ok) return outcome;
      await finishIdempotent(tx, request, { status: key.status, body: outcome.value });
      return done({ body: outcome.value, replayed: false });
    }
  }
}
