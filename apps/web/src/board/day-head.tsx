import { Link } from '../shell/link.tsx';
import { dateText, timeText } from '../words/dates.ts';
import { words } from '../words/english.ts';
import type { BoardView } from './board-model.ts';
import type { BoardStore } from './board-store.ts';
import { sayAssurance } from './totals.tsx';

interface DayHeadProps {
  readonly view: BoardView;
  readonly store: BoardStore;
  readonly onShowShort: () => void;
}

function Actions({ view, store }: Pick<DayHeadProps, 'view' | 'store'>) {
  const { dayId } = view.board.day;
  const isPlanning = store.busy.value === 'planning';
  return (
    <div class="actions">
      {store.may.takeOrders && (
        <Link class="button strong" to={`/days/${dayId}/new-order`}>
          {words.day.addOrder}
        </Link>
      )}
      <a class="button" href={`/api/days/${encodeURIComponent(dayId)}/cut-list.html`}>
        {words.day.cutList}
      </a>
      <Link class="button" to={`/days/${dayId}/watch`}>
        {words.day.watch}
      </Link>
      <Link class="button" to={`/days/${dayId}/packs`}>
        {words.day.packs}
      </Link>
      {store.may.settle && (
        <button type="button" disabled={store.busy.value !== null} onClick={() => void store.planAgain()}>
          {isPlanning ? words.day.planning : view.plan ? words.day.planAgain : words.day.planFirst}
        </button>
      )}
      <button type="button" class="print-button" onClick={() => print()}>
        {words.day.print}
      </button>
    </div>
  );
}

interface FigureProps {
  readonly figure: string | number;
  readonly says: string;
  readonly kind?: string;
}

const Figure = ({ figure, says, kind = '' }: FigureProps) => (
  <p class={`figure ${kind}`}>
    <strong>{figure}</strong> <span>{says}</span>
  </p>
);

function Summary({ view, onShowShort }: Pick<DayHeadProps, 'view' | 'onShowShort'>) {
  const { tally, totals, assurance, board } = view;
  const { shortPromised, shortWished } = tally;
  const [proof] =
    assurance.sure === 'proven' ? [words.proof.proven] : sayAssurance(assurance, board.shop.currency);
  return (
    <div class="summary">
      <Figure figure={words.day.filled(tally.filledLines, tally.lines)} says={words.day.filledSays} />
      {shortPromised > 0 && (
        <Figure kind="promises" figure={shortPromised} says={words.day.promisesShort(shortPromised)} />
      )}
      {shortWished > 0 && (
        <Figure kind="wishes" figure={shortWished} says={words.day.wishesShort(shortWished)} />
      )}
      {totals && <Figure figure={words.day.hours(totals.minutes)} says={words.day.benchTime} />}
      {shortPromised + shortWished > 0 && (
        <button type="button" class="show-short" onClick={onShowShort}>
          {words.day.showShort}
        </button>
      )}
      <p class="summary-proof">{proof}</p>
    </div>
  );
}

/** The day at a glance: which day, how many lines have their meat, and how sure that is the best there is. */
export function DayHead({ view, store, onShowShort }: DayHeadProps) {
  const { day, shop, orders } = view.board;
  const facts = [
    words.days.animals(view.animals.length),
    words.days.orders(orders.length),
    words.days[day.state],
    ...(day.plannedAt ? [words.day.planned(timeText(day.plannedAt, shop.timeZone))] : []),
  ];
  return (
    <header class="day-head">
      <div class="day-title">
        <Link class="back" to="/">
          {words.backToDays}
        </Link>
        <h1>{dateText(day.date)}</h1>
        <p>{facts.join(' · ')}</p>
      </div>
      <Actions view={view} store={store} />
      {view.isStale && <p class="stale">{words.day.stale}</p>}
      {view.plan && <Summary view={view} onShowShort={onShowShort} />}
    </header>
  );
}
