import { useComputed, useSignal } from '@preact/signals';
import type { TargetedSubmitEvent } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import type { BooksClient, DayPacks, PackOnWire } from '../wire/books-client.ts';
import type { Session } from '../wire/client.ts';
import { booksWords } from '../words/books-words.ts';
import { dateText } from '../words/dates.ts';
import { moneyText, weightText } from '../words/measures.ts';
import { LabelBatch } from './label-batch.tsx';
import { createPageStore, type PageStore } from './page-store.ts';
import { BooksHead, Field, Refusal, Shown } from './shown.tsx';

const says = booksWords.packs;
type ToMake = DayPacks['toMake'][number];

export interface BooksPageProps {
  readonly books: BooksClient;
  readonly session: Session;
  readonly newKey: () => string;
}

interface DayProps extends BooksPageProps {
  readonly dayId: string;
}

const whose = (owner: string | null, number: number | null): string =>
  owner === null ? booksWords.counterLine : `No. ${number}, ${owner}`;

interface ChoiceProps {
  readonly toMake: readonly ToMake[];
  readonly chosen: string | null;
  readonly onChoose: (key: string) => void;
  readonly session: Session;
}

/** What is still to be weighed, by animal. */
function Choices({ toMake, chosen, onChoose, session }: ChoiceProps) {
  const animals = [...new Set(toMake.map(({ animal }) => animal))];
  return (
    <>
      {animals.map((animal) => (
        <section key={animal} class="pack-group">
          <h3>{animal}</h3>
          <ul class="pack-choices">
            {toMake
              .filter((pack) => pack.animal === animal)
              .map((pack) => (
                <li key={pack.key}>
                  <button
                    type="button"
                    class="pack-choice"
                    aria-pressed={pack.key === chosen}
                    onClick={() => onChoose(pack.key)}
                  >
                    <strong>
                      {pack.pieceIds.length > 1 ? `${pack.pieceIds.length} × ` : ''}
                      {pack.name}
                      {pack.size === 'whole' || pack.size === 'by weight' ? '' : `, ${pack.size}`}
                    </strong>
                    <span>{`${whose(pack.owner, pack.orderNumber)} · ${says.about(weightText(pack.expectedMg, session.shop))}`}</span>
                  </button>
                </li>
              ))}
          </ul>
        </section>
      ))}
    </>
  );
}

interface ScaleProps {
  readonly day: DayPacks;
  readonly pack: ToMake;
  readonly store: PageStore<DayPacks>;
  readonly onWeigh: (gross: string, tareIndex: number, frozen: boolean) => Promise<boolean>;
  readonly session: Session;
}

/** The scale: what it shows, what the wrap weighs. */
function Scale({ day, pack, store, onWeigh, session }: ScaleProps) {
  const gross = useSignal('');
  const tare = useSignal(0);
  const frozen = useSignal(false);
  const submit = async (event: TargetedSubmitEvent<HTMLFormElement>): Promise<void> => {
    event.preventDefault();
    if (await onWeigh(gross.value.trim().replace(',', '.'), tare.value, frozen.value)) gross.value = '';
    document.getElementById('gross')?.focus();
  };
  return (
    <form class="scale" onSubmit={(event) => void submit(event)}>
      <h3>{`${pack.name}, ${whose(pack.owner, pack.orderNumber)}`}</h3>
      <div class="field-grid">
        <Field label={says.gross(session.shop.weightUnit)} id="gross">
          <input
            id="gross"
            inputMode="decimal"
            autocomplete="off"
            required
            value={gross}
            onInput={(event) => {
              gross.value = event.currentTarget.value;
            }}
          />
        </Field>
        <Field label={says.tare} id="tare">
          <select
            id="tare"
            value={tare.value}
            onChange={(event) => {
              tare.value = Number(event.currentTarget.value);
            }}
          >
            {day.tares.map(({ name, text, unit }, index) => (
              <option key={name} value={index}>
                {`${name}, ${text} ${unit}`}
              </option>
            ))}
          </select>
        </Field>
      </div>
      <label class="tick">
        <input
          type="checkbox"
          checked={frozen}
          onChange={(event) => {
            frozen.value = event.currentTarget.checked;
          }}
        />
        <span>{says.frozen}</span>
      </label>
      <p class="hint">{says.tareCaution}</p>
      {!day.isClosed && <p class="hint">{says.ends}</p>}
      <Refusal store={store} />
      <button type="submit" class="strong" disabled={store.isBusy.value}>
        {store.isBusy.value ? says.weighing : says.weigh}
      </button>
    </form>
  );
}

interface MadeProps {
  readonly packs: readonly PackOnWire[];
  readonly onUndo: (packId: string) => void;
  readonly onPick: (packId: string, isPicked: boolean) => void;
  readonly picked: ReadonlySet<string>;
  readonly session: Session;
}

/** What is weighed, newest first. */
function Made({ packs, onUndo, onPick, picked, session }: MadeProps) {
  const { currency } = session.shop;
  return (
    <ul class="pack-list">
      {packs.toReversed().map(({ packId, serial, name, net, amountMinor, isGone }) => (
        <li key={packId} class={isGone ? 'gone' : ''}>
          <label class="tick">
            <input
              type="checkbox"
              aria-label={says.pick(serial)}
              checked={picked.has(packId)}
              onChange={(event) => onPick(packId, event.currentTarget.checked)}
            />
            <span>
              <strong>{`${serial} · ${name}`}</strong>
              {` ${net.text} ${net.unit}${amountMinor === null ? '' : ` · ${moneyText(amountMinor, currency)}`}`}
            </span>
          </label>
          <span class="row-actions">
            <a
              class="button"
              href={`/api/packs/${packId}/label.png`}
              target="_blank"
              rel="noreferrer"
              aria-label={says.labelOf(serial)}
            >
              {says.label}
            </a>
            {!isGone && (
              <button type="button" aria-label={says.undoOf(serial)} onClick={() => onUndo(packId)}>
                {says.undo}
              </button>
            )}
          </span>
        </li>
      ))}
    </ul>
  );
}

/** What the page knows besides the packs: which is on the scale, which labels are picked. */
function useBench({ books, dayId, newKey, session }: DayProps) {
  const store = useMemo(() => createPageStore(() => books.readPacks(dayId)), [books, dayId]);
  const chosen = useSignal<string | null>(null);
  const picked = useSignal<ReadonlySet<string>>(new Set());
  const last = useSignal<PackOnWire | null>(null);
  const day = useComputed(() => (store.shown.value?.ok ? store.shown.value.value : null));
  const onScale = useComputed(
    () => day.value?.toMake.find(({ key }) => key === chosen.value) ?? day.value?.toMake[0] ?? null,
  );
  const weigh = async (text: string, tareIndex: number, frozen: boolean): Promise<boolean> => {
    const [pack, tare] = [onScale.value, day.value?.tares[tareIndex]];
    if (!pack || !tare) return false;
    const gross = { text, unit: session.shop.weightUnit };
    const body = { key: pack.key, gross, tare: { text: tare.text, unit: tare.unit }, frozen };
    const made = await store.send(() => books.weigh(dayId, body, newKey()));
    if (made) {
      last.value = made;
      picked.value = new Set([...picked.value, made.packId]);
    }
    return made !== null;
  };
  return { store, chosen, picked, last, onScale, weigh };
}

/** Weigh each pack once: that makes its label, its line on the bill and its place in the balance of the animal. */
export function PacksPage(props: DayProps) {
  const { books, dayId, session, newKey } = props;
  const { store, chosen, picked, last, onScale, weigh } = useBench(props);
  useEffect(() => {
    document.title = `${says.title} · Flitchbook`;
    void store.look();
  }, [store]);
  const pick = (packId: string, isPicked: boolean): void => {
    const rest = [...picked.value].filter((id) => id !== packId);
    picked.value = new Set(isPicked ? [...rest, packId] : rest);
  };
  return (
    <div class="books">
      <BooksHead dayId={dayId} at="packs" mayClose={session.person.role !== 'counter'} />
      <h1>{says.title}</h1>
      <Shown answer={store.shown.value} onAgain={() => void store.look()}>
        {(day) => (
          <>
            <p class="form-day">{`${dateText(day.date)} · ${says.left(day.toMake.length)}`}</p>
            <div class="books-columns">
              <section aria-labelledby="to-weigh">
                <h2 id="to-weigh">{says.toMake}</h2>
                {day.toMake.length === 0 && <p>{says.none}</p>}
                <Choices
                  toMake={day.toMake}
                  chosen={onScale.value?.key ?? null}
                  onChoose={(key) => {
                    chosen.value = key;
                  }}
                  session={session}
                />
              </section>
              <section aria-labelledby="weighed">
                {onScale.value && (
                  <Scale day={day} pack={onScale.value} store={store} onWeigh={weigh} session={session} />
                )}
                <p class="told" role="status">
                  {last.value &&
                    says.last(last.value.serial, `${last.value.net.text} ${last.value.net.unit}`)}
                </p>
                <h2 id="weighed">{says.made}</h2>
                {day.packs.length === 0 && <p>{says.noneMade}</p>}
                <LabelBatch books={books} newKey={newKey} picked={picked} />
                <Made
                  packs={day.packs}
                  picked={picked.value}
                  onPick={pick}
                  onUndo={(packId) => void store.send(() => books.undo(packId))}
                  session={session}
                />
              </section>
            </div>
          </>
        )}
      </Shown>
    </div>
  );
}
