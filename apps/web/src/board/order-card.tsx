import { OrderSwatch } from '../marks/letter-plate.tsx';
import { words } from '../words/english.ts';
import type { BoardView } from './board-model.ts';
import type { BoardStore } from './board-store.ts';
import type { LineView, OrderView, ShareView, Want } from './orders-model.ts';
import { fillText, lineText } from './piece-words.ts';

interface Looked {
  readonly view: BoardView;
  readonly store: BoardStore;
}

function RankWord({ rank }: { readonly rank: LineView['rank'] }) {
  return <span class={`rank ${rank}`}>{words.orders[rank]}</span>;
}

interface OrderLinkProps extends Looked {
  readonly orderId: string;
}

/** Another order, by its letter: press it and its pieces light up. */
function OrderLink({ orderId, view, store }: OrderLinkProps) {
  const order = view.orderById.get(orderId);
  if (!order) return null;
  return (
    <button
      type="button"
      class="order-link"
      title={order.owner}
      aria-label={words.orders.show(order.mark.letter, order.owner)}
      aria-pressed={store.chosenOrderId.value === orderId}
      onClick={() => store.chooseOrder(orderId)}
    >
      <OrderSwatch mark={order.mark} size={30} />
    </button>
  );
}

function Reason({ short, view, store }: Looked & { readonly short: Want }) {
  return (
    <div class="reason">
      <p>{short.says}</p>
      {short.orderIds.length > 0 && (
        <p class="clash">
          <span>{words.orders.clashes}</span>
          {short.orderIds.map((orderId) => (
            <OrderLink key={orderId} orderId={orderId} view={view} store={store} />
          ))}
        </p>
      )}
      {short.byLock && <p>{words.orders.locked}</p>}
    </div>
  );
}

interface RowProps extends Looked {
  readonly text: string;
  readonly fill: string;
  readonly entry: Pick<LineView | ShareView, 'rank' | 'isShort' | 'short'>;
}

function Row({ text, fill, entry, view, store }: RowProps) {
  return (
    <li class={entry.isShort ? 'line short' : 'line'}>
      <div class="line-head">
        <span class="line-text">{text}</span>
        {view.plan && (
          <span class="line-fill">
            {fill}
            <span class="visually-hidden">{` ${entry.isShort ? words.orders.short : words.orders.filledWord}`}</span>
          </span>
        )}
        <RankWord rank={entry.rank} />
      </div>
      {entry.short && <Reason short={entry.short} view={view} store={store} />}
    </li>
  );
}

export interface OrderCardProps extends Looked {
  readonly order: OrderView;
  readonly shortOnly: boolean;
}

/** One order: its letter, whose it is, and each line with what it got. */
export function OrderCard({ order, view, store, shortOnly }: OrderCardProps) {
  const isLit = store.litOrderId.value === order.orderId;
  const lines = shortOnly ? order.lines.filter(({ isShort }) => isShort) : order.lines;
  const shares = shortOnly ? order.shares.filter(({ isShort }) => isShort) : order.shares;
  const sides = (share: ShareView): string =>
    words.orders.of(String(share.sideIds.length), share.size === 'whole' ? '2' : '1');
  return (
    <article class={`order${order.isShort ? ' short' : ''}${isLit ? ' lit' : ''}`}>
      <button
        type="button"
        class="order-head"
        aria-pressed={isLit}
        aria-label={words.orders.show(order.mark.letter, order.owner)}
        onClick={() => store.chooseOrder(isLit ? null : order.orderId)}
      >
        <OrderSwatch mark={order.mark} size={38} />
        <span class="order-owner">{order.owner}</span>
        <span class="order-number">{words.orders.number(order.number)}</span>
      </button>
      {order.note !== '' && <p class="order-note">{order.note}</p>}
      <ul class="lines">
        {shares.map((share) => (
          <Row
            key={share.shareId}
            text={words.orders[share.size]}
            fill={sides(share)}
            entry={share}
            view={view}
            store={store}
          />
        ))}
        {lines.map((line) => (
          <Row
            key={line.lineId}
            text={lineText(line, view)}
            fill={fillText(line, view.board.shop)}
            entry={line}
            view={view}
            store={store}
          />
        ))}
      </ul>
    </article>
  );
}
