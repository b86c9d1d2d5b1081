import { randomBytes } from 'node:crypto';
import { createShop, type Database, forShop, inTransaction, type Role } from '@flitchbook/db';
import { asOpened, type TableState, tableStates } from '@flitchbook/db/testing';
import { createApp } from '../http/create-app.ts';
import type { Transport } from '../http/http-env.ts';
import { sessionCookie } from '../http/session-cookie.ts';
import { createIds } from '../ids.ts';
import type { Outcome } from '../refusals.ts';
import { bookAnimal } from '../services/animals/book.ts';
import { type Actor, actAs, type Services } from '../services/ctx.ts';
import { createLinkLimits } from '../services/customers/link-limits.ts';
import { KnownOffers } from '../services/days/offers.ts';
import { openDay } from '../services/days/open.ts';
import { takeOrder } from '../services/orders/take.ts';
import { createPasswords } from '../services/passwords.ts';
import { addPerson } from '../services/people/add.ts';
import { DayTurns } from '../services/reservations/day-turns.ts';
import { KnownRefusals } from '../services/reservations/known-refusals.ts';
import { createSignInLimits } from '../services/sessions/sign-in.ts';
import { openShop } from '../services/shops/open.ts';
import { animal, order } from './bodies.ts';
import { ownThread } from './own-thread.ts';

const ownOrigin = 'http://127.0.0.1:4180';

export const roles = ['customer', 'counter', 'butcher', 'owner'] as const satisfies readonly Role[];
export const password = 'correct-horse-4-shoes';
export const emailOf = (role: Role): string => `${role}@shop.example`;

/** Ids that one shop has, with the day's version. */
export interface ShopIds {
  readonly shopId: string;
  readonly dayId: string;
  readonly animalId: string;
  readonly orderId: string;
  /** a customer's */
  readonly personId: string;
}

/** What a request says; `as` a role that is signed in, or a cookie of its own. */
export interface Call {
  readonly method: string;
  readonly path: string;
  readonly as?: Role | { readonly cookie: string } | undefined;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: unknown;
}

/** The parsed body of an answer whose shape the test knows. */
export const bodyOf = async <T>(answer: Response): Promise<T> => (await answer.json()) as T;

/** The value of an outcome that a test takes for granted. @throws where it was refused */
export function must<T>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value;
  throw new Error(`${outcome.type}: ${outcome.says} ${JSON.stringify(outcome.faults ?? [])}`);
}

export function testServices(db: Database): Services {
  return {
    db: asOpened(db),
    clock: () => new Date('2026-11-25T10:00:00Z'),
    ids: createIds(randomBytes, () => Date.now()),
    passwords: createPasswords(),
    solver: ownThread,
    solveLimits: { deadlineSeconds: 1, gap: 0.05, seed: 1 },
    log: () => undefined,
    promises: { turns: new DayTurns(), refusals: new KnownRefusals(), offers: new KnownOffers() },
    shopAddress: ownOrigin,
    dayChanged: () => undefined,
  };
}

/** A day with a hog and an order, through the services. */
async function fill(services: Services, shopId: string, personId: string): Promise<ShopIds> {
  const actor: Actor = { shopId, personId: null, role: 'owner' };
  const ctx = actAs(services, actor);
  const key = (name: string) => ({ key: name, route: 'test', request: name, status: 201 as const });
  const { dayId } = must(await openDay(ctx, { date: '2026-11-26' }, key('day'))).body;
  const { animalId } = must(await bookAnimal(ctx, dayId, animal(), key('animal'))).body;
  const { orderId } = must(await takeOrder(ctx, dayId, order(), key('order'))).body;
  return { shopId, dayId, animalId, orderId, personId };
}

const shop = {
  name: 'Tallow Lane Butchery',
  currency: 'USD',
  timeZone: 'America/New_York',
  weightUnit: 'lb',
  lengthUnit: 'in',
} as const;

async function openTwoShops(services: Services): Promise<readonly [ShopIds, ShopIds]> {
  const { shopId } = must(await openShop(services, shop));
  const actor: Actor = { shopId, personId: null, role: 'owner' };
  const people = new Map<Role, string>();
  for (const role of roles) {
    const person = { email: emailOf(role), name: `Ada, ${role}`, role, password };
    people.set(role, must(await addPerson(actAs(services, actor), person)).personId);
  }
  const other = { ...shop, shopId: services.ids.newId(), name: 'Upper Croft Meats' };
  await inTransaction(forShop(services.db, other.shopId), (tx) => createShop(tx, other));
  const customer = people.get('customer') ?? '';
  return [await fill(services, shopId, customer), await fill(services, other.shopId, services.ids.newId())];
}

interface TestApp {
  readonly transport: { -readonly [K in keyof Transport]: Transport[K] };
  ask(call: Call): Promise<Response>;
  /** a new session of the role's person, as a Cookie header */
  signIn(role: Role): Promise<string>;
}

/** The whole service without its port. */
function testApp(services: Services): TestApp {
  const transport: TestApp['transport'] = {
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
  };
  const app = createApp(services, transport);
  const cookies = new Map<Role, string>();

  async function signIn(role: Role): Promise<string> {
    const body = { email: emailOf(role), password };
    const answer = await ask({ method: 'POST', path: '/api/session', body });
    const [cookie = ''] = (answer.headers.get('set-cookie') ?? '').split(';');
    if (answer.status !== 200) throw new Error(`${role} was not let in: ${answer.status}`);
    return cookie;
  }

  async function cookieOf(as: Call['as']): Promise<Record<string, string>> {
    if (as === undefined) return {};
    if (typeof as === 'object') return { Cookie: as.cookie };
    const cookie = cookies.get(as) ?? (await signIn(as));
    cookies.set(as, cookie);
    return { Cookie: cookie };
  }

  async function ask({ method, path, as, headers = {}, body }: Call): Promise<Response> {
    const json = body === undefined ? {} : { 'Content-Type': 'application/json' };
    return app.request(`${ownOrigin}${path}`, {
      method,
      headers: { ...json, ...(await cookieOf(as)), ...headers },
      ...(body === undefined ? {} : { body: typeof body === 'string' ? body : JSON.stringify(body) }),
    });
  }

  return { transport, ask, signIn };
}

export interface TestShop extends TestApp {
  readonly services: Services;
  readonly own: ShopIds;
  /** of another shop in the same database */
  readonly other: ShopIds;
  newId(): string;
  newKey(): string;
  state(): Promise<readonly TableState[]>;
}

/**
 * Two shops in an empty database, and the service that opens its door to the first. Nothing is planned in the
 * background, so that what a request stores is what it stored itself.
 */
export async function openTestShop(db: Database, change: Partial<Services> = {}): Promise<TestShop> {
  const services = { ...testServices(db), ...change };
  const [own, other] = await openTwoShops(services);
  return {
    ...testApp(services),
    services,
    own,
    other,
    newId: services.ids.newId,
    newKey: () => `"${services.ids.newId()}"`,
    state: () => tableStates(db),
  };
}
