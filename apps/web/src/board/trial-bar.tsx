import { OrderSwatch } from '../marks/letter-plate.tsx';
import { words } from '../words/english.ts';
import { gramsText } from '../words/measures.ts';
import { allSpecies, type BoardView } from './board-model.ts';
import type { BoardStore, Notice } from './board-store.ts';
import type { Change, Changes } from './changes-model.ts';
import { lineText } from './piece-words.ts';

function changeText(change: Change, view: BoardView): { readonly what: string; readonly fromTo: string } {
  const order = view.orderById.get(change.orderId);
  const line = order?.lines.find(({ lineId }) => lineId === change.lineId);
  const share = order?.shares.find(({ shareId }) => shareId === change.shareId);
  const say = (amount: number): string =>
    line?.counts === 'grams' ? gramsText(amount, view.board.shop) : String(amount);
  return {
    what: line ? lineText(line, view) : share ? words.orders[share.size] : '',
    fromTo: words.trial.fromTo(say(change.before), say(change.after)),
  };
}

interface ChangeListProps {
  readonly title: string;
  readonly kind: 'gains' | 'loses';
  readonly changes: readonly Change[];
  readonly view: BoardView;
}

function ChangeList({ title, kind, changes, view }: ChangeListProps) {
  if (changes.length === 0) return null;
  return (
    <div class={`changes ${kind}`}>
      <h3>{title}</h3>
      <ul>
        {changes.map((change) => {
          const order = view.orderById.get(change.orderId);
          const { what, fromTo } = changeText(change, view);
          return (
            <li key={change.lineId ?? change.shareId}>
              {order && <OrderSwatch mark={order.mark} size={22} />}
              <span class="change-owner">{order?.owner}</span>
              <span class="change-what">{what}</span>
              <span class="change-figures">{fromTo}</span>
            </li>
          );
        })}
      </ul>
    </div>
  );
}

const sideText = (sideId: string, view: BoardView): string => {
  const animal = view.animals.find(({ sides }) => sides.some((side) => side.sideId === sideId));
  const side = animal?.sides.find((each) => each.sideId === sideId);
  return side ? `${animal?.name}, ${words.handWords[side.hand]}` : '';
};

/** What else changes: trim and fat by kind, sides cut otherwise, minutes. */
function Besides({ changes, view }: { readonly changes: Changes; readonly view: BoardView }) {
  const bulks = changes.bulks.map(({ speciesId, bulkId, grams }) => {
    const name = allSpecies[speciesId]?.bulks[bulkId]?.name ?? bulkId;
    return words.trial.bulk(name, gramsText(Math.abs(grams), view.board.shop), grams > 0);
  });
  const sides = changes.sideIds.map((sideId) => sideText(sideId, view)).filter((text) => text !== '');
  return (
    <p class="besides">
      {[
        ...(bulks.length > 0 ? [`${bulks.join(', ')}.`] : []),
        ...(sides.length > 0 ? [words.trial.alsoSides(sides)] : []),
      ].join(' ')}
    </p>
  );
}

const isWide = (): boolean => matchMedia('(min-width: 1100px)').matches;

function ChangesTold({ changes, view }: { readonly changes: Changes; readonly view: BoardView }) {
  const { gained, lost } = changes;
  const same = gained.length + lost.length === 0;
  const head = same ? words.trial.same : words.trial.counts(gained.length, lost.length);
  return (
    <>
      <p class="told">
        {[head, words.trial.minutes(changes.minutes)].filter((text) => text !== '').join(' ')}
      </p>
      <details class="told-more" open={isWide()}>
        <summary>{words.trial.who}</summary>
        <div class="change-lists">
          <ChangeList title={words.trial.loses} kind="loses" changes={lost} view={view} />
          <ChangeList title={words.trial.gains} kind="gains" changes={gained} view={view} />
        </div>
        <Besides changes={changes} view={view} />
      </details>
    </>
  );
}

interface Looked {
  readonly view: BoardView;
  readonly store: BoardStore;
}

/** What is being tried out, what it would change, and the two ways on. */
export function TrialBar({ view, store }: Looked) {
  const trial = store.trial.value;
  if (!trial) return null;
  const changes = store.trialChanges.value;
  const isTrying = store.busy.value === 'trying';
  const isKeeping = store.busy.value === 'keeping';
  return (
    <section class="trial" aria-labelledby="trial-title">
      <h2 id="trial-title">{words.trial.title}</h2>
      <div class="trial-body">
        {isTrying || !changes ? (
          <p class="pending">{words.split.tryingOut}</p>
        ) : (
          <ChangesTold changes={changes} view={view} />
        )}
      </div>
      <div class="trial-ways">
        <button
          type="button"
          class="strong"
          disabled={isTrying || isKeeping}
          onClick={() => void store.keep()}
        >
          {isKeeping ? words.trial.keeping : words.trial.keep}
        </button>
        <button type="button" disabled={isKeeping} onClick={() => store.putBack()}>
          {words.trial.putBack}
        </button>
      </div>
    </section>
  );
}

function noticeText(notice: Notice): string {
  switch (notice.says) {
    case 'kept':
      return words.notices.kept;
    case 'planned':
      return words.notices.planned;
    case 'overtaken':
      return words.notices.overtaken;
    case 'no-network':
      return words.failures.noNetworkKept;
    case 'refused':
      return notice.problem.detail;
  }
}

/** Told once, read out by a screen reader, gone when understood. */
export function NoticeBar({ view, store }: Looked) {
  const notice = store.notice.value;
  return (
    <div role="status" class="notice-place">
      {notice && (
        <section class={`notice ${notice.says}`}>
          <div class="notice-body">
            <p class="notice-text">{noticeText(notice)}</p>
            {(notice.says === 'kept' || notice.says === 'planned') && (
              <ChangesTold changes={notice.changes} view={view} />
            )}
          </div>
          <button
            type="button"
            onClick={() => {
              store.notice.value = null;
            }}
          >
            {words.notices.dismiss}
          </button>
        </section>
      )}
    </div>
  );
}
