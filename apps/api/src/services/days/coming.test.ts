import type { Coming, NewHold, OrderPromise, QuoteOnWire } from '@flitchbook/contracts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type DemoShop, openDemoShop } from '../../testing/demo-shop.ts';

describe('what customers are told', () => {
  let shop: DemoShop;
  beforeAll(async () => {
    shop = await openDemoShop();
  }, 120_000);
  afterAll(() => shop?.close());

  const hold = (offer: Coming['days'][number]['offers'][number], pieces: number): NewHold => ({
    owner: 'Odile Brandt',
    lines: [{ speciesId: offer.speciesId, cut: offer.cut, portion: offer.usual, ask: { pieces } }],
    shares: [],
  });
  const quote = async (body: NewHold): Promise<QuoteOnWire> =>
    (await shop.ask<QuoteOnWire>('customer', 'POST', `/api/days/${shop.dayId}/quotes`, { body })).body;

  it('is free is what a claim gets without moving anything, and one more is not', async () => {
    const { body, status } = await shop.ask<Coming>(null, 'GET', '/api/coming');
    expect(status).toBe(200);
    const [day] = body.days;
    expect(day?.dayId).toBe(shop.dayId);
    const counted = (day?.offers ?? []).filter(
      ({ usual, more, bothSides }) => usual.by !== 'bulk' && !bothSides && more !== null && more > 0,
    );
    expect(counted.length).toBeGreaterThan(20);
    for (const offer of counted.slice(0, 6)) {
      const more = offer.more ?? 0;
      expect([offer.cut, (await quote(hold(offer, more))).how]).toEqual([offer.cut, 'laid-in']);
      expect([offer.cut, (await quote(hold(offer, more + 1))).how]).not.toEqual([offer.cut, 'laid-in']);
    }
  }, 120_000);

  it('takes no less for it than it quoted: range round the expected price, and the same on the order', async () => {
    const { body: coming } = await shop.ask<Coming>(null, 'GET', '/api/coming');
    const offer = coming.days[0]?.offers.find(({ cut }) => cut === 'ham-steak');
    if (!offer) throw new Error('the demo has no ham steaks');
    const asked = hold(offer, 2);
    const said = await quote(asked);
    expect(said.fromMinor).toBeLessThan(said.expectedMinor);
    expect(said.toMinor).toBeGreaterThan(said.expectedMinor);
    const held = await shop.ask<{ orderId: string }>('customer', 'POST', `/api/days/${shop.dayId}/holds`, {
      body: asked,
    });
    const path = `/api/orders/${held.body.orderId}`;
    const { body } = await shop.ask<OrderPromise>('customer', 'GET', `${path}/promise`);
    expect(body.lines[0]).toMatchObject({
      asked: 2,
      planned: 2,
      expectedMinor: { from: said.fromMinor, to: said.toMinor },
    });
    expect(body.mayChange).toBe(true);
    expect(body.windows.length).toBeGreaterThan(0);
    const after = await shop.ask<Coming>(null, 'GET', '/api/coming');
    const left = after.body.days[0]?.offers.find(({ cut }) => cut === 'ham-steak')?.more;
    expect(left).toBe((offer.more ?? 0) - 2);
  }, 120_000);

  it('shows nobody the order of somebody else', async () => {
    const orders = await shop.ask<{ orders: { orderId: string; owner: string }[] }>(
      'owner',
      'GET',
      `/api/days/${shop.dayId}/orders`,
    );
    const theirs = orders.body.orders.find(({ owner }) => owner !== 'Odile Brandt');
    const { refusal } = await shop.ask('customer', 'GET', `/api/orders/${theirs?.orderId}/promise`);
    expect(refusal).toBe('order.unknown');
  });
});
