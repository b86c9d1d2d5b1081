import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type DemoShop, openDemoShop } from '../testing/demo-shop.ts';
import { endpoints } from '../testing/described-answers.ts';
import { hasGoodRequest, idsIn } from '../testing/good-requests.ts';

/** What follows the cutting: the requests of these routes follow from each other, so they are walked on the demo day. */
const walked = endpoints.filter((endpoint) => !hasGoodRequest(endpoint));
const named = walked.map((endpoint) => [endpoint.operation.operationId ?? '', endpoint] as const);
const nobody = '0190f1d2-6b7e-7c3a-9f00-2d6c1c7a4e51';
const isOpen = (roles: readonly string[] | undefined): boolean => roles?.includes('everyone') ?? false;
const addressOf = (path: string): string =>
  path.replace('{file}', `${'x'.repeat(43)}.ics`).replaceAll(/\{\w+\}/g, nobody);

let shop: DemoShop;
beforeAll(async () => {
  shop = await openDemoShop();
}, 120_000);
afterAll(() => shop.close());

describe('the routes after the cutting', () => {
  it('are those that are known to be walked elsewhere', () => {
    const tags = new Set(walked.map(({ operation }) => operation.tags?.[0]));
    expect([...tags].toSorted()).toEqual([
      'bills',
      'book settings',
      'closing',
      'counter',
      'exports',
      'hand-over',
      'kitchen',
      'labels',
      'packs',
      'trace',
    ]);
  });

  it.each(named.filter(([, { operation }]) => !isOpen(operation['x-roles'])))(
    '%s asks who is there, and gives a customer nothing that is not his own',
    async (_, { method, path, operation }) => {
      expect(await shop.ask(null, method, addressOf(path))).toMatchObject({
        status: 401,
        refusal: 'session.required',
      });
      const asked = await shop.ask('customer', method, addressOf(path));
      if (operation['x-roles']?.includes('customer')) expect(asked.status).toBeGreaterThanOrEqual(400);
      else expect(asked).toMatchObject({ status: 403, refusal: 'session.not-allowed' });
    },
  );

  it.each(
    named.filter(
      ([, { method, path, operation }]) =>
        idsIn(path).length > 0 && operation.requestBody === undefined && method === 'GET',
    ),
  )('%s finds nothing under an id of nobody, and under what is none', async (_, { method, path }) => {
    expect((await shop.ask('owner', method, addressOf(path))).status).toBe(404);
    expect((await shop.ask('owner', method, path.replaceAll(/\{\w+\}/g, '17'))).status).toBe(404);
  });

  it.each(named.filter(([, { operation }]) => operation.requestBody !== undefined))(
    '%s takes no body that it does not know',
    async (_, { method, path }) => {
      const query = method === 'PUT' ? '?version=0' : '';
      const answer = await shop.ask('owner', method, addressOf(path) + query, { body: { isAdmin: true } });
      expect(answer).toMatchObject({ status: 422, refusal: 'request.invalid' });
    },
  );
});

describe('settings of the books', () => {
  interface Set {
    readonly settings: {
      label: { things: Record<string, unknown>; symbol: string };
      money: { meatTaxClass: string };
    };
    readonly version: number;
  }

  it('are the usual ones until the owner sets others, and are checked', async () => {
    const usual = (await shop.ask<Set>('counter', 'GET', '/api/book-settings')).body;
    const put = (change: object, version: number) =>
      shop.ask<Set>('owner', 'PUT', `/api/book-settings?version=${version}`, {
        body: { ...usual.settings, ...change },
      });
    expect(
      (await put({ money: { ...usual.settings.money, meatTaxClass: 'wine' } }, usual.version)).refusal,
    ).toBe('book-settings.invalid');
    const thing = {
      ingredients: [],
      allergens: [],
      gtin: '99520000000013',
      item: null,
      storage: null,
      cooking: null,
      bestBeforeDays: null,
    };
    const wrong = { label: { ...usual.settings.label, things: { 'rib-chop': thing } } };
    expect((await put(wrong, usual.version)).refusal).toBe('book-settings.invalid');
    const set = await put({ closeTolerancePpm: 20_000 }, usual.version);
    expect(set.body.version).toBe(usual.version + 1);
    expect((await put({ closeTolerancePpm: 30_000 }, usual.version)).refusal).toBe('edit.version-stale');
    expect(
      (await shop.ask('counter', 'PUT', '/api/book-settings?version=2', { body: usual.settings })).refusal,
    ).toBe('session.not-allowed');
  });
});

describe('a calendar feed', () => {
  it('is read by whoever has its address, until it is taken back', async () => {
    const { orders } = (
      await shop.ask<{ orders: { orderId: string }[] }>('counter', 'GET', `/api/days/${shop.dayId}/orders`)
    ).body;
    const orderId = orders[0]?.orderId ?? '';
    const pickUp = { date: '2026-11-27', from: '15:00', to: '16:00', place: 'Shelf B2' };
    const agreed = await shop.ask<{ pickUp: { startsAt: string; version: number } }>(
      'counter',
      'PUT',
      `/api/orders/${orderId}/pick-up?version=0`,
      { body: pickUp },
    );
    expect(agreed.body.pickUp).toMatchObject({ startsAt: '2026-11-27T20:00:00.000Z', version: 1 });
    expect(
      (await shop.ask('counter', 'PUT', `/api/orders/${orderId}/pick-up?version=0`, { body: pickUp }))
        .refusal,
    ).toBe('edit.version-stale');
    const gap = { ...pickUp, date: '2027-03-14', from: '02:30', to: '04:00' };
    expect(
      (await shop.ask('counter', 'PUT', `/api/orders/${orderId}/pick-up?version=1`, { body: gap })).refusal,
    ).toBe('pick-up.invalid');

    const { address } = (
      await shop.ask<{ address: string }>('counter', 'POST', '/api/calendar-feeds', {
        body: { name: 'Bench' },
      })
    ).body;
    const feed = await shop.ask<string>(null, 'GET', address);
    expect(feed.headers.get('content-type')).toContain('text/calendar');
    expect(feed.body).toContain('DTSTART:20261127T200000Z');
    expect(feed.body).toContain('LOCATION:Shelf B2');
    expect((await shop.ask('counter', 'DELETE', '/api/calendar-feeds')).body).toEqual({ revoked: 1 });
    expect((await shop.ask(null, 'GET', address)).status).toBe(404);
  });

  it('goods that nobody fetched are reminded of, frozen and released as the policy says, each once', async () => {
    const { orders } = (
      await shop.ask<{ orders: { orderId: string }[] }>('counter', 'GET', `/api/days/${shop.dayId}/orders`)
    ).body;
    const orderId = orders[0]?.orderId ?? '';
    const step = (name: string) =>
      shop.ask('counter', 'POST', `/api/orders/${orderId}/pick-up/steps`, { body: { step: name } });
    expect((await step('remind')).refusal).toBe('pick-up.not-due');
    shop.setNow('2026-11-28T00:00:00Z');
    expect((await step('remind')).status).toBe(200);
    expect((await step('remind')).refusal).toBe('pick-up.not-due');
    expect((await step('release')).refusal).toBe('pick-up.not-due');
    shop.setNow('2026-12-10T00:00:00Z');
    expect((await step('release')).status).toBe(200);
  });
});
