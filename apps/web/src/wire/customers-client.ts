import type {
  Coming,
  HalfAsked,
  HalfPreviewOnWire,
  HandOverList,
  NewHold,
  NewPickUp,
  Order,
  OrderPromise,
  Orders,
  QuoteOnWire,
} from '@flitchbook/contracts';
import { language, languageTags } from '../words/customers/language.ts';
import type { Answer, Ask } from './client.ts';

export type {
  Coming,
  ComingDay,
  NewHold,
  OfferedCut,
  Order,
  OrderPromise,
  QuoteOnWire,
} from '@flitchbook/contracts';

/** What customers ask of the service, one method a verb. `key` is kept before a request is sent, and sent again with it. */
export interface CustomersClient {
  readonly readComing: () => Promise<Answer<Coming>>;
  readonly sendWayIn: (email: string, name: string) => Promise<Answer<unknown>>;
  /** from now on mails come in the language of the page */
  readonly tellLanguage: () => Promise<Answer<unknown>>;
  readonly enterByLink: (token: string) => Promise<Answer<unknown>>;
  readonly quote: (dayId: string, hold: NewHold, signal: AbortSignal) => Promise<Answer<QuoteOnWire>>;
  readonly previewHalf: (dayId: string, asked: HalfAsked) => Promise<Answer<HalfPreviewOnWire>>;
  readonly hold: (dayId: string, hold: NewHold, key: string) => Promise<Answer<Order>>;
  readonly holdLonger: (orderId: string, key: string) => Promise<Answer<Order>>;
  readonly reserve: (orderId: string, key: string) => Promise<Answer<Order>>;
  readonly release: (orderId: string, key: string) => Promise<Answer<Order>>;
  readonly cancel: (orderId: string, version: number) => Promise<Answer<Order>>;
  readonly readOrders: () => Promise<Answer<Orders>>;
  readonly readPromise: (orderId: string) => Promise<Answer<OrderPromise>>;
  readonly pickUp: (orderId: string, at: NewPickUp, version: number) => Promise<Answer<HandOverList>>;
}

const mailLanguage = () => languageTags[language.value];

export function createCustomersClient(ask: Ask): CustomersClient {
  const keyed = (key: string) => ({ 'Idempotency-Key': key });
  const day = (dayId: string): string => `/days/${encodeURIComponent(dayId)}`;
  const order = (orderId: string): string => `/orders/${encodeURIComponent(orderId)}`;
  const post = <T>(path: string, key: string, body?: unknown): Promise<Answer<T>> =>
    ask<T>(path, { method: 'POST', headers: keyed(key), ...(body !== undefined && { body }) });
  return {
    readComing: () => ask('/coming'),
    sendWayIn: (email, name) =>
      ask('/customers', { method: 'POST', body: { email, name, language: mailLanguage() } }),
    tellLanguage: () => ask('/my/language', { method: 'PUT', body: { language: mailLanguage() } }),
    enterByLink: (token) => ask('/link-sessions', { method: 'POST', body: { token } }),
    quote: (dayId, hold, signal) => ask(`${day(dayId)}/quotes`, { method: 'POST', body: hold, signal }),
    hold: (dayId, hold, key) => post(`${day(dayId)}/holds`, key, hold),
    holdLonger: (orderId, key) => post(`${order(orderId)}/hold-longer`, key),
    reserve: (orderId, key) => post(`${order(orderId)}/reserve`, key),
    release: (orderId, key) => post(`${order(orderId)}/release`, key),
    cancel: (orderId, version) =>
      ask(order(orderId), { method: 'DELETE', headers: { 'If-Match': `"${version}"` } }),
    readOrders: () => ask('/my/orders'),
    previewHalf: (dayId, body) => ask(`${day(dayId)}/half-previews`, { method: 'POST', body }),
    readPromise: (orderId) => ask(`${order(orderId)}/promise`),
    pickUp: (orderId, at, version) =>
      ask(`${order(orderId)}/pick-up?version=${version}`, { method: 'PUT', body: at }),
  };
}
