import { useSignal } from '@preact/signals';
import { Link } from '../shell/link.tsx';
import { yours } from '../shell/route.ts';
import type { OrderPromise } from '../wire/customers-client.ts';
import { instantSaid, weightSaid } from '../words/customers/amounts.ts';
import { said } from '../words/customers/language.ts';
import { mineWords } from '../words/customers/mine-words.ts';
import { orderWords } from '../words/customers/order-words.ts';
import { Countdown } from './countdown.tsx';
import type { OwnOrderStore } from './own-order-store.ts';

interface PartProps {
  readonly store: OwnOrderStore;
  readonly promise: OrderPromise;
}

function Held({ store, promise, nowMs }: PartProps & { readonly nowMs: () => number }) {
  const words = said(mineWords);
  const { heldUntil } = promise.order;
  if (heldUntil === null) return null;
  return (
    <>
      <Countdown until={heldUntil} nowMs={nowMs} onOver={() => void store.look()} />
      <p>{words.heldSays}</p>
      <div class="keys-row">
        <button
          type="button"
          class="strong"
          disabled={store.isGoing.value}
          onClick={() => void store.reserve()}
        >
          {store.isGoing.value ? words.reserving : words.reserve}
        </button>
        <button type="button" disabled={store.isGoing.value} onClick={() => void store.longer()}>
          {words.longer}
        </button>
        <button type="button" disabled={store.isGoing.value} onClick={() => void store.giveBack()}>
          {words.giveBack}
        </button>
      </div>
    </>
  );
}

/** Where the order stands, and the one thing to do about it. */
export function StandingPart(props: PartProps & { readonly nowMs: () => number }) {
  const words = said(mineWords);
  const { store, promise } = props;
  const { order } = promise;
  const says = {
    held: null,
    standing: words.reservedSays,
    queued: words.queuedSays,
    lapsed: words.lapsedSays,
    released: words.releasedSays,
    cancelled: words.cancelledSays,
  }[order.state];
  const [line] = promise.lines;
  const isShort = order.state === 'standing' && promise.lines.some(isShortLine);
  return (
    <section class="slip standing">
      <p class={`rubber ${order.state}`}>{words.states[order.state]}</p>
      {order.state === 'held' && <Held {...props} />}
      {says !== null && !isShort && <p>{says}</p>}
      {order.state === 'queued' && (
        <button type="button" disabled={store.isGoing.value} onClick={() => void store.giveBack()}>
          {words.giveBack}
        </button>
      )}
      {(order.state === 'lapsed' || order.state === 'released') && line && promise.dayIsOpen && (
        <Link class="button" to={yours.cut(order.dayId, line.speciesId, line.cut)}>
          {words.askAgain}
        </Link>
      )}
    </section>
  );
}

const isShortLine = ({ planned, asked }: OrderPromise['lines'][number]): boolean =>
  planned !== null && planned < asked;

/** The shop cannot keep all of it: how much it can, why, and what to do. */
export function ShortPart({ promise }: Pick<PartProps, 'promise'>) {
  const words = said(mineWords);
  const order = said(orderWords);
  const short = promise.order.state === 'standing' ? promise.lines.filter(isShortLine) : [];
  if (short.length === 0) return null;
  return (
    <section class="slip short-slip" role="alert">
      <h2>{words.shortNow}</h2>
      {short.map(({ lineId, planned, asked, byWeight, why }) => (
        <p key={lineId}>
          {byWeight
            ? words.shortSays(weightSaid(planned ?? 0, promise.shop), weightSaid(asked, promise.shop))
            : words.shortSays(String(planned ?? 0), String(asked))}{' '}
          {why !== null && order.why[why]}
        </p>
      ))}
      <p>{words.takeLess}</p>
      <Link class="button" to={yours.coming}>
        {words.lookElse}
      </Link>
    </section>
  );
}

/** Cancelling, as long as the day takes changes: asked twice, sent with the version that was read. */
export function CancelPart({ store, promise }: PartProps) {
  const words = said(mineWords);
  const isSure = useSignal(false);
  const { order, mayChange, customersUntil, shop } = promise;
  if (order.state !== 'standing') return null;
  return (
    <section class="slip">
      <h2>{words.cancelTitle}</h2>
      {!mayChange && <p>{words.tooLate}</p>}
      {mayChange && (
        <>
          <p>
            {customersUntil === null
              ? words.cancelOpen
              : words.cancelSays(instantSaid(customersUntil, shop.timeZone))}
          </p>
          <p>{words.changeSays}</p>
          <div class="keys-row">
            {isSure.value ? (
              <>
                <button
                  type="button"
                  class="strong"
                  disabled={store.isGoing.value}
                  onClick={() => {
                    isSure.value = false;
                    void store.cancel(order.version);
                  }}
                >
                  {words.cancelSure}
                </button>
                <button
                  type="button"
                  onClick={() => {
                    isSure.value = false;
                  }}
                >
                  {words.cancelNo}
                </button>
              </>
            ) : (
              <button
                type="button"
                onClick={() => {
                  isSure.value = true;
                }}
              >
                {words.cancel}
              </button>
            )}
          </div>
        </>
      )}
    </section>
  );
}
