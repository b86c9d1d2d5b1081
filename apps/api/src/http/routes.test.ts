import { closeDay, forShop, inTransaction, touchDay } from '@flitchbook/db';
import { describeOnBoth, withoutTable } from '@flitchbook/db/testing';
import { beforeAll, describe, expect, it } from 'vitest';
import { createLinkLimits } from '../services/customers/link-limits.ts';
import { animal, line, order } from '../testing/bodies.ts';
import { endpoints, expectDescribed } from '../testing/described-answers.ts';
import { addressed, goodRequest, hasGoodRequest, idsIn } from '../testing/good-requests.ts';
import {
  type Call,
  emailOf,
  openTestShop,
  roles,
  type ShopIds,
  type TestShop,
} from '../testing/test-shop.ts';
import type { Endpoint } from './open-api-shape.ts';

// What follows the cutting is in books-routes.test.ts.
const named = endpoints
  .filter(hasGoodRequest)
  .map((endpoint) => [endpoint.operation.operationId ?? '', endpoint] as const);
const find = (operationId: string): Endpoint => {
  const endpoint = endpoints.find(({ operation }) => operation.operationId === operationId);
  if (!endpoint) throw new Error(`no route ${operationId}`);
  return endpoint;
};

const takes = ({ operation }: Endpoint, header: string): boolean =>
  operation.parameters?.some((parameter) => parameter.in === 'header' && parameter.name === header) ?? false;
const takesBody = ({ operation }: Endpoint): boolean => operation.requestBody !== undefined;
const changes = ({ method }: Endpoint): boolean => method !== 'GET';
const isOpen = ({ operation }: Endpoint): boolean => operation['x-roles']?.includes('everyone') ?? false;
const mayAsk = (endpoint: Endpoint, role: string | undefined): boolean =>
  isOpen(endpoint) || (role !== undefined && (endpoint.operation['x-roles']?.includes(role) ?? false));

describeOnBoth('the routes', (db) => {
  let shop: TestShop;
  const seen = new Set<string>();
  beforeAll(async () => {
    shop = await openTestShop(db());
    shop.transport.demoSignIns = [{ name: 'Ada', role: 'owner', email: emailOf('owner'), password: 'shown' }];
    for (const id of ['rules.set', 'plans.make'])
      await answered(find(id), await goodRequest(shop, find(id), 'owner'));
  });

  /** The answer, held against the document. */
  async function answered(endpoint: Endpoint, call: Call) {
    const answer = await shop.ask(call);
    const body = (await expectDescribed(endpoint, answer)) as Record<string, unknown>;
    seen.add(`${endpoint.operation.operationId} ${answer.status}`);
    return { status: answer.status, headers: answer.headers, body };
  }

  /** Each refused like this, with no row of any table changed by all of them together. */
  async function refuseAll(endpoint: Endpoint, calls: readonly Call[], status: number, type: string) {
    const before = await shop.state();
    const problems: Record<string, unknown>[] = [];
    for (const call of calls) {
      const answer = await answered(endpoint, call);
      expect([answer.status, answer.body['type']]).toEqual([status, `/problems/${type}`]);
      problems.push(answer.body);
    }
    expect(await shop.state()).toEqual(before);
    return problems;
  }

  const refuses = async (endpoint: Endpoint, call: Call, status: number, type: string) =>
    (await refuseAll(endpoint, [call], status, type))[0] ?? {};

  const goodBy = (endpoint: Endpoint): Promise<Call> =>
    goodRequest(shop, endpoint, isOpen(endpoint) ? undefined : 'owner');

  describe.each([undefined, ...roles])('for %s', (role) => {
    it.each(named)('%s is answered or refused as the document says', async (_, endpoint) => {
      const call = await goodRequest(shop, endpoint, role);
      if (mayAsk(endpoint, role)) {
        const { status } = await answered(endpoint, call);
        expect(String(status)).toBe(Object.keys(endpoint.operation.responses)[0]);
      } else if (role === undefined) await refuses(endpoint, call, 401, 'session.required');
      else await refuses(endpoint, call, 403, 'session.not-allowed');
    });
  });

  it.each(named.filter(([, { path }]) => idsIn(path).length > 0))(
    '%s finds nothing under the ids of another shop, of nobody, and under what is no id',
    async (_, endpoint) => {
      const unknown = endpoint.path.includes('{dayId}')
        ? 'day.unknown'
        : `${endpoint.path.split('/')[2]?.slice(0, -1)}.unknown`;
      await refuses(endpoint, await goodRequest(shop, endpoint, 'owner', shop.other), 404, unknown);
      const nobody = Object.fromEntries(idsIn(endpoint.path).map((id) => [id, shop.newId()]));
      const good = await goodBy(endpoint);
      await refuses(
        endpoint,
        { ...good, path: addressed(endpoint.path, nobody as unknown as ShopIds) },
        404,
        unknown,
      );
      for (const bad of ['17', '..', "'%20or%20''='", '%F0%9F%90%96']) {
        const path = endpoint.path.replaceAll(/\{\w+\}/g, bad);
        const { status } = await answered(endpoint, { ...good, path });
        expect(status).toBe(404);
      }
    },
  );

  it.each(named.filter(([, endpoint]) => changes(endpoint)))(
    '%s takes nothing from another site',
    async (_, endpoint) => {
      const good = await goodBy(endpoint);
      const headers = [
        { Origin: 'https://evil.example' },
        { Origin: 'null' },
        { 'Sec-Fetch-Site': 'cross-site' },
        { 'Sec-Fetch-Site': 'same-site' },
      ];
      const calls = headers.map((header) => ({ ...good, headers: { ...good.headers, ...header } }));
      await refuseAll(endpoint, calls, 403, 'request.cross-site');
    },
  );

  describe.each(named.filter(([, endpoint]) => takesBody(endpoint)))('the body of %s', (id, endpoint) => {
    const bodies = (good: Call, ...texts: readonly string[]): readonly Call[] =>
      texts.map((body) => ({ ...good, body }));

    it('is refused where it is no JSON that means one thing', async () => {
      const good = await goodBy(endpoint);
      const calls = bodies(
        good,
        '{',
        ' ',
        '{"a": 1, "a": 2}',
        '{"a": "\\ud800"}',
        '{"a": NaN}',
        '['.repeat(10_000),
      );
      await refuseAll(endpoint, calls, 400, 'request.malformed');
    });

    it('is refused where it is no such object', async () => {
      const good = await goodBy(endpoint);
      // A correction of nothing is none, and no fault.
      const empty = id === 'animals.correct' ? [] : ['{}'];
      const calls = bodies(good, '[]', 'null', '"order"', '7', ...empty);
      for (const problem of await refuseAll(endpoint, calls, 422, 'request.invalid')) {
        expect(problem['errors']).not.toEqual([]);
      }
      const tooMany = { ...good, body: { ...(good.body as object), isAdmin: true } };
      const [problem] = await refuseAll(endpoint, [tooMany], 422, 'request.invalid');
      expect(problem?.['errors']).toEqual([{ at: 'isAdmin', value: true, says: 'Is not a field here.' }]);
    });

    it('is refused as another type, and above a megabyte', async () => {
      const good = await goodBy(endpoint);
      const types = [
        'text/plain',
        'application/x-www-form-urlencoded',
        'multipart/form-data; boundary=x',
        'application/json; charset=latin1',
      ];
      const calls = types.map((type) => ({ ...good, headers: { ...good.headers, 'Content-Type': type } }));
      await refuseAll(endpoint, calls, 415, 'request.not-json');
      await refuseAll(
        endpoint,
        bodies(good, `{"note": "${'a'.repeat(1_000_000)}"}`),
        413,
        'request.too-large',
      );
    });
  });

  it.each(named.filter(([, endpoint]) => takes(endpoint, 'idempotency-key')))(
    '%s asks for a key',
    async (_, endpoint) => {
      const good = await goodBy(endpoint);
      const keys = ['', 'a b', '"open', 'k'.repeat(256), 'schlüssel'];
      const calls = keys.map((key) => ({ ...good, headers: { 'Idempotency-Key': key } }));
      await refuseAll(endpoint, [{ ...good, headers: {} }, ...calls], 400, 'idempotency.key-missing');
    },
  );

  it.each(named.filter(([, endpoint]) => takes(endpoint, 'if-match')))(
    '%s asks for the version',
    async (_, endpoint) => {
      const good = await goodBy(endpoint);
      await refuses(endpoint, { ...good, headers: {} }, 428, 'edit.version-missing');
      const tags = ['"999"', '*', 'W/"1"', '1', '"0"', '"1e0"', '""'];
      const calls = tags.map((tag) => ({ ...good, headers: { 'If-Match': tag } }));
      await refuseAll(endpoint, calls, 412, 'edit.version-stale');
    },
  );

  it('says what stands in the way: a day, an animal, an order that is there already or over', async () => {
    const date = await goodBy(find('days.open'));
    await answered(find('days.open'), date);
    const again = { ...date, headers: { 'Idempotency-Key': shop.newKey() } };
    await refuses(find('days.open'), again, 409, 'day.already-open');

    const booking = await goodBy(find('animals.book'));
    const sameAnimal = { ...booking, body: animal({ animalId: shop.own.animalId }) };
    await refuses(find('animals.book'), sameAnimal, 409, 'animal.already-booked');
    const theirAnimal = { ...booking, body: animal({ animalId: shop.other.animalId }) };
    expect((await answered(find('animals.book'), theirAnimal)).status).toBe(201);

    const taking = await goodBy(find('orders.take'));
    const sameOrder = { ...taking, body: order({ orderId: shop.own.orderId }) };
    await refuses(find('orders.take'), sameOrder, 409, 'order.already-taken');
    const lineId = shop.newId();
    const twice = order({
      lines: [line({ lineId }), line({ lineId, cut: 'liver', portion: { by: 'whole' } })],
    });
    await refuses(find('orders.take'), { ...taking, body: twice }, 422, 'order.invalid');

    const cancelling = await goodBy(find('orders.cancel'));
    await answered(find('orders.cancel'), cancelling);
    await refuses(
      find('orders.cancel'),
      { ...cancelling, headers: { 'If-Match': '"2"' } },
      409,
      'order.already-cancelled',
    );
  });

  it('says that a day has no plan yet, and that a closed day changes no more', async () => {
    const { body } = await answered(find('days.open'), await goodBy(find('days.open')));
    const dayId = String(body['dayId']);
    const on = async (operationId: string): Promise<Call> => {
      const endpoint = find(operationId);
      return { ...(await goodBy(endpoint)), path: addressed(endpoint.path, { ...shop.own, dayId }) };
    };
    for (const id of ['cut-list.read', 'cut-list.print', 'advice.split'])
      await refuses(find(id), await on(id), 409, 'plan.missing');
    await refuses(find('halves.preview'), await on('halves.preview'), 409, 'half.no-animal');
    const taken = await answered(find('orders.take'), await on('orders.take'));
    const dealing = {
      method: 'GET',
      path: `/api/orders/${taken.body['orderId']}/deals`,
      as: 'owner',
    } as const;
    await refuses(find('deals.read'), dealing, 409, 'plan.missing');
    await inTransaction(forShop(shop.services.db, shop.own.shopId), async (tx) => {
      const touched = await touchDay(tx, { shopId: shop.own.shopId, dayId });
      if (touched.outcome === 'touched') await closeDay(tx, touched.day);
    });
    for (const id of [
      'orders.take',
      'locks.settle',
      'plans.make',
      'reservations.hold',
      'reservations.quote',
      'halves.preview',
      'days.set-last-call',
    ])
      await refuses(find(id), await on(id), 409, 'day.closed');
    const cancel = {
      method: 'DELETE',
      path: `/api/orders/${taken.body['orderId']}`,
      as: 'owner',
      headers: { 'If-Match': '"1"' },
    } as const;
    await refuses(find('orders.cancel'), cancel, 409, 'day.closed');
  });

  it('takes a key for one request only', async () => {
    for (const id of ['days.open', 'animals.book', 'orders.take', 'plans.make', 'reservations.hold']) {
      const endpoint = find(id);
      const first = await goodBy(endpoint);
      await answered(endpoint, first);
      const second = takesBody(endpoint)
        ? { ...(await goodBy(endpoint)), headers: first.headers ?? {} }
        : first;
      const other = await answered(find('days.open'), await goodBy(find('days.open')));
      const path = second.path.replace(shop.own.dayId, String(other.body['dayId']));
      await refuses(endpoint, { ...second, path }, 422, 'idempotency.key-reused');
    }
  });

  it('holds longer what is held, with one answer to one key, and has no calendar where nothing is agreed', async () => {
    const endpoint = find('reservations.hold-longer');
    const first = await goodBy(endpoint);
    const held = await answered(endpoint, first);
    expect((await answered(endpoint, first)).body).toEqual(held.body);
    const another = await goodBy(endpoint);
    await refuses(endpoint, { ...another, headers: first.headers ?? {} }, 422, 'idempotency.key-reused');
    const orderId = String(held.body['orderId']);
    const on = async (id: string): Promise<Call> => ({
      ...(await goodBy(find(id))),
      path: addressed(find(id).path, { ...shop.own, orderId }),
    });
    await refuses(find('orders.calendar'), await on('orders.calendar'), 409, 'pick-up.missing');
    await answered(find('reservations.release'), await on('reservations.release'));
    await refuses(endpoint, await on('reservations.hold-longer'), 409, 'reservation.not-held');
  });

  it.each(['reservations.reserve', 'reservations.release'])('%s moves an order on once', async (id) => {
    const endpoint = find(id);
    const first = await goodBy(endpoint);
    await answered(endpoint, first);
    const headers = { 'Idempotency-Key': shop.newKey() };
    await refuses(endpoint, { ...first, headers }, 409, 'reservation.not-held');
    const other = { ...(await goodBy(endpoint)), headers: first.headers ?? {} };
    await refuses(endpoint, other, 422, 'idempotency.key-reused');
  });

  it('opens nothing with a token that is none, and counts tries', async () => {
    const wrong = { ...(await goodBy(find('customers.enter'))), body: { token: 'x'.repeat(43) } };
    await refuses(find('customers.enter'), wrong, 401, 'link.void');
    for (const id of ['customers.enter', 'customers.welcome']) {
      const good = await goodBy(find(id));
      let last = 0;
      for (let tries = 0; tries < 80 && last !== 429; tries++) last = (await answered(find(id), good)).status;
      expect(last).toBe(429);
    }
    shop.transport.linkLimits = createLinkLimits(() => performance.now());
  });

  it('counts tries of signing in', async () => {
    const wrong = {
      method: 'POST',
      path: '/api/session',
      body: { email: 'nobody@shop.example', password: 'x' },
    };
    await refuseAll(find('session.begin'), Array(10).fill(wrong), 401, 'session.wrong-sign-in');
    const { status, headers } = await answered(find('session.begin'), wrong);
    expect(status).toBe(429);
    expect(Number(headers.get('retry-after'))).toBeGreaterThan(0);
  });

  it('tells nothing of a fault but its number', async () => {
    for (const [, endpoint] of named) {
      if (endpoint.operation.responses['500'] === undefined) continue;
      const good = await goodBy(endpoint);
      const { body } = await withoutTable(db(), 'shops', () => answered(endpoint, good));
      expect(body).toMatchObject({ type: '/problems/server.fault', status: 500 });
      expect(JSON.stringify(body)).not.toMatch(/shops|relation|select|node_modules|\.ts/i);
    }
  });

  it('shows nobody’s door where there is no demo', async () => {
    shop.transport.demoSignIns = [];
    await refuses(find('session.demo'), await goodBy(find('session.demo')), 404, 'request.not-found');
  });

  it('says where to try again while the database is away', async () => {
    const calls = new Map<Endpoint, Call>();
    for (const [, endpoint] of named) calls.set(endpoint, await goodBy(endpoint));
    await db().close();
    shop.transport.isReady = async () => false;
    for (const [, endpoint] of named) {
      if (endpoint.operation.responses['503'] === undefined) continue;
      const { status, body } = await answered(endpoint, calls.get(endpoint) as Call);
      expect(status).toBe(503);
      if (endpoint.operation.operationId !== 'service.ready')
        expect(body['type']).toBe('/problems/server.busy');
    }
  });

  it('has given every answer that the document describes', () => {
    const described = named.flatMap(([id, { operation }]) =>
      Object.keys(operation.responses).map((status) => `${id} ${status}`),
    );
    expect(described.filter((answer) => !seen.has(answer))).toEqual([]);
  });
});
