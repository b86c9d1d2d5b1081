import type { HalfAsked, HalfPreviewOnWire, NewHold, Order, Orders } from '@flitchbook/contracts';
import { language, languageTags } from '../words/customers/language.ts';
import type { Answer, Ask } from './client.ts';

/** What customers ask of the service, one method a verb. `key` is kept before a request is sent, and sent again with it. */
export interface CustomersClient {
  readonly sendWayIn: (email: string, name: string) => Promise<Answer<unknown>>;
  /** from now on mails come in the language of the page */
  readonly tellLanguage: () => Promise<Answer<unknown>>;
  readonly enterByLink: (token: string) => Promise<Answer<unknown>>;
  readonly readOrders: () => Promise<Answer<Orders>>;
  readonly previewHalf: (dayId: string, asked: HalfAsked) => Promise<Answer<HalfPreviewOnWire>>;
  readonly hold: (dayId: string, order: NewHold, key: string) => Promise<Answer<Order>>;
  readonly reserve: (orderId: string, key: string) => Promise<Answer<Order>>;
  readonly release: (orderId: string, key: string) => Promise<Answer<Order>>;
}

const mailLanguage = () => languageTags[language.value];

export function createCustomersClient(ask: Ask): CustomersClient {
  const keyed = (key: string) => ({ 'Idempotency-Key': key });
  const day = (dayId: string): string => `/days/${encodeURIComponent(dayId)}`;
  const order = (orderId: string): string => `/orders/${encodeURIComponent(orderId)}`;
  return {
    sendWayIn: (email, name) =>
      ask('/customers', { method: 'POST', body: { email, name, language: mailLanguage() } }),
    tellLanguage: () => ask('/my/language', { method: 'PUT', body: { language: mailLanguage() } }),
    enterByLink: (token) => ask('/link-sessions', { method: 'POST', body: { token } }),
    readOrders: () => ask('/my/orders'),
    previewHalf: (dayId, body) => ask(`${day(dayId)}/half-previews`, { method: 'POST', body }),
    hold: (dayId, body, key) => ask(`${day(dayId)}/holds`, { method: 'POST', body, headers: keyed(key) }),
    reserve: (orderId, key) => ask(`${order(orderId)}/reserve`, { method: 'POST', headers: keyed(key) }),
    release: (orderId, key) => ask(`${order(orderId)}/release`, { method: 'POST', headers: keyed(key) }),
  };
}
