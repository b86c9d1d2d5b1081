import type { Species } from '@flitchbook/carcass';
import { signal } from '@preact/signals';
import type { Client, Problem } from '../wire/client.ts';
import type { Units } from '../words/measures.ts';
import { type DraftFault, type LineDraft, lineFor, type OrderDraft, readDraft } from './order-draft.ts';

interface FormDoor {
  readonly client: Client;
  readonly dayId: string;
  readonly newKey: () => string;
}

/** What came of sending an order: on the book, still to be put right, or not sent. */
export type Sending = 'idle' | 'going' | 'done' | 'no-network' | { readonly problem: Problem };

/** The order being written. One key for all tries of it, so that a lost answer never books it twice. */
export function createOrderFormStore({ client, dayId, newKey }: FormDoor) {
  const draft = signal<OrderDraft>({ owner: '', note: '', lines: [], share: null });
  const faults = signal<readonly DraftFault[]>([]);
  const sending = signal<Sending>('idle');
  let key = newKey();
  let sent = '';
  let lastLine = 0;

  /** What is being put right is no longer held against the order; the next try looks at all of it again. */
  const forget = (isPutRight: (fault: DraftFault) => boolean): void => {
    faults.value = faults.value.filter((fault) => !isPutRight(fault));
  };

  const change = (part: Partial<OrderDraft>): void => {
    draft.value = { ...draft.value, ...part };
    if (part.owner !== undefined) forget(({ field }) => field === 'owner');
    if (part.lines !== undefined || part.share !== undefined) forget(({ fault }) => fault === 'empty');
  };

  function addLine(species: Species, cutId: string, units: Units): void {
    const cut = species.cuts[cutId];
    if (!cut) return;
    lastLine++;
    change({ lines: [...draft.value.lines, lineFor(cut, units, { key: `line-${lastLine}` })] });
  }

  const changeLine = (lineKey: string, part: Partial<LineDraft>): void => {
    forget(({ field }) => field.startsWith(`${lineKey}-`));
    change({ lines: draft.value.lines.map((line) => (line.key === lineKey ? { ...line, ...part } : line)) });
  };

  const removeLine = (lineKey: string): void => {
    forget(({ field }) => field.startsWith(`${lineKey}-`));
    change({ lines: draft.value.lines.filter((line) => line.key !== lineKey) });
  };

  /** Sends the order when nothing is left to put right. */
  async function send(species: Species, units: Units): Promise<void> {
    const read = readDraft(draft.value, species, units);
    faults.value = read.ok ? [] : read.faults;
    if (!read.ok) return;
    const body = JSON.stringify(read.order);
    // The same key may only carry the same order: a changed one is a new request.
    if (sent !== '' && sent !== body) key = newKey();
    sent = body;
    sending.value = 'going';
    const answer = await client.addOrder(dayId, read.order, key);
    if (answer.ok) sending.value = 'done';
    else sending.value = answer.why === 'refused' ? { problem: answer.problem } : 'no-network';
  }

  return { draft, faults, sending, change, addLine, changeLine, removeLine, send };
}

export type OrderFormStore = ReturnType<typeof createOrderFormStore>;
