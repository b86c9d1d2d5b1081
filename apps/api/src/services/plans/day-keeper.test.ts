import { describeOnBoth } from '@flitchbook/db/testing';
import { beforeAll, expect, it } from 'vitest';
import { order } from '../../testing/bodies.ts';
import { openTestShop, type TestShop } from '../../testing/test-shop.ts';
import { DayKeeper } from './day-keeper.ts';

describeOnBoth('the keeper of days', (db) => {
  let shop: TestShop;
  let keeper: DayKeeper | undefined;
  let rounds = 0;
  beforeAll(async () => {
    shop = await openTestShop(db(), { dayChanged: (shopId, dayId) => keeper?.dayChanged(shopId, dayId) });
    const { solver } = shop.services;
    keeper = new DayKeeper({
      ...shop.services,
      solver: {
        ...solver,
        solve: (day, limits) => {
          rounds += 1;
          return solver.solve(day, limits);
        },
      },
    });
  });

  const take = () =>
    shop.ask({
      method: 'POST',
      path: `/api/days/${shop.own.dayId}/orders`,
      as: 'owner',
      headers: { 'Idempotency-Key': shop.newKey() },
      body: order(),
    });
  async function board() {
    const answer = await shop.ask({ method: 'GET', path: `/api/days/${shop.own.dayId}/board`, as: 'owner' });
    return (await answer.json()) as {
      day: { version: number; plannedVersion: number | null };
      orders: { lineIds: string[] }[];
      plan: { lines: { lineId: string }[] } | null;
    };
  }

  it('plans what was left unplanned when the service ended', async () => {
    expect((await board()).plan).toBeNull();
    await keeper?.catchUp();
    await keeper?.settled(shop.own.dayId);
    const { day, plan } = await board();
    expect(day.plannedVersion).toBe(day.version);
    expect(plan?.lines).toHaveLength(1);
  });

  it('takes changes that come together into one round, and ends with a plan of all of them', async () => {
    rounds = 0;
    for (const answer of await Promise.all(Array.from({ length: 6 }, take))) expect(answer.status).toBe(201);
    await keeper?.settled(shop.own.dayId);
    const { day, orders, plan } = await board();
    expect(day.plannedVersion).toBe(day.version);
    expect(plan?.lines.map(({ lineId }) => lineId).sort()).toEqual(
      orders.flatMap(({ lineIds }) => lineIds).sort(),
    );
    expect(orders).toHaveLength(7);
    expect(rounds).toBeLessThanOrEqual(6);
  });
});
