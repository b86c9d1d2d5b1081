import { randomUUID } from 'node:crypto';
import { once } from 'node:events';
import { type IncomingMessage, request } from 'node:http';

export interface TakenOrder {
  readonly orderId: string;
  readonly owner: string;
  readonly state: string;
  readonly lines: readonly unknown[];
}

const json = { 'Content-Type': 'application/json' };

interface Try {
  readonly owner: string;
  readonly key: string;
  readonly orderId: string;
}

const orderText = ({ orderId, owner }: Try): string => {
  const line = { cut: 'liver', portion: { by: 'whole' }, ask: { pieces: 1 }, rank: 'wished' };
  return JSON.stringify({ orderId, owner, lines: [line], shares: [] });
};

/** Somebody at the counter of the demo shop who takes orders over HTTP, one after the other. */
export class CounterHand {
  readonly acknowledged: Try[] = [];
  /** sent, and no answer came: they may be there or not */
  readonly unknown: Try[] = [];
  /** longest that a request waited for its answer, or for the end of all hope */
  slowestMs = 0;
  address: string;
  #cookie = '';
  #working = false;

  constructor(address: string) {
    this.address = address;
  }

  async signIn(): Promise<void> {
    const { signIns } = (await (await fetch(`${this.address}/api/demo-sign-ins`)).json()) as {
      signIns: { role: string; email: string; password: string }[];
    };
    const { email, password } = signIns.find(({ role }) => role === 'owner') ?? { email: '', password: '' };
    const answer = await this.#send('POST', '/api/session', JSON.stringify({ email, password }));
    [this.#cookie = ''] = (answer.headers.get('set-cookie') ?? '').split(';');
  }

  #send(
    method: string,
    path: string,
    body?: string,
    headers: Record<string, string> = {},
  ): Promise<Response> {
    return fetch(`${this.address}${path}`, {
      method,
      headers: { ...(body === undefined ? {} : json), Cookie: this.#cookie, ...headers },
      ...(body === undefined ? {} : { body }),
    });
  }

  /** A day of its own with a hog on it. */
  async openDay(date: string): Promise<string> {
    const post = async (path: string, body: unknown): Promise<{ dayId?: string }> => {
      const key = { 'Idempotency-Key': randomUUID() };
      const answer = await this.#send('POST', path, JSON.stringify(body), key);
      if (answer.status !== 201) throw new Error(`${path} answered ${answer.status}: ${await answer.text()}`);
      return (await answer.json()) as { dayId?: string };
    };
    const { dayId = '' } = await post('/api/days', { date });
    const hanging = { text: '184', unit: 'lb' };
    const facts = ['skin-on', 'head', 'feet', 'organs'];
    const hog = { name: 'Hog 17', speciesId: 'hog', hanging, hotOrCold: 'cold', facts, lostItems: [] };
    await post(`/api/days/${dayId}/animals`, hog);
    return dayId;
  }

  async dayId(): Promise<string> {
    const { days } = (await (await this.#send('GET', '/api/days')).json()) as { days: { dayId: string }[] };
    return days[0]?.dayId ?? '';
  }

  async orders(dayId: string): Promise<readonly TakenOrder[]> {
    const answer = await this.#send('GET', `/api/days/${dayId}/orders`);
    return ((await answer.json()) as { orders: TakenOrder[] }).orders;
  }

  /** Begins to send an order and stops in the middle of it; what is returned sends the rest and waits for the answer. */
  async beginOrder(dayId: string): Promise<() => Promise<number | undefined>> {
    const body = orderText({ owner: 'Slow of hand', key: '', orderId: randomUUID() });
    const headers = {
      ...json,
      Cookie: this.#cookie,
      'Idempotency-Key': randomUUID(),
      'Content-Length': Buffer.byteLength(body),
    };
    const sending = request(`${this.address}/api/days/${dayId}/orders`, { method: 'POST', headers });
    const answered = once(sending, 'response') as Promise<[IncomingMessage]>;
    await new Promise<void>((resolve) => sending.write(body.slice(0, 20), () => resolve()));
    return async () => {
      sending.end(body.slice(20));
      const [answer] = await answered;
      answer.resume();
      return answer.statusCode;
    };
  }

  async send(dayId: string, order: Try): Promise<Response> {
    return this.#send('POST', `/api/days/${dayId}/orders`, orderText(order), {
      'Idempotency-Key': order.key,
    });
  }

  /** Takes orders until told to stop or until nobody answers any more. */
  async takeOrders(dayId: string, hand: number): Promise<void> {
    this.#working = true;
    for (let turn = 0; this.#working; turn++) {
      const order = { owner: `Hand ${hand}, order ${turn}`, key: randomUUID(), orderId: randomUUID() };
      const sentAt = performance.now();
      try {
        const answer = await this.send(dayId, order);
        // The status alone is an acknowledgement: the body may still be on its way.
        if (answer.status !== 201) throw new Error(`answered ${answer.status}`);
        this.acknowledged.push(order);
        await answer.arrayBuffer();
      } catch {
        if (!this.acknowledged.includes(order)) this.unknown.push(order);
        return;
      } finally {
        this.slowestMs = Math.max(this.slowestMs, performance.now() - sentAt);
      }
    }
  }

  stop(): void {
    this.#working = false;
  }
}
