import { useSignal } from '@preact/signals';
import type { TargetedSubmitEvent } from 'preact';
import type { Closing } from '../wire/books-client.ts';
import { booksWords } from '../words/books-words.ts';
import { readAmount } from './amounts.ts';
import type { BooksPageProps } from './packs-page.tsx';
import type { PageStore } from './page-store.ts';
import { Field, Refusal } from './shown.tsx';

const says = booksWords.closing;
type Out = Closing['outs'][number];
type Kind = Out['kind'];
const kinds = Object.keys(says.kinds) as Kind[];

interface OutDraft {
  readonly kind: Kind;
  readonly name: string;
  readonly grams: string;
}

interface OutFieldsProps {
  readonly out: OutDraft;
  readonly place: number;
  readonly onChange: (part: Partial<OutDraft>) => void;
}

const OutFields = ({ out, place, onChange }: OutFieldsProps) => (
  <div class="field-grid out">
    <Field label={says.kind} id={`kind-${place}`}>
      <select
        id={`kind-${place}`}
        value={out.kind}
        onChange={(event) => onChange({ kind: event.currentTarget.value as Kind })}
      >
        {kinds.map((kind) => (
          <option key={kind} value={kind}>
            {says.kinds[kind]}
          </option>
        ))}
      </select>
    </Field>
    <Field label={says.name} id={`name-${place}`}>
      <input
        id={`name-${place}`}
        required
        value={out.name}
        onInput={(event) => onChange({ name: event.currentTarget.value })}
      />
    </Field>
    <Field label={says.grams} id={`grams-${place}`}>
      <input
        id={`grams-${place}`}
        inputMode="numeric"
        pattern="[0-9]+"
        required
        value={out.grams}
        onInput={(event) => onChange({ grams: event.currentTarget.value })}
      />
    </Field>
  </div>
);

interface CloseFormProps extends BooksPageProps {
  readonly closing: Closing;
  readonly store: PageStore<Closing>;
}

/** Where the rest went, what the animal cost, and the last word on it. */
export function CloseForm({ closing, store, books, session, newKey }: CloseFormProps) {
  const outs = useSignal<readonly OutDraft[]>([]);
  const minutes = useSignal('0');
  const cost = useSignal('0');
  const note = useSignal('');
  const id = closing.animalId;
  const change = (place: number, part: Partial<OutDraft>): void => {
    outs.value = outs.value.map((out, at) => (at === place ? { ...out, ...part } : out));
  };
  const open = closing.restGrams - outs.value.reduce((sum, { grams }) => sum + (Number(grams) || 0), 0);
  const addOut = (): void => {
    outs.value = [...outs.value, { kind: 'batch', name: says.kinds.batch, grams: '' }];
  };
  const takeRest = (): void => {
    outs.value = [...outs.value, { kind: 'drying', name: says.kinds.drying, grams: String(open) }];
  };
  const submit = (event: TargetedSubmitEvent<HTMLFormElement>): void => {
    event.preventDefault();
    const body = {
      outs: outs.value.map(({ kind, name, grams }) => ({ kind, name, grams: Number(grams) })),
      minutes: Number(minutes.value) || 0,
      animalMinor: readAmount(cost.value, session.shop.currency) ?? 0,
      note: note.value,
    };
    void store.send(() => books.close(id, body, newKey()));
  };
  return (
    <form class="close-form" onSubmit={submit}>
      <h3>{says.outs}</h3>
      {outs.value.map((out, place) => (
        <OutFields key={place} out={out} place={place} onChange={(part) => change(place, part)} />
      ))}
      <span class="row-actions">
        <button type="button" onClick={addOut}>
          {says.addOut}
        </button>
        {open > 0 && (
          <button type="button" onClick={takeRest}>
            {says.takeRest}
          </button>
        )}
      </span>
      <div class="field-grid">
        <Field label={says.minutes} id={`minutes-${id}`}>
          <input
            id={`minutes-${id}`}
            inputMode="numeric"
            value={minutes}
            onInput={(event) => {
              minutes.value = event.currentTarget.value;
            }}
          />
        </Field>
        <Field label={says.cost} id={`cost-${id}`}>
          <input
            id={`cost-${id}`}
            inputMode="decimal"
            value={cost}
            onInput={(event) => {
              cost.value = event.currentTarget.value;
            }}
          />
        </Field>
        <Field label={says.note} id={`note-${id}`}>
          <input
            id={`note-${id}`}
            value={note}
            onInput={(event) => {
              note.value = event.currentTarget.value;
            }}
          />
        </Field>
      </div>
      <Refusal store={store} />
      <button type="submit" class="strong" disabled={store.isBusy.value}>
        {says.close(closing.name)}
      </button>
    </form>
  );
}
