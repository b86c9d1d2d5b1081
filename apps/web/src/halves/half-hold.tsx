import { effect } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Outbox } from '../customers/outbox.ts';
import { refusalSaid, Unsent } from '../customers/outgoing.tsx';
import type { Session } from '../wire/client.ts';
import { halfWords } from '../words/customers/half-words.ts';
import { said } from '../words/customers/language.ts';
import { askedOf } from './half-draft.ts';
import type { HalfStore } from './half-store.ts';

interface HoldProps {
  readonly store: HalfStore;
  readonly outbox: Outbox;
  readonly dayId: string;
  readonly who: Session;
}

/** Holds what was chosen. What is held is shown on its own page; here it is let go. */
export function HalfHold({ store, outbox, dayId, who: { person } }: HoldProps) {
  const words = said(halfWords).hold;
  const draft = store.draft.value;
  const out = outbox.state.value;
  useEffect(() => {
    if (outbox.state.peek().at === 'refused') outbox.forget();
    return effect(() => {
      const now = outbox.state.value;
      if (now.at === 'held' && now.order.dayId === dayId && now.order.shares.length > 0) store.forget();
    });
  }, [outbox, store, dayId]);
  if (!draft) return null;
  const hold = { owner: person.name, note: draft.note, lines: [], shares: [askedOf(draft)] };
  return (
    <section class="hold-bar" aria-live="polite">
      {out.at === 'unsent' ? (
        <Unsent outbox={outbox} personId={person.personId} />
      ) : (
        <button
          type="button"
          class="main"
          disabled={out.at === 'going'}
          onClick={() => void outbox.send(person.personId, dayId, hold)}
        >
          {out.at === 'going' ? words.going : words.go}
        </button>
      )}
      {out.at === 'refused' && <p class="caution">{refusalSaid(out.problem)}</p>}
    </section>
  );
}
