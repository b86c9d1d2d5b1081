import { signal } from '@preact/signals';
import type { Problem } from '../wire/client.ts';
import type { CustomersClient, NewHold, Order } from '../wire/customers-client.ts';

/** A reservation that was tapped: kept with its key before it is sent, until an answer has come. */
interface Tapped {
  readonly key: string;
  readonly personId: string;
  readonly dayId: string;
  readonly hold: NewHold;
}

export type Outgoing =
  | { readonly at: 'idle' | 'going' | 'unsent' }
  | { readonly at: 'held'; readonly order: Order }
  | { readonly at: 'refused'; readonly problem: Problem };

interface Keeping {
  readonly read: () => string | null;
  readonly write: (text: string | null) => void;
}

/** What was kept, where it is whole: another version of this page, or a hand, may have written it. */
function tappedIn(text: string | null): Tapped | null {
  try {
    const read = JSON.parse(text ?? 'null') as Partial<Tapped> | null;
    const isWhole =
      typeof read?.key === 'string' &&
      typeof read.personId === 'string' &&
      typeof read.dayId === 'string' &&
      Array.isArray(read.hold?.lines);
    return isWhole ? (read as Tapped) : null;
  } catch {
    return null;
  }
}

/** The service may have done it already: only the same request with the same key is safe. */
const mayBeDone = ({ status, type }: Problem): boolean =>
  type.endsWith('/server.busy') || type.endsWith('/idempotency.still-running') || status === 502;

/**
 * Sends a tapped reservation once, ever. A second tap while it is under way is the same one; after a lost answer, a closed
 * window or a dropped network the same key goes out again with the same order, and the service answers as it did before.
 */
export function createOutbox(client: Pick<CustomersClient, 'hold'>, keeping: Keeping, newKey: () => string) {
  const state = signal<Outgoing>({ at: 'idle' });

  async function dispatch({ dayId, hold, key }: Tapped): Promise<void> {
    state.value = { at: 'going' };
    const answer = await client.hold(dayId, hold, key);
    if (!answer.ok && (answer.why !== 'refused' || mayBeDone(answer.problem))) {
      state.value = { at: 'unsent' };
      return;
    }
    keeping.write(null);
    state.value = answer.ok
      ? { at: 'held', order: answer.value }
      : { at: 'refused', problem: answer.why === 'refused' ? answer.problem : ({} as Problem) };
  }

  async function send(personId: string, dayId: string, hold: NewHold): Promise<void> {
    if (state.value.at === 'going') return;
    const before = tappedIn(keeping.read());
    const isSame =
      before?.personId === personId &&
      before.dayId === dayId &&
      JSON.stringify(before.hold) === JSON.stringify(hold);
    const tapped = isSame ? before : { key: newKey(), personId, dayId, hold };
    keeping.write(JSON.stringify(tapped));
    await dispatch(tapped);
  }

  /** Sends what is still kept for this person. What somebody else has left on this device is let go. */
  async function sendKept(personId: string): Promise<void> {
    const tapped = tappedIn(keeping.read());
    if (tapped === null || state.value.at === 'going') return;
    if (tapped.personId === personId) await dispatch(tapped);
    else keeping.write(null);
  }

  function forget(): void {
    if (state.value.at === 'going') return;
    keeping.write(null);
    state.value = { at: 'idle' };
  }

  return { state, send, sendKept, forget };
}

export type Outbox = ReturnType<typeof createOutbox>;
