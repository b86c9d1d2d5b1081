import type {
  Closing,
  CounterOnWire,
  DayPacks,
  HandOverList,
  OrderAccount,
  PackOnWire,
  Trace,
} from '@flitchbook/contracts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type DemoShop, openDemoShop } from '../testing/demo-shop.ts';

let shop: DemoShop;
beforeAll(async () => {
  shop = await openDemoShop();
});
afterAll(() => shop.close());

const packsOf = async (): Promise<DayPacks> =>
  (await shop.ask<DayPacks>('butcher', 'GET', `/api/days/${shop.dayId}/packs`)).body;
const account = async (orderId: string): Promise<OrderAccount> =>
  (await shop.ask<OrderAccount>('counter', 'GET', `/api/orders/${orderId}/account`)).body;

/** What a scale in pounds would show of a pack that is three percent lighter than planned, with a wrap of 0.04 lb: a step at least. */
const onScale = (expectedMg: number) => ({
  gross: { text: (Math.max(0.01, (expectedMg * 0.97) / 453_592.37) + 0.04).toFixed(2), unit: 'lb' },
  tare: { text: '0.04', unit: 'lb' },
});
const weigh = (toMake: DayPacks['toMake'][number], key?: string) =>
  shop.ask<PackOnWire>('butcher', 'POST', `/api/days/${shop.dayId}/packs`, {
    body: { key: toMake.key, ...onScale(toMake.expectedMg) },
    ...(key ? { key } : {}),
  });

// Each step sends dozens of requests.
describe('the demo day, from the block to the customer', { timeout: 120_000 }, () => {
  it('refuses a weight that cannot be, and names the field', async () => {
    const [first] = (await packsOf()).toMake;
    const heavy = {
      key: first?.key,
      gross: { text: '0.10', unit: 'lb' },
      tare: { text: '0.20', unit: 'lb' },
    };
    const answer = await shop.ask<{ errors: { at: string }[] }>(
      'butcher',
      'POST',
      `/api/days/${shop.dayId}/packs`,
      { body: heavy },
    );
    expect(answer).toMatchObject({
      status: 422,
      refusal: 'pack.invalid',
      body: { errors: [{ at: 'tare.text', value: '0.20' }] },
    });
    expect(
      await shop.ask('butcher', 'POST', `/api/days/${shop.dayId}/packs`, {
        body: { ...heavy, key: 'nothing' },
      }),
    ).toMatchObject({ refusal: 'pack.unknown' });
    expect((await packsOf()).packs).toEqual([]);
  });

  it('weighs every pack once, and the scale’s reading stays as it was', async () => {
    const { toMake } = await packsOf();
    const [first] = toMake;
    if (!first) throw new Error('nothing to weigh');
    const made = await weigh(first, 'twice');
    const again = await weigh(first, 'twice');
    expect(again.headers.get('idempotency-replayed')).toBe('true');
    expect(again.body).toEqual(made.body);
    expect((await weigh(first)).refusal).toBe('pack.already-made');
    for (const pack of toMake.slice(1)) expect((await weigh(pack)).status).toBe(201);
    const { toMake: left, packs, isClosed } = await packsOf();
    expect(left).toEqual([]);
    expect(isClosed).toBe(true);
    expect(packs.map(({ serial }) => serial)).toEqual(toMake.map((_, index) => index + 1));
    expect(packs.find(({ foreseen }) => foreseen === first.key)?.gross).toEqual(
      onScale(first.expectedMg).gross,
    );
  });

  it('opens a pack again under a new serial', async () => {
    const { packs } = await packsOf();
    const counterPack = packs.find(({ orderId, pieces }) => orderId === null && pieces > 0);
    if (!counterPack) throw new Error('nothing is left for the counter');
    expect((await shop.ask('butcher', 'DELETE', `/api/packs/${counterPack.packId}`)).status).toBe(200);
    const { toMake } = await packsOf();
    expect(toMake).toHaveLength(1);
    const [left] = toMake;
    if (left) expect((await weigh(left)).body.serial).toBe(packs.length + 1);
    expect((await shop.ask('butcher', 'DELETE', `/api/packs/${counterPack.packId}`)).refusal).toBe(
      'pack.unknown',
    );
  });

  it('settles each order once, to the cent, with the deposit off', async () => {
    const { orders } = (
      await shop.ask<{ orders: { orderId: string; number: number }[] }>(
        'counter',
        'GET',
        `/api/days/${shop.dayId}/orders`,
      )
    ).body;
    for (const { orderId } of orders) {
      const before = await account(orderId);
      expect(before.bill).toBeNull();
      const pay = (kind: string, amountMinor: number) =>
        shop.ask<OrderAccount>('counter', 'POST', `/api/orders/${orderId}/payments`, {
          body: { kind, method: 'cash', amountMinor },
        });
      expect((await pay('payment', 100)).refusal).toBe('payment.invalid');
      expect((await pay('deposit', 1500)).status).toBe(201);
      expect((await pay('refund', 1501)).refusal).toBe('payment.invalid');
      const settled = await shop.ask<OrderAccount>('counter', 'POST', `/api/orders/${orderId}/bill`, {
        body: { fees: [] },
      });
      expect(settled.status).toBe(201);
      expect(
        (await shop.ask('counter', 'POST', `/api/orders/${orderId}/bill`, { body: { fees: [] } })).refusal,
      ).toBe('bill.already-settled');
      const { bill, dueMinor } = settled.body;
      if (!bill) throw new Error('no bill');
      expect(bill.netMinor).toBe(bill.lines.reduce((sum, { amountMinor }) => sum + amountMinor, 0));
      expect(dueMinor).toBe(bill.totalMinor - 1500);
      if (dueMinor > 0) {
        expect((await pay('payment', dueMinor + 1)).refusal).toBe('payment.invalid');
        expect((await pay('payment', dueMinor)).body.dueMinor).toBe(0);
      } else if (dueMinor < 0) {
        expect((await pay('refund', -dueMinor)).body.dueMinor).toBe(0);
      }
    }
    const { packs } = await packsOf();
    const billed = packs.find(({ orderId }) => orderId !== null);
    expect((await shop.ask('butcher', 'DELETE', `/api/packs/${billed?.packId}`)).refusal).toBe('pack.billed');
  });

  it('hands each order its own packs, a part first and the rest later, and nothing twice', async () => {
    const { packs } = await packsOf();
    const orderIds = [...new Set(packs.flatMap(({ orderId }) => orderId ?? []))];
    const [one = '', other = ''] = orderIds;
    const give = (orderId: string, body: object) =>
      shop.ask<HandOverList>('counter', 'POST', `/api/orders/${orderId}/hand-over`, {
        body: { takenBy: 'Ines Okafor', proof: 'signature', ...body },
      });
    const foreign = packs.find(({ orderId }) => orderId === other);
    expect((await give(one, { packIds: [foreign?.packId] })).refusal).toBe('hand-over.invalid');
    expect((await give(one, { packIds: [] })).refusal).toBe('hand-over.invalid');
    expect((await give(one, { scans: ['999999', 'what?'] })).refusal).toBe('hand-over.invalid');
    for (const orderId of orderIds) {
      const [first, ...rest] = packs.filter((pack) => pack.orderId === orderId);
      if (!first) continue;
      const part = await give(orderId, { scans: [String(first.serial)] });
      expect(part.status).toBe(201);
      expect((await give(orderId, { packIds: [first.packId] })).refusal).toBe('hand-over.invalid');
      if (rest.length > 0)
        expect((await give(orderId, { packIds: rest.map(({ packId }) => packId) })).status).toBe(201);
      const list = (await shop.ask<HandOverList>('counter', 'GET', `/api/orders/${orderId}/hand-over`)).body;
      expect(list.packs.every(({ isGone }) => isGone)).toBe(true);
      for (const line of list.lines) expect(['gone', 'short']).toContain(line.state);
    }
    expect(
      (
        await shop.ask(
          'butcher',
          'DELETE',
          `/api/packs/${packs.find(({ orderId }) => orderId === one)?.packId}`,
        )
      ).refusal,
    ).toBe('pack.gone');
  });

  it('sells over the counter what is free, once', async () => {
    const { packs } = (await shop.ask<CounterOnWire>('counter', 'GET', '/api/counter')).body;
    expect(packs.every(({ orderNumber }) => orderNumber === null)).toBe(true);
    const body = {
      packs: packs.map(({ packId, amountMinor }) => ({ packId, soldMinor: amountMinor ?? 0 })),
      method: 'card-terminal',
    };
    const sale = await shop.ask<{ totalMinor: number }>('counter', 'POST', '/api/counter/sales', { body });
    expect(sale.body.totalMinor).toBe(packs.reduce((sum, { amountMinor }) => sum + (amountMinor ?? 0), 0));
    expect((await shop.ask('counter', 'POST', '/api/counter/sales', { body })).refusal).toBe(
      'hand-over.invalid',
    );
    expect((await shop.ask<CounterOnWire>('counter', 'GET', '/api/counter')).body.packs).toEqual([]);
  });

  it('traces any pack one step back and one forward, and an animal to all its packs', async () => {
    const { packs } = await packsOf();
    const [pack] = packs;
    const found = (await shop.ask<Trace>('butcher', 'GET', `/api/trace?serial=${pack?.serial}`)).body.packs;
    expect(found).toMatchObject([{ packId: pack?.packId, animalId: pack?.animalId }]);
    const recall = (await shop.ask<Trace>('butcher', 'GET', `/api/trace?animal=${pack?.animalId}`)).body
      .packs;
    expect(recall).toHaveLength(packs.filter(({ animalId }) => animalId === pack?.animalId).length);
    expect(recall.every(({ leftAt }) => leftAt !== null)).toBe(true);
    expect((await shop.ask('butcher', 'GET', '/api/trace')).refusal).toBe('request.invalid');
  });

  it('closes each animal in balance, every gram and every cent', async () => {
    const { packs } = await packsOf();
    let soldMinor = 0;
    for (const animalId of new Set(packs.map((pack) => pack.animalId))) {
      const open = (await shop.ask<Closing>('owner', 'GET', `/api/animals/${animalId}/closing`)).body;
      expect(open).toMatchObject({ isClosed: false, unpacked: 0, stillHere: 0 });
      const body = {
        outs: [{ kind: 'bone-and-skin', name: 'Bone to the renderer', grams: 500 }],
        minutes: 180,
        animalMinor: 20_000,
      };
      expect((await shop.ask('owner', 'POST', `/api/animals/${animalId}/closing`, { body })).refusal).toBe(
        'animal.unbalanced',
      );
      const drying = [
        ...body.outs,
        { kind: 'drying', name: 'Drip and drying on the block', grams: open.restGrams - 500 },
      ];
      const closed = await shop.ask<Closing>('owner', 'POST', `/api/animals/${animalId}/closing`, {
        body: { ...body, outs: drying },
      });
      expect(closed).toMatchObject({ status: 201, body: { isClosed: true, restGrams: 0, flag: 'none' } });
      const { hangingGrams, apartGrams, packedGrams, namedGrams, restGrams, margin, yields } = closed.body;
      expect(hangingGrams + apartGrams).toBe(packedGrams + namedGrams + restGrams);
      expect(yields.reduce((sum, row) => sum + row.packedGrams, 0)).toBe(packedGrams);
      expect(margin.soldMinor - margin.animalMinor - margin.labourMinor).toBe(margin.marginMinor);
      soldMinor += margin.soldMinor;
      expect((await shop.ask('owner', 'POST', `/api/animals/${animalId}/closing`, { body })).refusal).toBe(
        'animal.closed',
      );
    }
    // What the animals brought is what the bills and the counter took.
    const { orders } = (
      await shop.ask<{ orders: { orderId: string }[] }>('counter', 'GET', `/api/days/${shop.dayId}/orders`)
    ).body;
    let taken = packs.reduce((sum, pack) => sum + (pack.soldMinor ?? 0), 0);
    for (const { orderId } of orders) taken += (await account(orderId)).bill?.totalMinor ?? 0;
    expect(soldMinor).toBe(taken);
  });

  it('writes books that balance and invoices that name the order', async () => {
    const journal = await shop.ask<string>(
      'owner',
      'GET',
      '/api/exports/journal.csv?from=2026-01-01&to=2199-01-01',
    );
    const rows = journal.body
      .trim()
      .split('\r\n')
      .slice(1)
      .map((row) => row.split(','));
    const cents = (text = ''): number => Math.round(Number(text) * 100);
    expect(rows.length).toBeGreaterThan(10);
    expect(rows.reduce((sum, row) => sum + cents(row[3]) - cents(row[4]), 0)).toBe(0);
    // Nobody owes anything and no deposit is left.
    for (const account of ['1100', '2100'])
      expect(
        rows.filter((row) => row[2] === account).reduce((sum, row) => sum + cents(row[3]) - cents(row[4]), 0),
      ).toBe(0);
    const bills = await shop.ask<string>(
      'owner',
      'GET',
      '/api/exports/bills.csv?from=2026-11-26&to=2026-11-26',
    );
    expect(bills.headers.get('content-disposition')).toContain('attachment');
    expect(bills.body).toContain('Ines Okafor');
    expect(
      (await shop.ask('counter', 'GET', '/api/exports/bills.csv?from=2026-11-26&to=2026-11-26')).refusal,
    ).toBe('session.not-allowed');
  });
});
