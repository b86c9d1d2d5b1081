import { signal } from '@preact/signals';
import type { Answer } from '../wire/client.ts';
import type { CustomersClient, OrderPromise } from '../wire/customers-client.ts';

/** What has just happened to the order, where it has to be said. */
export type Told =
  | 'stale'
  | 'over'
  | 'too-late'
  | 'no-network'
  | 'longest'
  | 'window-taken'
  | 'window-kept'
  | null;

interface Given {
  readonly client: CustomersClient;
  readonly orderId: string;
  readonly newKey: () => string;
  readonly keeping: {
    readonly read: (name: string) => string | null;
    readonly write: (name: string, text: string | null) => void;
  };
}

const toldOf = (type: string): Told => {
  if (type.endsWith('/edit.version-stale') || type.endsWith('already-cancelled')) return 'stale';
  if (type.endsWith('/reservation.lapsed')) return 'over';
  if (type.endsWith('/reservation.not-held')) return 'stale';
  if (type.endsWith('/pick-up.invalid')) return 'window-taken';
  return 'too-late';
};

/** One order of the customer's, and what he does with it. Every step is sent once, under a key that is kept first. */
export function createOwnOrderStore({ client, orderId, newKey, keeping }: Given) {
  const promise = signal<OrderPromise | null>(null);
  const missing = signal<'unknown' | 'no-network' | null>(null);
  const isGoing = signal(false);
  const told = signal<Told>(null);

  async function look(): Promise<void> {
    const answer = await client.readPromise(orderId);
    if (answer.ok) {
      promise.value = answer.value;
      missing.value = null;
    } else missing.value = answer.why === 'refused' ? 'unknown' : 'no-network';
  }

  /** The same key for the same step until it has been answered. */
  function keyOf(step: string): { readonly name: string; readonly key: string } {
    const name = `flitchbook.${step}.${orderId}`;
    const key = keeping.read(name) ?? newKey();
    keeping.write(name, key);
    return { name, key };
  }

  async function settle(answer: Answer<unknown>, well: Told = null): Promise<void> {
    if (answer.ok) told.value = well;
    else told.value = answer.why === 'refused' ? toldOf(answer.problem.type) : 'no-network';
    await look();
  }

  async function once(step: string, send: (key: string) => Promise<Answer<unknown>>): Promise<void> {
    if (isGoing.value) return;
    isGoing.value = true;
    const { name, key } = keyOf(step);
    const answer = await send(key);
    if (answer.ok || answer.why === 'refused') keeping.write(name, null);
    await settle(answer);
    isGoing.value = false;
  }

  const reserve = (): Promise<void> => once('reserve', (key) => client.reserve(orderId, key));
  const giveBack = (): Promise<void> => once('give-back', (key) => client.release(orderId, key));

  async function longer(): Promise<void> {
    const before = promise.value?.order.heldUntil;
    await once('longer', (key) => client.holdLonger(orderId, key));
    if (told.value === null && before === promise.value?.order.heldUntil) told.value = 'longest';
  }

  /** @param version as it was read when the page was drawn: whoever changed it since is not overruled */
  async function cancel(version: number): Promise<void> {
    if (isGoing.value) return;
    isGoing.value = true;
    await settle(await client.cancel(orderId, version));
    isGoing.value = false;
  }

  async function fetchAt(window: OrderPromise['windows'][number]): Promise<void> {
    if (isGoing.value) return;
    isGoing.value = true;
    const { date, from, to } = window;
    const version = promise.value?.pickUp?.version ?? 0;
    await settle(await client.pickUp(orderId, { date, from, to }, version), 'window-kept');
    isGoing.value = false;
  }

  return { promise, missing, isGoing, told, look, reserve, giveBack, longer, cancel, fetchAt };
}

export type OwnOrderStore = ReturnType<typeof createOwnOrderStore>;
