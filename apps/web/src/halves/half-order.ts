import type { Order } from '@flitchbook/contracts';
import { signal } from '@preact/signals';
import type { Answer, Problem } from '../wire/client.ts';
import type { CustomersClient } from '../wire/customers-client.ts';
import { askedOf } from './half-draft.ts';
import type { HalfStore } from './half-store.ts';

type Sending = 'idle' | 'going' | 'no-network' | { readonly problem: Problem };

interface OrderDoor {
  readonly client: CustomersClient;
  readonly dayId: string;
  readonly newKey: () => string;
}

/** From what was chosen to an order: held, then reserved. */
export function createHalfOrder({ client, dayId, newKey }: OrderDoor, choices: HalfStore) {
  const sending = signal<Sending>('idle');
  const order = signal<Order | null>(null);

  async function send(ask: () => Promise<Answer<Order>>): Promise<void> {
    sending.value = 'going';
    const answered = await ask();
    if (answered.ok) {
      order.value = answered.value;
      sending.value = 'idle';
    } else sending.value = answered.why === 'refused' ? { problem: answered.problem } : 'no-network';
  }

  /** Holds what is chosen. The key is kept before it is sent: a lost answer never takes a second half. */
  async function hold(owner: string): Promise<void> {
    const draft = choices.draft.value;
    if (!draft || sending.value === 'going') return;
    sending.value = 'going';
    const body = { owner, note: draft.note, lines: [], shares: [askedOf(draft)] };
    const text = JSON.stringify(body);
    // The same key may only carry the same order: a changed one is a new request.
    const key = draft.sent === '' || draft.sent === text ? draft.key : newKey();
    choices.put({ ...draft, key, sent: text });
    await client.tellLanguage();
    await send(() => client.hold(dayId, body, key));
  }

  async function reserve(): Promise<void> {
    const held = order.value;
    const key = choices.draft.value?.key;
    if (!held || key === undefined) return;
    await send(() => client.reserve(held.orderId, `${key}-reserve`));
    if (order.value?.state === 'standing') choices.forget();
  }

  return { sending, order, hold, reserve };
}

export type HalfOrder = ReturnType<typeof createHalfOrder>;
