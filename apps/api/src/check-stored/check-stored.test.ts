import { cancelByHand, describeOnServer } from '@flitchbook/db/testing';
import { beforeAll, expect, it } from 'vitest';
import { endpoints } from '../testing/described-answers.ts';
import { goodRequest } from '../testing/good-requests.ts';
import { openTestShop, type TestShop } from '../testing/test-shop.ts';
import { checkStored } from './check-stored.ts';

describeOnServer('the check of what is stored', (db) => {
  let shop: TestShop;
  const send = async (operationId: string): Promise<void> => {
    const endpoint = endpoints.find(({ operation }) => operation.operationId === operationId);
    if (!endpoint) throw new Error(`no route ${operationId}`);
    const answer = await shop.ask(await goodRequest(shop, endpoint, 'owner'));
    if (!answer.ok) throw new Error(`${operationId}: ${await answer.text()}`);
  };
  beforeAll(async () => {
    shop = await openTestShop(db());
    for (const step of ['plans.make', 'reservations.hold', 'reservations.reserve', 'reservations.release'])
      await send(step);
  });

  it('finds nothing wrong with what the service has stored', async () => {
    expect(await checkStored(shop.services.db)).toMatchObject({ shops: 2, days: 2, orders: 5, faults: [] });
  });

  it('names an order that somebody has moved past the service', async () => {
    await cancelByHand(db(), shop.own.orderId);
    const { faults } = await checkStored(shop.services.db);
    expect(faults).toContain('2026-11-26 R4: order 1 is cancelled; its entries say standing');
    expect(faults).toContainEqual(
      expect.stringMatching(/^2026-11-26 P19: lines\S+ is not a line of the day$/),
    );
    // As much of the plan as the order had is wrong too, and what it says it is worth: that depends on the plan.
    const others = faults.filter((fault) => !/ (R4|P17|P19|P27): /.test(fault));
    expect(others).toEqual([]);
  });
});
