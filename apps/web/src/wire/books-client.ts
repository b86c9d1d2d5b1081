import type {
  Animals,
  Closing,
  CounterOnWire,
  DayPacks,
  HandOverList,
  LabelRunOnWire,
  NewClosingOnWire,
  NewHandOverOnWire,
  NewPackOnWire,
  NewPaymentOnWire,
  NewSale,
  OrderAccount,
  Orders,
  PackOnWire,
  Settle,
} from '@flitchbook/contracts';
import type { Answer, Ask } from './client.ts';

export type {
  Closing,
  CounterOnWire,
  DayPacks,
  HandOverList,
  OrderAccount,
  PackOnWire,
} from '@flitchbook/contracts';

/** What follows the cutting, one method a verb. `key` is new for each new request. */
export interface BooksClient {
  readonly readPacks: (dayId: string) => Promise<Answer<DayPacks>>;
  readonly weigh: (dayId: string, pack: NewPackOnWire, key: string) => Promise<Answer<PackOnWire>>;
  readonly undo: (packId: string) => Promise<Answer<PackOnWire>>;
  readonly startLabels: (packIds: readonly string[], key: string) => Promise<Answer<LabelRunOnWire>>;
  readonly confirmLabels: (runId: string, packIds: readonly string[]) => Promise<Answer<LabelRunOnWire>>;
  readonly readOrders: (dayId: string) => Promise<Answer<Orders>>;
  readonly readAnimals: (dayId: string) => Promise<Answer<Animals>>;
  readonly readHandOver: (orderId: string) => Promise<Answer<HandOverList>>;
  readonly handOver: (orderId: string, what: NewHandOverOnWire, key: string) => Promise<Answer<HandOverList>>;
  readonly readAccount: (orderId: string) => Promise<Answer<OrderAccount>>;
  readonly settle: (orderId: string, wish: Settle, key: string) => Promise<Answer<OrderAccount>>;
  readonly pay: (orderId: string, money: NewPaymentOnWire, key: string) => Promise<Answer<OrderAccount>>;
  readonly readCounter: () => Promise<Answer<CounterOnWire>>;
  readonly sell: (sale: NewSale, key: string) => Promise<Answer<unknown>>;
  readonly readClosing: (animalId: string) => Promise<Answer<Closing>>;
  readonly close: (animalId: string, closing: NewClosingOnWire, key: string) => Promise<Answer<Closing>>;
}

export function createBooksClient(ask: Ask): BooksClient {
  const keyed = (key: string) => ({ 'Idempotency-Key': key });
  const post = <T>(path: string, body: unknown, key: string): Promise<Answer<T>> =>
    ask<T>(path, { method: 'POST', body, headers: keyed(key) });
  return {
    readPacks: (dayId) => ask(`/days/${dayId}/packs`),
    weigh: (dayId, pack, key) => post(`/days/${dayId}/packs`, pack, key),
    undo: (packId) => ask(`/packs/${packId}`, { method: 'DELETE' }),
    startLabels: (packIds, key) => post('/label-runs', { packIds }, key),
    confirmLabels: (runId, packIds) =>
      ask(`/label-runs/${runId}/printed`, { method: 'POST', body: { packIds } }),
    readOrders: (dayId) => ask(`/days/${dayId}/orders`),
    readAnimals: (dayId) => ask(`/days/${dayId}/animals`),
    readHandOver: (orderId) => ask(`/orders/${orderId}/hand-over`),
    handOver: (orderId, what, key) => post(`/orders/${orderId}/hand-over`, what, key),
    readAccount: (orderId) => ask(`/orders/${orderId}/account`),
    settle: (orderId, wish, key) => post(`/orders/${orderId}/bill`, wish, key),
    pay: (orderId, money, key) => post(`/orders/${orderId}/payments`, money, key),
    readCounter: () => ask('/counter'),
    sell: (sale, key) => post('/counter/sales', sale, key),
    readClosing: (animalId) => ask(`/animals/${animalId}/closing`),
    close: (animalId, closing, key) => post(`/animals/${animalId}/closing`, closing, key),
  };
}
