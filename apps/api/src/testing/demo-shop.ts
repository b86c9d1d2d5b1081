import { randomBytes } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseDayFile } from '@flitchbook/contracts';
import { type Database, inTransaction, listShops, openDatabase, type Role } from '@flitchbook/db';
import { createApp } from '../http/create-app.ts';
import { sessionCookie } from '../http/session-cookie.ts';
import { createIds } from '../ids.ts';
import { actAs, type Services } from '../services/ctx.ts';
import { createLinkLimits } from '../services/customers/link-limits.ts';
import { listCuttingDays } from '../services/days/list.ts';
import { KnownOffers } from '../services/days/offers.ts';
import { seedDemo } from '../services/demo/seed.ts';
import { demoSignIns } from '../services/demo/sign-ins.ts';
import { createPasswords } from '../services/passwords.ts';
import { keepPlanned } from '../services/plans/keep.ts';
import { DayTurns } from '../services/reservations/day-turns.ts';
import { KnownRefusals } from '../services/reservations/known-refusals.ts';
import { createSignInLimits } from '../services/sessions/sign-in.ts';
import { ownThread } from './own-thread.ts';

const origin = 'http://127.0.0.1:4180';
const password = 'correct-horse-4-shoes';

interface Sent {
  readonly body?: unknown;
  readonly key?: string;
}

interface Answered<T> {
  readonly status: number;
  readonly body: T;
  readonly headers: Headers;
  /** the type of a refusal, without its address */
  readonly refusal: string;
}

/** The demo day, planned, behind the whole service; somebody of each role is signed in. */
export interface DemoShop {
  readonly shopId: string;
  readonly dayId: string;
  readonly services: Services;
  /** turns the shop's clock */
  setNow(instant: string): void;
  ask<T = Record<string, never>>(
    role: Role | null,
    method: string,
    path: string,
    sent?: Sent,
  ): Promise<Answered<T>>;
  bytes(role: Role, path: string): Promise<{ readonly type: string; readonly bytes: Uint8Array }>;
  close(): Promise<void>;
}

const cache = new URL('../../../../node_modules/.cache/flitchbook', import.meta.url);
const example = new URL('../../../../examples/two-hogs.json', import.meta.url);

const servicesOn = (db: Database, clock: () => Date): Services => ({
  db,
  clock,
  ids: createIds(randomBytes, () => Date.now()),
  passwords: createPasswords(),
  solver: ownThread,
  solveLimits: { deadlineSeconds: 3, gap: 0.05, seed: 1 },
  log: () => undefined,
  promises: { turns: new DayTurns(), refusals: new KnownRefusals(), offers: new KnownOffers() },
  shopAddress: origin,
  dayChanged: () => undefined,
});

/** @returns the demo's shop and day, with a plan */
async function seedPlanned(services: Services): Promise<Pick<DemoShop, 'shopId' | 'dayId'>> {
  const parsed = parseDayFile(readFileSync(example, 'utf8'));
  if ('faults' in parsed) throw new Error('the example is faulty');
  await seedDemo(services, { parsed, timeZone: 'America/New_York' }, demoSignIns(password));
  const [shop] = await inTransaction(services.db, listShops, { reading: true });
  if (!shop) throw new Error('the demo has no shop');
  const ctx = actAs(services, { shopId: shop.shopId, personId: null, role: 'owner' });
  const days = await listCuttingDays(ctx);
  const dayId = days.ok ? days.value[0]?.dayId : undefined;
  if (dayId === undefined) throw new Error('the demo has no day');
  const planned = await keepPlanned(ctx, dayId);
  if (!planned.ok) throw new Error(planned.says);
  return { shopId: shop.shopId, dayId };
}

const appOn = (services: Services) =>
  createApp(services, {
    cookie: sessionCookie(false),
    signInLimits: createSignInLimits(() => performance.now()),
    linkLimits: createLinkLimits(() => performance.now()),
    networkOf: () => '192.0.2.1', // RFC 5737: for documents and tests
    streams: { maxSeconds: 0, stopping: () => false },
    isReady: async () => true,
    demoSignIns: [],
    publicOrigin: null,
    webFolder: null,
    log: services.log,
    nowMs: () => performance.now(),
    newRequestId: services.ids.newId,
  });

/** Sends as somebody of a role, who signs in on the way. */
function sender(services: Services) {
  const app = appOn(services);
  const cookies = new Map<string, string>();
  return async function send(
    role: string | null,
    method: string,
    path: string,
    { body, key }: Sent = {},
  ): Promise<Response> {
    if (role !== null && !cookies.has(role)) {
      const answer = await send(null, 'POST', '/api/session', {
        body: { email: `${role}@flitch.example`, password },
      });
      cookies.set(role, (answer.headers.get('set-cookie') ?? '').split(';')[0] ?? '');
    }
    return app.request(`${origin}${path}`, {
      method,
      headers: {
        ...(body === undefined ? {} : { 'Content-Type': 'application/json' }),
        ...(role === null ? {} : { Cookie: cookies.get(role) ?? '' }),
        ...(method === 'POST' ? { 'Idempotency-Key': key ?? services.ids.newId() } : {}),
      },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
  };
}

export async function openDemoShop(): Promise<DemoShop> {
  const db = await openDatabase({ engine: 'memory', snapshots: fileURLToPath(cache) });
  let now = '2026-11-26T15:00:00Z';
  const services = servicesOn(db, () => new Date(now));
  const ids = await seedPlanned(services);
  const send = sender(services);
  return {
    ...ids,
    services,
    setNow(instant) {
      now = instant;
    },
    async ask<T>(role: Role | null, method: string, path: string, sent?: Sent) {
      const answer = await send(role, method, path, sent);
      const isJson = (answer.headers.get('content-type') ?? '').includes('json');
      const body = (isJson ? await answer.json() : await answer.text()) as T;
      const type = (body as { type?: string }).type ?? '';
      return {
        status: answer.status,
        body,
        headers: answer.headers,
        refusal: type.replace('/problems/', ''),
      };
    },
    async bytes(role, path) {
      const answer = await send(role, 'GET', path);
      if (answer.status !== 200) throw new Error(`${path} answered ${answer.status}: ${await answer.text()}`);
      return {
        type: answer.headers.get('content-type') ?? '',
        bytes: new Uint8Array(await answer.arrayBuffer()),
      };
    },
    close: () => db.close(),
  };
}
