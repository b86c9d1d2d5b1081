import { useSignal } from '@preact/signals';
import type { TargetedSubmitEvent } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import type { BooksClient, HandOverList } from '../wire/books-client.ts';
import { booksWords } from '../words/books-words.ts';
import { gramsText } from '../words/measures.ts';
import type { BooksPageProps } from './packs-page.tsx';
import { createPageStore, type PageStore } from './page-store.ts';
import { BooksHead, Field, Refusal, Shown } from './shown.tsx';
import { TillPart } from './till-part.tsx';

const says = booksWords.handOver;
type Proof = 'signature' | 'code' | 'known';
const proofs: readonly Proof[] = ['signature', 'code', 'known'];

/** What was asked, line by line, and how far it is. */
function Lines({
  list,
  session,
}: {
  readonly list: HandOverList;
  readonly session: BooksPageProps['session'];
}) {
  const amount = (value: number, byWeight: boolean): string =>
    byWeight ? gramsText(value, session.shop) : String(value);
  return (
    <ul class="asked">
      {list.lines.map(({ lineId, name, asked, packed, byWeight, state }) => (
        <li key={lineId} class={`is-${state}`}>
          <span>{`${amount(packed, byWeight)} / ${amount(asked, byWeight)} · ${name}`}</span>{' '}
          <em>{says.states[state]}</em>
        </li>
      ))}
    </ul>
  );
}

interface GiveProps {
  readonly list: HandOverList;
  readonly store: PageStore<HandOverList>;
  readonly books: BooksClient;
  readonly newKey: () => string;
}

/** Packs of the order, ticked by hand or by scanning, and who takes them. */
function Give({ list, store, books, newKey }: GiveProps) {
  const here = list.packs.filter(({ isGone }) => !isGone);
  const ticked = useSignal<ReadonlySet<string>>(new Set());
  const scan = useSignal('');
  const notHere = useSignal<string | null>(null);
  const takenBy = useSignal(list.owner);
  const proof = useSignal<Proof>('known');
  const tick = (packId: string, isOn: boolean): void => {
    const rest = [...ticked.value].filter((id) => id !== packId);
    ticked.value = new Set(isOn ? [...rest, packId] : rest);
  };
  const onScan = (event: TargetedSubmitEvent<HTMLFormElement>): void => {
    event.preventDefault();
    const text = scan.value.trim();
    // The serial is what stands after (21); a label's symbol ends with it.
    const serial = Number(/21(\d{1,9})$/.exec(text.replace(/[()]/g, ''))?.[1] ?? text);
    const pack =
      here.find((each) => each.serial === Number(text)) ?? here.find((each) => each.serial === serial);
    notHere.value = pack ? null : text;
    if (pack) tick(pack.packId, true);
    scan.value = '';
  };
  const give = async (): Promise<void> => {
    const what = { packIds: [...ticked.value], takenBy: takenBy.value, proof: proof.value };
    if (await store.send(() => books.handOver(list.orderId, what, newKey()))) ticked.value = new Set();
  };
  return (
    <>
      <form class="scan" onSubmit={onScan}>
        <Field label={says.scan} id="scan">
          <input
            id="scan"
            autocomplete="off"
            value={scan}
            onInput={(event) => {
              scan.value = event.currentTarget.value;
            }}
          />
        </Field>
        <div role="alert">{notHere.value !== null && <p class="fault">{says.notHere(notHere.value)}</p>}</div>
      </form>
      {list.packs.length === 0 && <p>{says.noPacks}</p>}
      <ul class="pack-list">
        {list.packs.map(({ packId, serial, name, pieces, net, isGone }) => (
          <li key={packId} class={isGone ? 'gone' : ''}>
            <label class="tick">
              <input
                type="checkbox"
                disabled={isGone}
                checked={isGone || ticked.value.has(packId)}
                onChange={(event) => tick(packId, event.currentTarget.checked)}
              />
              <span>
                <strong>{`${serial} · ${name}`}</strong>
                {` ${pieces > 0 ? `${says.pieces(pieces)}, ` : ''}${net.text} ${net.unit}${isGone ? ` · ${says.gone}` : ''}`}
              </span>
            </label>
          </li>
        ))}
      </ul>
      {here.length > 0 && (
        <div class="field-grid">
          <Field label={says.takenBy} id="taken-by">
            <input
              id="taken-by"
              value={takenBy}
              onInput={(event) => {
                takenBy.value = event.currentTarget.value;
              }}
            />
          </Field>
          <Field label={says.proof} id="proof">
            <select
              id="proof"
              value={proof.value}
              onChange={(event) => {
                proof.value = event.currentTarget.value as Proof;
              }}
            >
              {proofs.map((each) => (
                <option key={each} value={each}>
                  {says.proofs[each]}
                </option>
              ))}
            </select>
          </Field>
        </div>
      )}
      <Refusal store={store} />
      {here.length > 0 && (
        <button
          type="button"
          class="strong"
          disabled={ticked.value.size === 0 || store.isBusy.value}
          onClick={() => void give()}
        >
          {says.give(ticked.value.size)}
        </button>
      )}
    </>
  );
}

/** One order at the counter: checklist and bill. */
function OrderPart({ orderId, ...props }: BooksPageProps & { readonly orderId: string }) {
  const { books, session, newKey } = props;
  const store = useMemo(() => createPageStore(() => books.readHandOver(orderId)), [books, orderId]);
  useEffect(() => void store.look(), [store]);
  return (
    <Shown answer={store.shown.value} onAgain={() => void store.look()}>
      {(list) => (
        <div class="books-columns">
          <section aria-labelledby="asked">
            <h2 id="asked">{says.lines}</h2>
            <Lines list={list} session={session} />
            <h2>{says.packs}</h2>
            <Give key={orderId} list={list} store={store} books={books} newKey={newKey} />
          </section>
          {session.person.role !== 'butcher' && <TillPart orderId={orderId} {...props} />}
        </div>
      )}
    </Shown>
  );
}

/** The counter hand gives each order its packs and settles its bill. */
export function HandOverPage({ dayId, ...props }: BooksPageProps & { readonly dayId: string }) {
  const { books, session } = props;
  const store = useMemo(() => createPageStore(() => books.readOrders(dayId)), [books, dayId]);
  const chosen = useSignal('');
  useEffect(() => {
    document.title = `${says.title} · Flitchbook`;
    void store.look();
  }, [store]);
  return (
    <div class="books">
      <BooksHead dayId={dayId} at="handOver" mayClose={session.person.role !== 'counter'} />
      <h1>{says.title}</h1>
      <Shown answer={store.shown.value} onAgain={() => void store.look()}>
        {({ orders }) => (
          <>
            <Field label={says.pick} id="order">
              <select
                id="order"
                value={chosen.value}
                onChange={(event) => {
                  chosen.value = event.currentTarget.value;
                }}
              >
                <option value="">{says.choose}</option>
                {orders
                  .filter(({ state }) => state === 'standing')
                  .map(({ orderId, number, owner }) => (
                    <option key={orderId} value={orderId}>
                      {`No. ${number}, ${owner}`}
                    </option>
                  ))}
              </select>
            </Field>
            {chosen.value !== '' && <OrderPart key={chosen.value} orderId={chosen.value} {...props} />}
          </>
        )}
      </Shown>
    </div>
  );
}
