import { asOwner, describeOnServer, rowsOfShop } from '@flitchbook/db/testing';
import { beforeAll, describe, expect, it } from 'vitest';
import { openApiDocument } from '../../apps/api/src/http/api-routes.ts';
import type { Endpoint, Parameter, Schema } from '../../apps/api/src/http/open-api-shape.ts';
import { endpoints } from '../../apps/api/src/testing/described-answers.ts';
import { goodRequest, hasGoodRequest } from '../../apps/api/src/testing/good-requests.ts';
import { type Call, openTestShop, roles, type TestShop } from '../../apps/api/src/testing/test-shop.ts';
import { seededBelow } from '../concurrency/seeded.ts';
import { fillWithMarks, idsOfShop, markedCustomer, markedOrder } from './foreign-shop.ts';
import { sampleOf } from './sample.ts';

const document = openApiDocument();
const foreignMark = 'Zeveraar';
const neighbourMark = 'Quillonet';
const uuids = /[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}/g;

type Ids = ReadonlyMap<string, readonly string[]>;

const takes = ({ operation }: Endpoint, name: string): boolean =>
  operation.parameters?.some((parameter) => parameter.in === 'header' && parameter.name === name) ?? false;
const queryOf = ({ operation }: Endpoint): readonly Parameter[] =>
  operation.parameters?.filter((parameter) => parameter.in === 'query') ?? [];
const bodyOf = ({ operation }: Endpoint): Schema | undefined =>
  operation.requestBody?.content?.['application/json']?.schema;
const named = endpoints.map((endpoint) => [endpoint.operation.operationId ?? '', endpoint] as const);

/** A request of the document's own making, with these ids wherever an id may stand. */
function requestWith(shop: TestShop, endpoint: Endpoint, ids: Ids, round: number): Call {
  const below = seededBelow(round + 1);
  const idOf = (name: string): string => {
    const known = ids.get(name) ?? ids.get('orderId') ?? [];
    return known[round % Math.max(1, known.length)] ?? shop.newId();
  };
  const sampling = { document, below, idOf, fullness: 70 };
  const path = endpoint.path.replaceAll(/\{(\w+)\}/g, (_, name: string) => idOf(name));
  const query = queryOf(endpoint).map(({ name, schema }) => {
    const id = ids.get(`${name}Id`)?.[0];
    return `${name}=${encodeURIComponent(id ?? String(sampleOf(schema ?? {}, sampling, name)))}`;
  });
  const schema = bodyOf(endpoint);
  return {
    method: endpoint.method,
    path: query.length > 0 ? `${path}?${query.join('&')}` : path,
    headers: {
      ...(takes(endpoint, 'idempotency-key') && { 'Idempotency-Key': shop.newKey() }),
      ...(takes(endpoint, 'if-match') && { 'If-Match': '"1"' }),
    },
    ...(schema && { body: sampleOf(schema, sampling) }),
  };
}

// OWASP API Security Top 10 2023, API1 and API5; ASVS 5.0.0, 8.2.2, 8.3.1, 8.4.1.
describeOnServer('every route of the document', (db) => {
  let shop: TestShop;
  let foreign: Ids;
  let foreignIds: ReadonlySet<string>;
  beforeAll(async () => {
    shop = await openTestShop(db());
    // Room for an order in every request: the usual caps are for one customer and day.
    const setRules = endpoints.find(({ operation }) => operation.operationId === 'rules.set');
    if (setRules) await shop.ask(await goodRequest(shop, setRules, 'owner'));
    await fillWithMarks(shop.services, { mark: foreignMark, shopId: shop.other.shopId });
    foreign = await idsOfShop(asOwner(db()), shop.other.shopId);
    const own = new Set([...(await idsOfShop(asOwner(db()), shop.own.shopId)).values()].flat());
    foreignIds = new Set([...foreign.values()].flat().filter((id) => !own.has(id)));
  });

  /** What of an answer is somebody else's and was not in the question. */
  async function leaksOf(call: Call, mark: string, ids: ReadonlySet<string>): Promise<string[]> {
    const answer = await shop.ask(call);
    const text = await answer.text();
    const sent = `${call.path} ${JSON.stringify(call.body ?? '')}`;
    const leaked = (text.match(uuids) ?? []).filter((id) => ids.has(id) && !sent.includes(id));
    const says = `${call.method} ${call.path} as ${String(call.as)}: ${answer.status}`;
    return [
      ...leaked.map((id) => `${says} names ${id}`),
      ...(text.includes(mark) ? [`${says} tells words of somebody else`] : []),
    ];
  }

  it('knows ids of another shop for every name that a path has', () => {
    const names = new Set(
      endpoints.flatMap(({ path }) => [...path.matchAll(/\{(\w+Id)\}/g)].map(([, name]) => name)),
    );
    expect([...names].filter((name) => !foreign.has(name ?? ''))).toEqual([]);
  });

  describe.each([undefined, ...roles])('for %s', (role) => {
    it.each(named)('%s tells nothing of another shop and changes nothing there', async (id, endpoint) => {
      const before = await rowsOfShop(asOwner(db()), shop.other.shopId);
      // Whoever signs out does so with a session of his own.
      const as = id === 'session.end' && role ? { cookie: await shop.signIn(role) } : role;
      const calls: Call[] = [0, 1].map((round) => ({ ...requestWith(shop, endpoint, foreign, round), as }));
      if (hasGoodRequest(endpoint)) calls.push(await goodRequest(shop, endpoint, role, shop.other));
      for (const call of calls) expect(await leaksOf(call, foreignMark, foreignIds)).toEqual([]);
      expect(await rowsOfShop(asOwner(db()), shop.other.shopId)).toEqual(before);
    });
  });

  // An id of another shop is told apart from an id of nobody by nothing in the answer.
  it.each(named.filter(([, { path }]) => /\{\w+Id\}/.test(path)))(
    '%s answers for what is another shop’s as for what is not there',
    async (_, endpoint) => {
      const role = endpoint.operation['x-roles']?.includes('owner') ? 'owner' : 'customer';
      const nobody: Ids = new Map([...foreign.keys()].map((name) => [name, [shop.newId()]]));
      const answers = await Promise.all(
        [foreign, nobody].map(async (ids) => {
          const answer = await shop.ask({ ...requestWith(shop, endpoint, ids, 0), as: role });
          return { status: answer.status, text: (await answer.text()).replaceAll(uuids, 'id') };
        }),
      );
      expect(answers[0]).toEqual(answers[1]);
      expect(answers[0]?.status).toBeGreaterThanOrEqual(400);
    },
  );

  it('shows one customer nothing of another, and lets him change nothing of hers', async () => {
    const { services, own } = shop;
    const marked = { mark: neighbourMark, shopId: own.shopId };
    const personId = await markedCustomer(services, marked);
    const orderId = await markedOrder(services, marked, { personId, dayId: own.dayId });
    const ids: Ids = new Map([
      ['orderId', [orderId]],
      ['personId', [personId]],
      ['dayId', [own.dayId]],
    ]);
    const hers = new Set([orderId, personId]);
    const rowsOfHers = async () =>
      [...(await rowsOfShop(asOwner(db()), own.shopId))].flatMap(([table, text]) =>
        (JSON.parse(text) as Record<string, unknown>[]).flatMap((row) =>
          row['order_id'] === orderId || row['person_id'] === personId
            ? [`${table} ${JSON.stringify(row)}`]
            : [],
        ),
      );
    const before = await rowsOfHers();
    for (const [id, endpoint] of named) {
      if (id === 'session.end') continue;
      for (const round of [0, 1]) {
        const call = { ...requestWith(shop, endpoint, ids, round), as: 'customer' } as const;
        expect(await leaksOf(call, neighbourMark, hers)).toEqual([]);
      }
    }
    expect(await rowsOfHers()).toEqual(before);
  });
});
