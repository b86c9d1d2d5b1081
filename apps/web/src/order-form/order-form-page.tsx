import { hog, type Species } from '@flitchbook/carcass';
import type { TargetedEvent, TargetedSubmitEvent } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import { allSpecies } from '../board/board-model.ts';
import type { BoardStore } from '../board/board-store.ts';
import { Field, TextInput } from '../form/fields.tsx';
import { Link } from '../shell/link.tsx';
import { go } from '../shell/route.ts';
import { Failure, Waiting } from '../shell/states.tsx';
import type { Board } from '../wire/board.ts';
import type { Client } from '../wire/client.ts';
import { dateText } from '../words/dates.ts';
import { words } from '../words/english.ts';
import { groupCuts } from './cut-groups.ts';
import { LineFields } from './line-fields.tsx';
import { createOrderFormStore, type OrderFormStore } from './order-form-store.ts';
import { ShareFields } from './share-fields.tsx';

interface OrderFormPageProps {
  readonly store: BoardStore;
  readonly client: Client;
  readonly newKey: () => string;
}

interface FormProps {
  readonly board: Board;
  readonly boardStore: BoardStore;
  readonly store: OrderFormStore;
}

function FaultList({ store }: { readonly store: OrderFormStore }) {
  const faults = store.faults.value;
  const sending = store.sending.value;
  const problem = typeof sending === 'object' ? sending.problem : null;
  return (
    <div role="alert" class="fault-list">
      {faults.length > 0 && (
        <section>
          <h2>{words.form.faultsTitle}</h2>
          <ul>
            {faults.map(({ field, fault }) => (
              <li key={field}>
                <a
                  href={`#${field}`}
                  onClick={(event) => {
                    event.preventDefault();
                    document.getElementById(field)?.focus();
                  }}
                >
                  {words.form.faults[fault]}
                </a>
              </li>
            ))}
          </ul>
        </section>
      )}
      {problem && (
        <section>
          <h2>{problem.title}</h2>
          <p>{problem.detail}</p>
          <ul>
            {(problem.errors ?? []).map(({ at, says }) => (
              <li key={at}>{says}</li>
            ))}
          </ul>
        </section>
      )}
      {sending === 'no-network' && <p>{words.form.noNetwork}</p>}
    </div>
  );
}

function CutPicker({
  species,
  store,
  board,
}: Pick<FormProps, 'store' | 'board'> & { readonly species: Species }) {
  const groups = groupCuts(species, { animal: words.form.animal, loose: words.form.loose });
  const pick = (event: TargetedEvent<HTMLSelectElement>): void => {
    const { value } = event.currentTarget;
    if (value === '') return;
    store.addLine(species, value, board.shop);
    event.currentTarget.value = '';
  };
  return (
    <Field id="add-line" label={words.form.pick}>
      <select id="add-line" onChange={pick}>
        <option value="">{words.form.pickFirst}</option>
        {groups.map((group) => (
          <optgroup key={group.name} label={group.name}>
            {group.cuts.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </optgroup>
        ))}
      </select>
    </Field>
  );
}

function OrderForm({ board, boardStore, store }: FormProps) {
  const { animals } = board.cuttingDay;
  const species = allSpecies[animals[0]?.speciesId ?? ''] ?? hog;
  const draft = store.draft.value;
  const sending = store.sending.value;
  const isBusy = sending === 'going' || sending === 'done';
  const ownerFault = store.faults.value.some(({ field }) => field === 'owner')
    ? words.form.faults.owner
    : undefined;
  const groups = groupCuts(species, { animal: words.form.animal, loose: words.form.loose });
  const onSubmit = async (event: TargetedSubmitEvent<HTMLFormElement>): Promise<void> => {
    event.preventDefault();
    await store.send(species, board.shop);
    if (store.sending.value !== 'done') return;
    await boardStore.load();
    go(`/days/${board.day.dayId}`);
  };
  return (
    <form class="order-form" onSubmit={(event) => void onSubmit(event)} noValidate>
      <header>
        <Link class="back" to={`/days/${board.day.dayId}`}>
          {words.form.cancel}
        </Link>
        <h1>{words.form.title}</h1>
        <p class="form-day">{words.form.forDay(dateText(board.day.date))}</p>
      </header>
      <Field id="owner" label={words.form.owner} hint={words.form.ownerHint} fault={ownerFault}>
        <TextInput
          id="owner"
          value={draft.owner}
          fault={ownerFault}
          onChange={(owner) => store.change({ owner })}
        />
      </Field>
      <section aria-labelledby="lines-title" class="form-lines">
        <h2 id="lines-title">{words.form.lines}</h2>
        {draft.lines.map((line, index) => (
          <LineFields
            key={line.key}
            line={line}
            number={index + 1}
            species={species}
            groups={groups}
            animals={animals}
            units={board.shop}
            store={store}
          />
        ))}
        <CutPicker species={species} store={store} board={board} />
      </section>
      <ShareFields species={species} units={board.shop} store={store} />
      <Field id="note" label={words.form.note} hint={words.form.noteHint}>
        <TextInput id="note" value={draft.note} onChange={(note) => store.change({ note })} />
      </Field>
      <FaultList store={store} />
      <div class="send">
        <p>{words.form.summary(draft.lines.length, draft.share !== null)}</p>
        <button type="submit" class="strong" disabled={isBusy}>
          {sending === 'done' ? words.form.done : sending === 'going' ? words.form.sending : words.form.send}
        </button>
      </div>
    </form>
  );
}

/** Takes an order over the telephone. */
export function OrderFormPage({ store: boardStore, client, newKey }: OrderFormPageProps) {
  const reading = boardStore.reading.value;
  const { dayId } = boardStore;
  const store = useMemo(() => createOrderFormStore({ client, dayId, newKey }), [client, dayId, newKey]);
  useEffect(() => {
    document.title = words.formTitle;
    if (boardStore.board.peek() === null) void boardStore.load();
  }, [boardStore]);
  if (reading.at === 'ready')
    return <OrderForm board={reading.board} boardStore={boardStore} store={store} />;
  if (reading.at === 'refused')
    return <Failure title={reading.problem.title} says={reading.problem.detail} />;
  if (reading.at === 'loading') return <Waiting says={words.failures.loading} />;
  return (
    <Failure
      title={words.failures.noNetworkTitle}
      says={words.failures.noNetwork}
      action={words.tryAgain}
      onAction={() => void boardStore.load()}
    />
  );
}
