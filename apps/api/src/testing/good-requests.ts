import { randomBytes } from 'node:crypto';
import { createSignInLink, forShop, inTransaction, type Role, setPickUp } from '@flitchbook/db';
import type { Endpoint } from '../http/open-api-shape.ts';
import { tokenHash } from '../services/sessions/token.ts';
import { animal, hold, order } from './bodies.ts';
import { type Call, emailOf, password, type ShopIds, type TestShop } from './test-shop.ts';

/** The parts of a request that only a route knows: the rest follows from the document. */
interface Parts {
  /** instead of the shop's own ids: an order that may be cancelled, say */
  readonly ids?: Partial<ShopIds>;
  readonly body?: unknown;
  readonly ifMatch?: string;
  readonly as?: Call['as'];
}

type Recipe = (shop: TestShop, role: Role | undefined) => Promise<Parts> | Parts;

let day = 0;
/** A date that no other request opens. */
const freshDate = (): string => new Date(Date.UTC(2027, 0, 1 + day++)).toISOString().slice(0, 10);

const versionOf = async (shop: TestShop, path: string): Promise<string> =>
  (await shop.ask({ method: 'GET', path, as: 'owner' })).headers.get('etag') ?? '';

async function animalTag(shop: TestShop): Promise<string> {
  const answer = await shop.ask({ method: 'GET', path: `/api/days/${shop.own.dayId}/animals`, as: 'owner' });
  const { animals } = (await answer.json()) as { animals: { animalId: string; version: number }[] };
  return `"${animals.find(({ animalId }) => animalId === shop.own.animalId)?.version}"`;
}

async function freshOrder(shop: TestShop): Promise<string> {
  const answer = await shop.ask({
    method: 'POST',
    path: `/api/days/${shop.own.dayId}/orders`,
    as: 'owner',
    headers: { 'Idempotency-Key': shop.newKey() },
    body: order(),
  });
  return ((await answer.json()) as { orderId: string }).orderId;
}

/** A hold of the role's own, where the role may have one. */
async function freshHold(shop: TestShop, role: Role | undefined): Promise<string> {
  const answer = await shop.ask({
    method: 'POST',
    path: `/api/days/${shop.own.dayId}/holds`,
    as: role === 'customer' ? 'customer' : 'owner',
    headers: { 'Idempotency-Key': shop.newKey() },
    body: hold(),
  });
  return ((await answer.json()) as { orderId: string }).orderId;
}

/** What the shop's customer has reserved. */
async function reservedOrder(shop: TestShop): Promise<string> {
  const orderId = await freshHold(shop, 'customer');
  await shop.ask({
    method: 'POST',
    path: `/api/orders/${orderId}/reserve`,
    as: 'customer',
    headers: { 'Idempotency-Key': shop.newKey() },
  });
  return orderId;
}

/** An order of the shop's customer with a time to fetch it. */
async function orderToFetch(shop: TestShop): Promise<string> {
  const orderId = await freshHold(shop, 'customer');
  const { services, own } = shop;
  const span = { startsAt: '2026-11-27T20:00:00Z', endsAt: '2026-11-27T23:00:00Z' };
  const window = { date: '2026-11-27', fromTime: '15:00', toTime: '18:00', place: '' };
  await inTransaction(forShop(services.db, own.shopId), (tx) =>
    setPickUp(tx, { shopId: own.shopId, orderId, ...window, ...span }, null),
  );
  return orderId;
}

/** The token of a link that was mailed to the shop's customer. */
async function freshLink({ services, own, newId }: TestShop): Promise<string> {
  const token = randomBytes(32).toString('base64url');
  const { shopId, personId } = own;
  const link = { shopId, personId, linkId: newId(), orderId: null, tokenHash: tokenHash(token) };
  await inTransaction(forShop(services.db, shopId), (tx) =>
    createSignInLink(tx, { ...link, lifetimeSeconds: 600 }),
  );
  return token;
}

/** An order of the shop's customer, for who sends a link to it. */
const customersOrder = async (shop: TestShop): Promise<Parts> => ({
  ids: { orderId: await freshHold(shop, 'customer') },
});

const freshSession = async (shop: TestShop, role: Role | undefined): Promise<Parts> =>
  role === undefined ? {} : { as: { cookie: await shop.signIn(role) } };

const board = ({ own }: TestShop): string => `/api/days/${own.dayId}/board`;

/** A side of the shop's day, which has a plan of how it stands now. */
async function plannedSide(shop: TestShop): Promise<string> {
  const read = async () => {
    const answer = await shop.ask({ method: 'GET', path: board(shop), as: 'owner' });
    return (await answer.json()) as {
      day: { version: number; plannedVersion: number | null };
      cuttingDay: { animals: { sides: { sideId: string }[] }[] };
    };
  };
  const { day, cuttingDay } = await read();
  if (day.plannedVersion !== day.version)
    await shop.ask({
      method: 'POST',
      path: `/api/days/${shop.own.dayId}/plan`,
      as: 'owner',
      headers: { 'Idempotency-Key': shop.newKey() },
    });
  return cuttingDay.animals[0]?.sides[0]?.sideId ?? '';
}

const asSent = (): Parts => ({});

const rules = {
  holdSeconds: 900,
  promotedHoldSeconds: 86_400,
  depositPercent: 20,
  depositFromMinor: 5000,
  ordersPerPerson: 500,
  piecesPerPerson: 500,
  sharesPerPerson: 2,
};

const half = { size: 'half', instructions: { operations: {}, manners: {}, portions: {} } };

/** One for each route, by its operationId; all of them may be sent again and again. */
const recipes: Readonly<Record<string, Recipe>> = {
  'session.read': asSent,
  // Signing in ends the session that the browser had.
  'session.begin': async (shop, role) => ({
    ...(await freshSession(shop, role)),
    body: { email: emailOf('butcher'), password },
  }),
  'session.end': freshSession,
  'session.demo': asSent,
  'days.list': asSent,
  'days.open': () => ({ body: { date: freshDate() } }),
  'boards.read': asSent,
  'locks.settle': async (shop) => ({ body: { locks: [] }, ifMatch: await versionOf(shop, board(shop)) }),
  'plans.make': asSent,
  'plans.try': () => ({ body: { locks: [] } }),
  'advice.split': async (shop) => ({ body: { sideId: await plannedSide(shop) } }),
  'animals.list': asSent,
  'animals.book': () => ({ body: animal() }),
  'animals.correct': async (shop) => ({ body: { name: 'Hog 17, again' }, ifMatch: await animalTag(shop) }),
  'orders.list': asSent,
  'orders.take': () => ({ body: order() }),
  'orders.cancel': async (shop, role) =>
    role === 'customer'
      ? { ids: { orderId: await reservedOrder(shop) }, ifMatch: '"2"' }
      : { ids: { orderId: await freshOrder(shop) }, ifMatch: '"1"' },
  'orders.own': asSent,
  'days.offered': asSent,
  'days.coming': asSent,
  'orders.promise': customersOrder,
  'orders.calendar': async (shop) => ({ ids: { orderId: await orderToFetch(shop) } }),
  'days.set-last-call': async (shop) => ({
    body: { customersUntil: null },
    ifMatch: await versionOf(shop, board(shop)),
  }),
  'shortages.list': asSent,
  'reservations.quote': () => ({ body: hold() }),
  'reservations.hold': () => ({ body: hold() }),
  'reservations.reserve': async (shop, role) => ({ ids: { orderId: await freshHold(shop, role) } }),
  'reservations.hold-longer': async (shop, role) => ({ ids: { orderId: await freshHold(shop, role) } }),
  'reservations.release': async (shop, role) => ({ ids: { orderId: await freshHold(shop, role) } }),
  'halves.preview': () => ({ body: half }),
  'deals.read': async (shop, role) => ({ ids: { orderId: await freshHold(shop, role) } }),
  'customers.welcome': (shop) => ({ body: { email: `${shop.newId()}@guest.example`, name: 'Odalys Finch' } }),
  'customers.enter': async (shop) => ({ body: { token: await freshLink(shop) } }),
  'customers.choose-password': () => ({ body: { password } }),
  'customers.choose-language': () => ({ body: { language: 'es' } }),
  'links.send': customersOrder,
  'links.revoke': asSent,
  'events.follow': asSent,
  'rules.read': asSent,
  'rules.set': () => ({ body: rules }),
  'cut-list.read': asSent,
  'cut-list.print': asSent,
  'service.health': asSent,
  'service.ready': asSent,
};

/** Routes without one are walked on the demo day: their requests follow from each other. */
export const hasGoodRequest = ({ operation }: Endpoint): boolean =>
  Object.hasOwn(recipes, operation.operationId ?? '');

const takesHeader = ({ operation }: Endpoint, name: string): boolean =>
  operation.parameters?.some((parameter) => parameter.in === 'header' && parameter.name === name) ?? false;

/** The names in a path's braces. */
export const idsIn = (path: string): readonly (keyof ShopIds)[] =>
  [...path.matchAll(/\{(\w+)\}/g)].map(([, name]) => name as keyof ShopIds);

export const addressed = (path: string, ids: ShopIds): string =>
  path.replaceAll(/\{(\w+)\}/g, (_, name: keyof ShopIds) => ids[name]);

/** A request that is right in every way for whoever may make it. */
export async function goodRequest(
  shop: TestShop,
  endpoint: Endpoint,
  role: Role | undefined,
  of: ShopIds = shop.own,
): Promise<Call> {
  const { method, path, operation } = endpoint;
  const recipe = recipes[operation.operationId ?? ''];
  if (!recipe) throw new Error(`${operation.operationId} has no good request in good-requests.ts yet`);
  const { ids, body, ifMatch, as = role } = await recipe(shop, role);
  const headers = {
    ...(takesHeader(endpoint, 'idempotency-key') ? { 'Idempotency-Key': shop.newKey() } : {}),
    ...(ifMatch === undefined ? {} : { 'If-Match': ifMatch }),
  };
  const address = addressed(path, of === shop.own ? { ...of, ...ids } : of);
  return { method, path: address, as, headers, body };
}
