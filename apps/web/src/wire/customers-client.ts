import type { Order, Orders } from '@flitchbook/contracts';
import type { Answer, Ask } from './client.ts';

/** What customers ask of the service, one method a verb. `key` is kept before a request is sent, and sent again with it. */
export interface CustomersClient {
  readonly sendWayIn: (email: string, name: string) => Promise<Answer<unknown>>;
  readonly enterByLink: (token: string) => Promise<Answer<unknown>>;
  readonly readOrders: () => Promise<Answer<Orders>>;
  readonly release: (orderId: string, key: string) => Promise<Answer<Order>>;
}

export function createCustomersClient(ask: Ask): CustomersClient {
  const keyed = (key: string) => ({ 'Idempotency-Key': key });
  const order = (orderId: string): string => `/orders/${encodeURIComponent(orderId)}`;
  return {
    sendWayIn: (email, name) => ask('/customers', { method: 'POST', body: { email, name } }),
    enterByLink: (token) => ask('/link-sessions', { method: 'POST', body: { token } }),
    readOrders: () => ask('/my/orders'),
    release: (orderId, key) => ask(`${order(orderId)}/release`, { method: 'POST', headers: keyed(key) }),
  };
}
