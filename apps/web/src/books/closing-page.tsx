import { useEffect, useMemo } from 'preact/hooks';
import type { BooksClient, Closing } from '../wire/books-client.ts';
import { booksWords } from '../words/books-words.ts';
import { gramsText, moneyText } from '../words/measures.ts';
import { CloseForm } from './close-form.tsx';
import type { BooksPageProps } from './packs-page.tsx';
import { createPageStore } from './page-store.ts';
import { BooksHead, Shown } from './shown.tsx';

const says = booksWords.closing;

const grams = (value: number): string => `${value.toLocaleString('en')} g`;

/** In and out, to the gram. */
function BalanceTable({ closing }: { readonly closing: Closing }) {
  const { name, hangingGrams, apartGrams, packedGrams, namedGrams, restGrams, flag } = closing;
  const rows: readonly (readonly [string, number])[] = [
    [says.in, hangingGrams],
    [says.apart, apartGrams],
    [says.packed, packedGrams],
    [says.named, namedGrams],
    [restGrams < 0 ? says.restOver : says.rest, restGrams],
  ];
  return (
    <table class="bill">
      <caption>{name}</caption>
      <tbody>
        {rows.map(([term, value]) => (
          <tr key={term}>
            <th scope="row">{term}</th>
            <td class={term === says.rest && flag !== 'none' ? 'sum flagged' : 'sum'}>{grams(value)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** What each cut was to weigh, and what it did. */
function Yields({
  closing,
  session,
}: {
  readonly closing: Closing;
  readonly session: BooksPageProps['session'];
}) {
  const { margin, yields } = closing;
  const money = (minor: number): string => moneyText(minor, session.shop.currency);
  return (
    <details>
      <summary>{`${says.yields} · ${says.margin} ${money(margin.soldMinor)}`}</summary>
      <table class="bill">
        <caption>{says.yields}</caption>
        <thead>
          <tr>
            <th scope="col">{says.name}</th>
            <th scope="col">{says.planned}</th>
            <th scope="col">{says.packed}</th>
          </tr>
        </thead>
        <tbody>
          {yields.map(({ name, plannedGrams, packedGrams }) => (
            <tr key={`${name} ${plannedGrams}`}>
              <th scope="row">{name}</th>
              <td class="sum">{gramsText(plannedGrams, session.shop)}</td>
              <td class="sum">{gramsText(packedGrams, session.shop)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <table class="bill">
        <caption>{says.margin}</caption>
        <tbody>
          {margin.byChannel.map(({ channel, minor }) => (
            <tr key={channel}>
              <th scope="row">{says.channels[channel]}</th>
              <td class="sum">{money(minor)}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">{says.cost}</th>
            <td class="sum">{money(margin.animalMinor)}</td>
          </tr>
          <tr>
            <th scope="row">{says.labour}</th>
            <td class="sum">{money(margin.labourMinor)}</td>
          </tr>
          <tr>
            <th scope="row">{says.left}</th>
            <td class="sum">{money(margin.marginMinor)}</td>
          </tr>
        </tfoot>
      </table>
    </details>
  );
}

/** One animal: its balance, and closing it. */
function AnimalPart({ animalId, books, session, newKey }: BooksPageProps & { readonly animalId: string }) {
  const store = useMemo(() => createPageStore(() => books.readClosing(animalId)), [books, animalId]);
  useEffect(() => void store.look(), [store]);
  return (
    <Shown answer={store.shown.value} onAgain={() => void store.look()}>
      {(closing) => (
        <section class="animal-closing" aria-label={closing.name}>
          <h2>{closing.name}</h2>
          <BalanceTable closing={closing} />
          {closing.unpacked > 0 && <p class="hint">{says.unpacked(closing.unpacked)}</p>}
          {closing.stillHere > 0 && <p class="hint">{says.stillHere(closing.stillHere)}</p>}
          {closing.isClosed && (
            <p class="told">
              <strong>{says.closed}.</strong>{' '}
              {closing.restGrams === 0 && closing.flag === 'none' ? says.balances : closing.note}
            </p>
          )}
          {!closing.isClosed && session.person.role === 'owner' && (
            <CloseForm closing={closing} store={store} books={books} session={session} newKey={newKey} />
          )}
          <Yields closing={closing} session={session} />
        </section>
      )}
    </Shown>
  );
}

function useAnimals(books: BooksClient, dayId: string) {
  const store = useMemo(() => createPageStore(() => books.readAnimals(dayId)), [books, dayId]);
  useEffect(() => {
    document.title = `${says.title} · Flitchbook`;
    void store.look();
  }, [store]);
  return store;
}

/** Everything in and out of each animal of the day balances, or somebody says why not. */
export function ClosingPage({ dayId, ...props }: BooksPageProps & { readonly dayId: string }) {
  const store = useAnimals(props.books, dayId);
  return (
    <div class="books">
      <BooksHead dayId={dayId} at="closing" mayClose={true} />
      <h1>{says.title}</h1>
      <Shown answer={store.shown.value} onAgain={() => void store.look()}>
        {({ animals }) => (
          <div class="books-columns">
            {animals.map(({ animalId }) => (
              <AnimalPart key={animalId} animalId={animalId} {...props} />
            ))}
          </div>
        )}
      </Shown>
    </div>
  );
}
