import { useEffect } from 'preact/hooks';
import type { BoardView } from '../board/board-model.ts';
import type { BoardStore } from '../board/board-store.ts';
import { fillText, lineText } from '../board/piece-words.ts';
import { Link } from '../shell/link.tsx';
import { Failure, Waiting } from '../shell/states.tsx';
import { dateText } from '../words/dates.ts';
import { words } from '../words/english.ts';
import { watchWords } from '../words/watch-words.ts';
import { type Affected, watchOf } from './watch-model.ts';

interface EntryProps {
  readonly text: string;
  readonly fill: string;
  readonly says: string;
}

const Entry = ({ text, fill, says }: EntryProps) => (
  <li>
    <p>
      <strong>{text}</strong> {watchWords.gets(fill)}
    </p>
    {says !== '' && <p class="hint">{says}</p>}
  </li>
);

function Customer({ affected, view }: { readonly affected: Affected; readonly view: BoardView }) {
  const { number, owner, lines, shares, others } = affected;
  return (
    <li class="watch-customer">
      <h3>
        {owner} <span class="order-number">{words.orders.number(number)}</span>
      </h3>
      <ul class="watch-lines">
        {shares.map((share) => (
          <Entry
            key={share.shareId}
            text={words.orders[share.size]}
            fill={words.orders.of(String(share.sideIds.length), share.size === 'whole' ? '2' : '1')}
            says={share.short?.says ?? ''}
          />
        ))}
        {lines.map((line) => (
          <Entry
            key={line.lineId}
            text={lineText(line, view)}
            fill={fillText(line, view.board.shop)}
            says={line.short?.says ?? ''}
          />
        ))}
      </ul>
      {others.length > 0 && <p class="hint">{watchWords.others(others)}</p>}
    </li>
  );
}

interface ListProps {
  readonly title: string;
  readonly says: string;
  readonly none: string;
  readonly list: readonly Affected[];
  readonly view: BoardView;
}

const List = ({ title, says, none, list, view }: ListProps) => (
  <section>
    <h2>{title}</h2>
    <p>{list.length === 0 ? none : says}</p>
    {list.length > 0 && (
      <ul class="watch-list">
        {list.map((affected) => (
          <Customer key={affected.orderId} affected={affected} view={view} />
        ))}
      </ul>
    )}
  </section>
);

function Watched({ view }: { readonly view: BoardView }) {
  const { day } = view.board;
  const { promised, wished } = watchOf(view);
  const date = dateText(day.date);
  useEffect(() => {
    document.title = watchWords.pageTitle(date);
  }, [date]);
  return (
    <div class="books">
      <nav class="books-nav" aria-label={watchWords.label}>
        <Link class="back" to={`/days/${day.dayId}`}>
          {watchWords.board}
        </Link>
      </nav>
      <h1>{watchWords.title}</h1>
      <p>{date}</p>
      {view.isStale && <p class="stale">{words.day.stale}</p>}
      {view.plan === null ? (
        <p>{watchWords.noPlan}</p>
      ) : (
        <>
          <List
            title={watchWords.promised}
            says={watchWords.settle(promised.length, date)}
            none={watchWords.nonePromised}
            list={promised}
            view={view}
          />
          <List
            title={watchWords.wished}
            says={watchWords.wishes(wished.length)}
            none={watchWords.noneWished}
            list={wished}
            view={view}
          />
        </>
      )}
    </div>
  );
}

/** What a day has promised beyond its animals, who is hit, and by when it must be settled. */
export function WatchPage({ store }: { readonly store: BoardStore }) {
  useEffect(() => void store.load(), [store]);
  const view = store.view.value;
  if (view) return <Watched view={view} />;
  const reading = store.reading.value;
  if (reading.at === 'refused')
    return <Failure title={reading.problem.title} says={reading.problem.detail} />;
  if (reading.at !== 'no-network') return <Waiting says={words.failures.loading} />;
  return (
    <Failure
      title={words.failures.noNetworkTitle}
      says={words.failures.noNetwork}
      action={words.tryAgain}
      onAction={() => void store.load()}
    />
  );
}
