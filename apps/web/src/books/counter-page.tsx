import { useSignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import { Link } from '../shell/link.tsx';
import type { CounterOnWire } from '../wire/books-client.ts';
import { booksWords } from '../words/books-words.ts';
import { words } from '../words/english.ts';
import { moneyText } from '../words/measures.ts';
import { amountText, readAmount } from './amounts.ts';
import type { BooksPageProps } from './packs-page.tsx';
import { createPageStore } from './page-store.ts';
import { Refusal, Shown } from './shown.tsx';

const says = booksWords.counter;
type Pack = CounterOnWire['packs'][number];
/** pack to the price that is typed for it */
type Prices = ReadonlyMap<string, string>;

const Age = ({ days, isOld }: Pack) => (
  <span class={isOld ? 'age old' : 'age'}>{isOld ? `${says.age(days)}, ${says.old}` : says.age(days)}</span>
);

interface FreeProps {
  readonly packs: readonly Pack[];
  readonly prices: Prices;
  readonly onPrice: (packId: string, text: string | null) => void;
  readonly currency: string;
}

function Free({ packs, prices, onPrice, currency }: FreeProps) {
  return (
    <ul class="pack-list">
      {packs.map((pack) => {
        const { packId, serial, name, animal, net, amountMinor } = pack;
        const price = prices.get(packId);
        return (
          <li key={packId}>
            <label class="tick">
              <input
                type="checkbox"
                aria-label={says.pick(serial)}
                checked={price !== undefined}
                onChange={(event) =>
                  onPrice(packId, event.currentTarget.checked ? amountText(amountMinor ?? 0, currency) : null)
                }
              />
              <span>
                <strong>{`${serial} · ${name}`}</strong>
                {` ${animal}, ${net.text} ${net.unit} · ${moneyText(amountMinor ?? 0, currency)}`}{' '}
                <Age {...pack} />
              </span>
            </label>
            {price !== undefined && (
              <input
                class="price"
                inputMode="decimal"
                aria-label={says.price(serial)}
                value={price}
                onInput={(event) => onPrice(packId, event.currentTarget.value)}
              />
            )}
          </li>
        );
      })}
    </ul>
  );
}

/** What is left of the animals: free to sell, and waiting for somebody. */
export function CounterPage({ books, session, newKey }: BooksPageProps) {
  const store = useMemo(() => createPageStore(() => books.readCounter()), [books]);
  const prices = useSignal<Prices>(new Map());
  const sold = useSignal('');
  const { currency } = session.shop;
  useEffect(() => {
    document.title = `${says.title} · Flitchbook`;
    void store.look();
  }, [store]);
  const setPrice = (packId: string, text: string | null): void => {
    const next = new Map(prices.value);
    if (text === null) next.delete(packId);
    else next.set(packId, text);
    prices.value = next;
  };
  const chosen = [...prices.value].map(([packId, text]) => ({
    packId,
    soldMinor: readAmount(text, currency),
  }));
  const total = chosen.reduce((sum, { soldMinor }) => sum + (soldMinor ?? 0), 0);
  const isReadable = chosen.every(({ soldMinor }) => soldMinor !== null);
  const sell = async (): Promise<void> => {
    const packs = chosen.map(({ packId, soldMinor }) => ({ packId, soldMinor: soldMinor ?? 0 }));
    if (!(await store.send(() => books.sell({ packs, method: 'cash' }, newKey())))) return;
    sold.value = says.sold(moneyText(total, currency));
    prices.value = new Map();
  };
  return (
    <div class="books">
      <nav class="books-nav" aria-label={booksWords.parts.label}>
        <Link class="back" to="/">
          {words.cuttingDays}
        </Link>
      </nav>
      <h1>{says.title}</h1>
      <Shown answer={store.shown.value} onAgain={() => void store.look()}>
        {({ packs }) => (
          <div class="books-columns">
            <section aria-labelledby="free">
              <h2 id="free">{says.free}</h2>
              {packs.every(({ orderNumber }) => orderNumber !== null) && <p>{says.noneFree}</p>}
              <Free
                packs={packs.filter(({ orderNumber }) => orderNumber === null)}
                prices={prices.value}
                onPrice={setPrice}
                currency={currency}
              />
              <p class="told" role="status">
                {sold.value}
              </p>
              <Refusal store={store} />
              <button
                type="button"
                class="strong"
                disabled={chosen.length === 0 || !isReadable || store.isBusy.value}
                onClick={() => void sell()}
              >
                {chosen.length === 0 ? says.unsold : says.sell(chosen.length, moneyText(total, currency))}
              </button>
            </section>
            <section aria-labelledby="waiting">
              <h2 id="waiting">{says.waiting}</h2>
              {packs.every(({ orderNumber }) => orderNumber === null) && <p>{says.noneWaiting}</p>}
              <ul class="pack-list">
                {packs
                  .filter(({ orderNumber }) => orderNumber !== null)
                  .map((pack) => (
                    <li key={pack.packId}>
                      <span>
                        <strong>{`${pack.serial} · ${pack.name}`}</strong>
                        {` No. ${pack.orderNumber}, ${pack.owner} · ${pack.net.text} ${pack.net.unit}`}{' '}
                        <Age {...pack} />
                      </span>
                    </li>
                  ))}
              </ul>
            </section>
          </div>
        )}
      </Shown>
    </div>
  );
}
