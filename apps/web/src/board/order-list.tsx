import { words } from '../words/english.ts';
import type { BoardView } from './board-model.ts';
import type { BoardStore } from './board-store.ts';
import { OrderCard } from './order-card.tsx';

/** The orders of the day, short ones first, each with why. */
export function OrderList({ view, store }: { readonly view: BoardView; readonly store: BoardStore }) {
  const shortOnly = store.shortOnly.value;
  const orders = shortOnly ? view.orders.filter(({ isShort }) => isShort) : view.orders;
  const none = view.orders.length === 0 ? words.orders.noneYet : words.orders.noneShort;
  return (
    <section class="orders" aria-labelledby="orders-title">
      <header class="column-head">
        <h2 id="orders-title">{words.orders.title}</h2>
        {view.plan && view.orders.length > 0 && (
          <button
            type="button"
            class="toggle"
            aria-pressed={shortOnly}
            onClick={() => {
              store.shortOnly.value = !shortOnly;
            }}
          >
            {words.orders.shortOnly}
          </button>
        )}
      </header>
      {orders.length === 0 && <p class="empty">{none}</p>}
      <div class="order-cards">
        {orders.map((order) => (
          <OrderCard key={order.orderId} order={order} view={view} store={store} shortOnly={shortOnly} />
        ))}
      </div>
    </section>
  );
}
