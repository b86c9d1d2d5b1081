import type {
  Board,
  DaySummary,
  DemoSignIns,
  NewOrder,
  Problem,
  Session,
  SettledLocks,
  WhatIf,
} from '@flitchbook/contracts';

export type { DaySummary, NewLine, NewOrder, NewShare, Problem, Session } from '@flitchbook/contracts';
export type DemoSignIn = DemoSignIns['signIns'][number];
type Locks = SettledLocks['locks'];

/** What came of a request: the answer, a refusal, or no network at all. */
export type Answer<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly why: 'refused'; readonly problem: Problem }
  | { readonly ok: false; readonly why: 'no-network' | 'given-up' };

/** The service, one method a verb. `signal` gives a request up. */
export interface Client {
  readonly readSession: () => Promise<Answer<Session>>;
  readonly readDemoSignIns: () => Promise<Answer<DemoSignIns>>;
  readonly signIn: (email: string, password: string) => Promise<Answer<Session>>;
  readonly signOut: () => Promise<Answer<unknown>>;
  readonly readDays: () => Promise<Answer<{ readonly days: readonly DaySummary[] }>>;
  readonly readBoard: (dayId: string) => Promise<Answer<Board>>;
  readonly tryLocks: (dayId: string, locks: Locks, signal: AbortSignal) => Promise<Answer<WhatIf>>;
  readonly keepLocks: (dayId: string, locks: Locks, version: number) => Promise<Answer<Board>>;
  readonly planDay: (dayId: string, key: string) => Promise<Answer<Board>>;
  readonly addOrder: (dayId: string, order: NewOrder, key: string) => Promise<Answer<unknown>>;
}

const unreadable = (status: number): Problem => ({
  type: 'about:blank',
  title: 'Unreadable answer',
  status,
  detail: 'The service gave an answer that could not be read.',
});

async function bodyOf(response: Response): Promise<unknown> {
  if (response.status === 204) return undefined;
  return response.json();
}

function isProblem(body: unknown): body is Problem {
  return typeof body === 'object' && body !== null && 'detail' in body && 'status' in body;
}

interface Sent {
  readonly method?: 'GET' | 'POST' | 'PUT' | 'DELETE';
  readonly body?: unknown;
  readonly headers?: Readonly<Record<string, string>>;
  readonly signal?: AbortSignal;
}

/** One request to the service. */
export type Ask = <T>(path: string, sent?: Sent) => Promise<Answer<T>>;

/** `fetchFn` is the browser's fetch, or a test's own. */
export function createAsk(fetchFn: typeof fetch): Ask {
  return async function ask<T>(
    path: string,
    { method = 'GET', body, headers = {}, signal }: Sent = {},
  ): Promise<Answer<T>> {
    const content = body === undefined ? {} : { body: JSON.stringify(body) };
    const type = body === undefined ? {} : { 'Content-Type': 'application/json' };
    try {
      const response = await fetchFn(`/api${path}`, {
        method,
        headers: { Accept: 'application/json', ...type, ...headers },
        ...content,
        ...(signal ? { signal } : {}),
      });
      const answer = await bodyOf(response).catch(() => undefined);
      if (response.ok) return { ok: true, value: answer as T };
      const problem = isProblem(answer) ? answer : unreadable(response.status);
      return { ok: false, why: 'refused', problem };
    } catch {
      return { ok: false, why: signal?.aborted ? 'given-up' : 'no-network' };
    }
  };
}

export function createClient(fetchFn: typeof fetch): Client {
  const ask = createAsk(fetchFn);
  const day = (dayId: string): string => `/days/${encodeURIComponent(dayId)}`;
  const keyed = (key: string) => ({ 'Idempotency-Key': key });
  return {
    readSession: () => ask('/session'),
    readDemoSignIns: () => ask('/demo-sign-ins'),
    signIn: (email, password) => ask('/session', { method: 'POST', body: { email, password } }),
    signOut: () => ask('/session', { method: 'DELETE' }),
    readDays: () => ask('/days'),
    readBoard: (dayId) => ask(`${day(dayId)}/board`),
    tryLocks: (dayId, locks, signal) =>
      ask(`${day(dayId)}/what-if`, { method: 'POST', body: { locks }, signal }),
    keepLocks: (dayId, locks, version) =>
      ask(`${day(dayId)}/locks`, { method: 'PUT', body: { locks }, headers: { 'If-Match': `"${version}"` } }),
    planDay: (dayId, key) => ask(`${day(dayId)}/plan`, { method: 'POST', body: {}, headers: keyed(key) }),
    addOrder: (dayId, order, key) =>
      ask(`${day(dayId)}/orders`, { method: 'POST', body: order, headers: keyed(key) }),
  };
}
