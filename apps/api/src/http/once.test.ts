import { describeOnBoth } from '@flitchbook/db/testing';
import { beforeAll, describe, expect, it } from 'vitest';
import { animal, order } from '../testing/bodies.ts';
import { bodyOf, type Call, openTestShop, type TestShop } from '../testing/test-shop.ts';

interface Taken {
  readonly orderId: string;
  readonly number: number;
  readonly owner: string;
}

interface Booked {
  readonly animalId: string;
  readonly name: string;
}

// IETF draft-ietf-httpapi-idempotency-key-header-07, section 2; RFC 9110, section 13 for If-Match.
describeOnBoth('what is sent twice', (db) => {
  let shop: TestShop;
  beforeAll(async () => {
    shop = await openTestShop(db());
  });

  const taking = (key: string, body: unknown = order(), as: Call['as'] = 'owner'): Call => ({
    method: 'POST',
    path: `/api/days/${shop.own.dayId}/orders`,
    as,
    headers: { 'Idempotency-Key': key },
    body,
  });

  async function orders(): Promise<readonly Taken[]> {
    const answer = await shop.ask({ method: 'GET', path: `/api/days/${shop.own.dayId}/orders`, as: 'owner' });
    return (await bodyOf<{ orders: Taken[] }>(answer)).orders;
  }
  const ordersOf = async (owner: string) => (await orders()).filter((taken) => taken.owner === owner);

  const statuses = (answers: readonly Response[]): readonly number[] =>
    answers.map(({ status }) => status).sort();

  describe('with one key', () => {
    it('gets the first answer again, and has one effect', async () => {
      const key = shop.newKey();
      const first = await shop.ask(taking(key));
      const state = await shop.state();
      // The same key without its quotes, and the members of the body in another order.
      const { owner, ...rest } = order();
      const again = await shop.ask(taking(key.replaceAll('"', ''), { ...rest, owner }));
      expect([first.status, again.status]).toEqual([201, 201]);
      expect(first.headers.get('idempotency-replayed')).toBeNull();
      expect(again.headers.get('idempotency-replayed')).toBe('true');
      expect(again.headers.get('etag')).toBe(first.headers.get('etag'));
      expect(await again.json()).toEqual(await first.json());
      expect(await shop.state()).toEqual(state);
    });

    it('is refused with another body, and changes nothing', async () => {
      const key = shop.newKey();
      await shop.ask(taking(key));
      const state = await shop.state();
      const other = await shop.ask(taking(key, order({ note: 'Rings first' })));
      expect(other.status).toBe(422);
      expect(await other.json()).toMatchObject({ type: '/problems/idempotency.key-reused' });
      expect(await shop.state()).toEqual(state);
    });

    it('is another’s key where another person sends it', async () => {
      const key = shop.newKey();
      const [mine, theirs] = [await shop.ask(taking(key)), await shop.ask(taking(key, order(), 'counter'))];
      expect(theirs.headers.get('idempotency-replayed')).toBeNull();
      expect((await bodyOf<Taken>(mine)).orderId).not.toBe((await bodyOf<Taken>(theirs)).orderId);
    });

    it('may be mended after a refusal: only answers are kept', async () => {
      const key = shop.newKey();
      const refused = await shop.ask(taking(key, order({ lines: [] })));
      expect(refused.status).toBe(422);
      expect((await shop.ask(taking(key))).status).toBe(201);
    });

    it('has one effect however many come at once', async () => {
      const key = shop.newKey();
      const owner = `Many at once ${key}`;
      const answers = await Promise.all(
        Array.from({ length: 8 }, () => shop.ask(taking(key, order({ owner })))),
      );
      expect(await ordersOf(owner)).toHaveLength(1);
      // Whoever came while the first one ran was told so, or had its answer.
      const fresh = answers.filter(
        ({ status, headers }) => status === 201 && !headers.has('idempotency-replayed'),
      );
      expect(fresh).toHaveLength(1);
      expect(statuses(answers).every((status) => status === 201 || status === 409)).toBe(true);
      const late = await shop.ask(taking(key, order({ owner })));
      expect(late.headers.get('idempotency-replayed')).toBe('true');
    });
  });

  it('gives every one of many orders a number of its own', async () => {
    const answers = await Promise.all(
      Array.from({ length: 12 }, () => shop.ask(taking(shop.newKey(), order({ owner: 'Twelve at once' })))),
    );
    expect(statuses(answers)).toEqual(Array(12).fill(201));
    const numbers = (await ordersOf('Twelve at once')).map(({ number }) => number);
    expect(new Set(numbers).size).toBe(12);
  });

  it('keeps one of several orders with one id', async () => {
    const body = order({ orderId: shop.newId(), owner: 'One id' });
    const answers = await Promise.all(Array.from({ length: 4 }, () => shop.ask(taking(shop.newKey(), body))));
    expect(statuses(answers)).toEqual([201, 409, 409, 409]);
    expect(await ordersOf('One id')).toHaveLength(1);
  });

  it('opens a date once', async () => {
    const opening = () =>
      shop.ask({
        method: 'POST',
        path: '/api/days',
        as: 'owner',
        headers: { 'Idempotency-Key': shop.newKey() },
        body: { date: '2028-02-29' },
      });
    expect(statuses(await Promise.all([opening(), opening(), opening()]))).toEqual([201, 409, 409]);
  });

  describe('as an edit of one version', () => {
    it('lets one of two corrections through', async () => {
      const booked = await shop.ask({
        method: 'POST',
        path: `/api/days/${shop.own.dayId}/animals`,
        as: 'owner',
        headers: { 'Idempotency-Key': shop.newKey() },
        body: animal({ name: 'Hog 30' }),
      });
      const { animalId } = await bodyOf<Booked>(booked);
      const path = `/api/animals/${animalId}`;
      const correct = (name: string) =>
        shop.ask({
          method: 'PATCH',
          path,
          as: 'butcher',
          headers: { 'If-Match': booked.headers.get('etag') ?? '' },
          body: { name },
        });
      const answers = await Promise.all([correct('Hog 31'), correct('Hog 32')]);
      expect(statuses(answers)).toEqual([200, 412]);
      const won = answers.find(({ status }) => status === 200);
      expect(won?.headers.get('etag')).toBe('"2"');
      const kept = await shop.ask({
        method: 'GET',
        path: `/api/days/${shop.own.dayId}/animals`,
        as: 'butcher',
      });
      const { animals } = await bodyOf<{ animals: Booked[] }>(kept);
      const { name } = await bodyOf<Booked>(won as Response);
      expect(animals.find((one) => one.animalId === animalId)?.name).toBe(name);
    });

    it('cancels an order once', async () => {
      const { orderId } = await bodyOf<Taken>(
        await shop.ask(taking(shop.newKey(), order({ owner: 'Once over' }))),
      );
      const cancel = () =>
        shop.ask({
          method: 'DELETE',
          path: `/api/orders/${orderId}`,
          as: 'counter',
          headers: { 'If-Match': '"1"' },
        });
      const answers = await Promise.all([cancel(), cancel(), cancel()]);
      expect(statuses(answers)).toEqual([200, 409, 409]);
    });
  });
});
