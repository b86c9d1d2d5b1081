import type { DayPacks, DealsOnWire, HalfPreviewOnWire, Order, Orders } from '@flitchbook/contracts';
import { forShop, inTransaction, takeMails } from '@flitchbook/db';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { animal } from '../testing/bodies.ts';
import { type DemoShop, openDemoShop } from '../testing/demo-shop.ts';

const chops = {
  operations: { ham: 'ham-halves', butt: 'butt-across' },
  manners: { rib: 'bone-in', lumbar: 'bone-in' },
  portions: {
    'rib-bone-in': { by: 'thickness', um: 25_400 },
    'lumbar-bone-in': { by: 'thickness', um: 25_400 },
    'butt-bone-in': { by: 'thickness', um: 19_050 },
    'belly-slab': { by: 'weight', fromGrams: 1360, toGrams: 1600 },
  },
} as const;

describe('a half from a customer’s screen to the deal of its pieces', () => {
  let shop: DemoShop;
  let dayId: string;
  beforeAll(async () => {
    shop = await openDemoShop();
    const opened = await shop.ask<{ dayId: string }>('owner', 'POST', '/api/days', {
      body: { date: '2027-02-05' },
    });
    dayId = opened.body.dayId;
    await shop.ask('owner', 'POST', `/api/days/${dayId}/animals`, { body: animal() });
  }, 120_000);
  afterAll(() => shop.close());

  const preview = (body: unknown) =>
    shop.ask<HalfPreviewOnWire>('customer', 'POST', `/api/days/${dayId}/half-previews`, { body });

  it('says primal by primal what it gives, what it costs, what stays', async () => {
    const { status, body } = await preview({
      size: 'half',
      instructions: { ...chops, leaves: ['leaf-fat', 'skin'] },
    });
    expect(status).toBe(200);
    // 92 lb at the shop's 8.00 a kilogram: 41.731 kg, to the gram.
    expect(body.price).toMatchObject({ fromMinor: 33_385, toMinor: 33_385, expectedMinor: 33_385 });
    const [half] = body.sides;
    expect(half?.primals.map(({ part }) => part)).toEqual(['shoulder', 'middle', 'leg']);
    expect(half?.stays.map(({ id }) => id).toSorted()).toEqual(['leaf-fat', 'skin']);
    const chopLine = half?.primals[1]?.gives.find(({ id }) => id === 'rib-bone-in');
    expect(chopLine).toMatchObject({ cut: 'rib-chop', pieces: { likely: expect.any(Number) } });
    expect(body.boxedMg.high).toBeLessThan(body.hangingMg.high);
  });

  it('refuses instructions that name what is not there, by their place', async () => {
    const instructions = { operations: { ham: 'ham-flown' }, manners: {}, portions: {} };
    const refused = await shop.ask<{ errors: { at: string }[] }>(
      'customer',
      'POST',
      `/api/days/${dayId}/half-previews`,
      {
        body: { size: 'half', instructions },
      },
    );
    expect(refused).toMatchObject({ status: 422, refusal: 'order.invalid' });
    expect(refused.body.errors[0]?.at).toBe('instructions.operations.ham');
  });

  it('holds it, and deals what the plan cuts between two names', async () => {
    const instructions = { ...chops, leaves: ['skin'], sharedWith: 'Ravi "Bo" <Finch>' };
    const held = await shop.ask<Order>('customer', 'POST', `/api/days/${dayId}/holds`, {
      body: { owner: 'x', lines: [], shares: [{ size: 'half', instructions }] },
    });
    expect(held.status).toBe(201);
    const shown = await preview({ size: 'half', instructions });
    const { status, body } = await shop.ask<DealsOnWire>(
      'customer',
      'GET',
      `/api/orders/${held.body.orderId}/deals`,
    );
    expect(status).toBe(200);
    const [deal] = body.deals;
    const [mine, theirs] = deal?.piles ?? [];
    expect(theirs?.name).toBe(instructions.sharedWith);
    expect(deal?.fair).toBe(true);
    const count = (name: string): number =>
      (deal?.piles ?? []).reduce(
        (sum, { pieces }) =>
          sum + pieces.filter((row) => row.name === name).reduce((n, row) => n + row.count, 0),
        0,
      );
    const line = shown.body.sides[0]?.primals[1]?.gives.find(({ id }) => id === 'rib-bone-in');
    expect(count('Bone-in rib chop')).toBe(line?.pieces?.likely);
    expect(mine?.loose.map(({ bulk }) => bulk)).not.toContain('skin');
    expect(Math.abs((mine?.grams ?? 0) - (theirs?.grams ?? 0))).toBeLessThan(1500);
  });

  it('tells its customer in his language: reserved, ready once, billed', async () => {
    expect(await shop.ask('customer', 'PUT', '/api/my/language', { body: { language: 'es' } })).toMatchObject(
      {
        status: 204,
      },
    );
    const { orders } = (await shop.ask<Orders>('customer', 'GET', '/api/my/orders')).body;
    const orderId = orders.find((order) => order.dayId === dayId)?.orderId ?? '';
    expect(await shop.ask('customer', 'POST', `/api/orders/${orderId}/reserve`)).toMatchObject({
      status: 200,
    });
    const { toMake } = (await shop.ask<DayPacks>('butcher', 'GET', `/api/days/${dayId}/packs`)).body;
    const mine = toMake.filter((pack) => pack.orderId === orderId);
    for (const { key, expectedMg } of mine) {
      const gross = { text: (expectedMg / 453_592.37 + 0.1).toFixed(2), unit: 'lb' };
      const tare = { text: '0.04', unit: 'lb' };
      const made = await shop.ask('butcher', 'POST', `/api/days/${dayId}/packs`, {
        body: { key, gross, tare },
      });
      expect(made.status).toBe(201);
    }
    expect(
      await shop.ask('counter', 'POST', `/api/orders/${orderId}/bill`, { body: { fees: [] } }),
    ).toMatchObject({ status: 201 });
    const { shopId, services } = shop;
    const mails = await inTransaction(forShop(services.db, shopId), (tx) =>
      takeMails(tx, shopId, { limit: 100, leaseSeconds: 1 }),
    );
    const told = mails.filter((mail) => mail.orderId === orderId);
    expect(told.map(({ kind }) => kind)).toEqual([
      'order.held',
      'order.reserved',
      'order.ready',
      'order.receipt',
    ]);
    const [held, reserved, ready, receipt] = told;
    expect(held?.body).toContain('Half a hog');
    expect(reserved?.subject).toMatch(/reservado$/);
    expect(reserved?.body).toContain(
      'Medio cerdo: cortado según sus instrucciones, compartido con Ravi "Bo" <Finch>',
    );
    expect(reserved?.body).toContain('viernes, 5 de febrero de 2027');
    expect(reserved?.html).toContain('&lt;Finch&gt;');
    expect(reserved?.html).not.toContain('<Finch>');
    expect(ready?.body).toContain(`${mine.length} paquetes`);
    expect(ready?.body).toContain('71 °C');
    expect(receipt?.body).toMatch(/Total: .*333|Total: .*334/);
  });
});
