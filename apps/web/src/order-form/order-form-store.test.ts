import { hog } from '@flitchbook/carcass';
import { beforeEach, expect, it } from 'vitest';
import { createClient } from '../wire/client.ts';
import { createOrderFormStore, type OrderFormStore } from './order-form-store.ts';

const us = { weightUnit: 'lb', lengthUnit: 'in' } as const;
let keys: string[];
let answer: () => Response;
let store: OrderFormStore;

beforeEach(() => {
  keys = [];
  answer = () => Response.json({}, { status: 201 });
  let made = 0;
  store = createOrderFormStore({
    client: createClient(async (_, init) => {
      keys.push(new Headers(init?.headers).get('Idempotency-Key') ?? '');
      return answer();
    }),
    dayId: 'day-1',
    newKey: () => `key-${++made}`,
  });
});

const lost = (): Response => {
  throw new TypeError('no network');
};

it('sends nothing until all is put right, and forgets a fault once its field is touched', async () => {
  await store.send(hog, us);
  expect(store.faults.value.map(({ fault }) => fault)).toEqual(['owner', 'empty']);
  store.change({ owner: 'Bess' });
  store.addLine(hog, 'slab-bacon', us);
  expect(store.faults.value).toEqual([]);
  store.changeLine('line-1', { from: 'x' });
  await store.send(hog, us);
  expect(store.faults.value).toEqual([{ field: 'line-1-from', fault: 'weight' }]);
  store.changeLine('line-1', { from: '3' });
  expect(store.faults.value).toEqual([]);
  expect(keys).toEqual([]);
});

it('sends the same order again under the same key, so that a lost answer never books it twice', async () => {
  store.change({ owner: 'Bess' });
  store.addLine(hog, 'tenderloin', us);
  answer = lost;
  await store.send(hog, us);
  expect(store.sending.value).toBe('no-network');
  answer = () => Response.json({}, { status: 201 });
  await store.send(hog, us);
  expect(store.sending.value).toBe('done');
  expect(keys).toEqual(['key-1', 'key-1']);
});

it('sends a changed order under a new key', async () => {
  store.change({ owner: 'Bess' });
  store.addLine(hog, 'tenderloin', us);
  answer = lost;
  await store.send(hog, us);
  store.changeLine('line-1', { pieces: 2 });
  await store.send(hog, us);
  expect(keys).toEqual(['key-1', 'key-2']);
});

it('keeps what was written when the service refuses it', async () => {
  store.change({ owner: 'Bess' });
  store.addLine(hog, 'tenderloin', us);
  const problem = { type: '/problems/order.invalid', title: 'No', status: 422, detail: 'It cannot be.' };
  answer = () => Response.json(problem, { status: 422 });
  await store.send(hog, us);
  expect(store.sending.value).toEqual({ problem });
  expect(store.draft.value.lines).toHaveLength(1);
});
