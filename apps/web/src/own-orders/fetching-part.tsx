import type { OrderPromise } from '../wire/customers-client.ts';
import { clockSaid, dateSaid, moneySaid } from '../words/customers/amounts.ts';
import { said } from '../words/customers/language.ts';
import { mineWords } from '../words/customers/mine-words.ts';
import type { OwnOrderStore } from './own-order-store.ts';

interface FetchingProps {
  readonly store: OwnOrderStore;
  readonly promise: OrderPromise;
}

const windowsShown = 4;

function Windows({ store, promise }: FetchingProps) {
  const words = said(mineWords);
  const { pickUp, windows } = promise;
  const agreed = pickUp && `${pickUp.date} ${pickUp.from}`;
  if (windows.length === 0) return pickUp ? null : <p>{words.noWindows}</p>;
  return (
    <ul class="windows">
      {windows.slice(0, windowsShown).map((window) => {
        const { date, from, to } = window;
        const isAgreed = agreed === `${date} ${from}`;
        return (
          <li key={`${date} ${from}`}>
            <button
              type="button"
              aria-pressed={isAgreed}
              disabled={store.isGoing.value}
              onClick={() => void store.fetchAt(window)}
            >
              {words.pickUpAt(dateSaid(date), clockSaid(from), clockSaid(to))}
            </button>
          </li>
        );
      })}
    </ul>
  );
}

/** When it is ready and when it is fetched. */
export function FetchingPart({ store, promise }: FetchingProps) {
  const words = said(mineWords);
  const { pickUp, order, date, lines } = promise;
  if (order.state !== 'standing') return null;
  const isCured = lines.some(({ cut }) => /cured|bacon|pancetta|slab/.test(cut));
  return (
    <section class="slip">
      <h2>{words.ready}</h2>
      <p>{words.readySays(dateSaid(date))}</p>
      {isCured && <p>{words.readyCured}</p>}
      <h2>{words.pickUp}</h2>
      {pickUp === null && <p>{words.pickUpNone}</p>}
      {pickUp !== null && (
        <p class="agreed">
          {words.pickUpAt(dateSaid(pickUp.date), clockSaid(pickUp.from), clockSaid(pickUp.to))}
        </p>
      )}
      {pickUp !== null && pickUp.place !== '' && <p>{words.place(pickUp.place)}</p>}
      <Windows store={store} promise={promise} />
      {pickUp !== null && (
        <a class="button" href={`/api/orders/${order.orderId}/pick-up.ics`} download="pick-up.ics">
          {words.calendar}
        </a>
      )}
    </section>
  );
}

/** The bill, once there is one. */
export function BillPart({ promise }: Pick<FetchingProps, 'promise'>) {
  const words = said(mineWords);
  const { bill, order, shop } = promise;
  if (bill === null && order.depositMinor === 0) return null;
  return (
    <section class="slip">
      {order.depositMinor > 0 && <p>{words.deposit(moneySaid(order.depositMinor, shop.currency))}</p>}
      {bill !== null && (
        <>
          <p>{words.billed(moneySaid(bill.totalMinor, shop.currency))}</p>
          {bill.dueMinor > 0 && <p>{words.due(moneySaid(bill.dueMinor, shop.currency))}</p>}
          <a class="button" href={`/api/orders/${order.orderId}/receipt.html`}>
            {words.receipt}
          </a>
        </>
      )}
    </section>
  );
}
