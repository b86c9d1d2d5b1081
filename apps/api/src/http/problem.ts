import type { Context } from 'hono';
import { type Outcome, type Refusal, type RefusalType, refusals } from '../refusals.ts';

export const problemMediaType = 'application/problem+json';

export const problemAddress = (type: RefusalType): string => `/problems/${type}`;

/** A refusal on its way out of a handler: the error handler turns it into its answer. */
export class Problem extends Error {
  readonly refusal: Refusal;
  readonly headers: Readonly<Record<string, string>>;

  constructor(refusal: Refusal, headers: Readonly<Record<string, string>> = {}) {
    super(refusal.says);
    this.refusal = refusal;
    this.headers = headers;
  }
}

/** The value of an outcome. @throws Problem where it was refused */
export function orProblem<T>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value;
  throw new Problem(outcome);
}

/** A body of RFC 9457. `errors` names the fields at fault, `instead` what could be promised, `instance` the request. */
export function problemResponse(
  c: Context,
  refusal: Refusal,
  headers: Readonly<Record<string, string>> = {},
): Response {
  const { status, title } = refusals[refusal.type];
  c.set('refusal', refusal.type);
  const body = {
    type: problemAddress(refusal.type),
    title,
    status,
    detail: refusal.says,
    instance: `urn:uuid:${c.get('requestId')}`,
    ...(refusal.faults === undefined ? {} : { errors: refusal.faults }),
    ...(refusal.instead === undefined ? {} : { instead: refusal.instead }),
  };
  const retry =
    refusal.retryAfterSeconds === undefined ? {} : { 'Retry-After': String(refusal.retryAfterSeconds) };
  return new Response(JSON.stringify(body), {
    status,
    headers: { 'Content-Type': problemMediaType, 'Cache-Control': 'no-store', ...retry, ...headers },
  });
}
