import { effect, signal } from '@preact/signals';
import type { Problem } from '../wire/client.ts';
import type {
  ComingDay,
  CustomersClient,
  NewHold,
  OfferedCut,
  QuoteOnWire,
} from '../wire/customers-client.ts';
import type { Units } from '../words/measures.ts';
import { type CutDraft, type DraftFault, draftFor, readCutDraft } from './cut-draft.ts';

export type Asked =
  | { readonly at: 'idle' | 'asking' | 'no-network' }
  | { readonly at: 'fault'; readonly fault: DraftFault }
  | { readonly at: 'quoted'; readonly hold: NewHold; readonly quote: QuoteOnWire }
  | { readonly at: 'refused'; readonly hold: NewHold; readonly problem: Problem };

const stillForMs = 350;

interface Given {
  readonly client: Pick<CustomersClient, 'quote'>;
  readonly day: ComingDay;
  readonly offer: OfferedCut;
  readonly units: Units;
  readonly owner: string;
}

/** The cut being ordered and what the service says to it. Every change asks anew, once the hand rests. */
export function createCutStore({ client, day, offer, units, owner }: Given) {
  const draft = signal<CutDraft>(draftFor(offer, units));
  const asked = signal<Asked>({ at: 'idle' });
  let waiting: ReturnType<typeof setTimeout> | undefined;
  let running: AbortController | undefined;

  async function askFor(hold: NewHold): Promise<void> {
    running = new AbortController();
    const { signal: given } = running;
    const answer = await client.quote(day.dayId, hold, given);
    if (given.aborted) return;
    if (answer.ok) asked.value = { at: 'quoted', hold, quote: answer.value };
    else if (answer.why === 'refused') asked.value = { at: 'refused', hold, problem: answer.problem };
    else asked.value = { at: 'no-network' };
  }

  function ask(afterMs = stillForMs): void {
    clearTimeout(waiting);
    running?.abort();
    const read = readCutDraft(draft.peek(), offer, { day, owner, units });
    if (!read.ok) {
      asked.value = { at: 'fault', fault: read.fault };
      return;
    }
    asked.value = { at: 'asking' };
    waiting = setTimeout(() => void askFor(read.value), afterMs);
  }

  const change = (part: Partial<CutDraft>): void => {
    draft.value = { ...draft.value, ...part };
  };

  /** @returns what ends it */
  function follow(): () => void {
    const stop = effect(() => {
      void draft.value;
      ask();
    });
    return () => {
      stop();
      clearTimeout(waiting);
      running?.abort();
    };
  }

  return { draft, asked, change, ask, follow };
}

export type CutStore = ReturnType<typeof createCutStore>;
