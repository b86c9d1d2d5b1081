import { useEffect, useMemo } from 'preact/hooks';
import type { CustomersPageProps } from '../customers/page-props.ts';
import { WaysIn } from '../customers/way-in-page.tsx';
import { Link } from '../shell/link.tsx';
import { yours } from '../shell/route.ts';
import { Failure, Waiting } from '../shell/states.tsx';
import type { OrderPromise } from '../wire/customers-client.ts';
import { dateSaid } from '../words/customers/amounts.ts';
import { cautionWords } from '../words/customers/caution-words.ts';
import { frameWords } from '../words/customers/frame-words.ts';
import { keep, kept, said } from '../words/customers/language.ts';
import { mineWords } from '../words/customers/mine-words.ts';
import { BillPart, FetchingPart } from './fetching-part.tsx';
import { createOwnOrderStore, type OwnOrderStore } from './own-order-store.ts';
import { PromiseTable } from './promise-table.tsx';
import { CancelPart, ShortPart, StandingPart } from './standing-part.tsx';

const lookAgainMs = 20_000;

function Cautions() {
  const words = said(cautionWords);
  return (
    <section class="slip cautions">
      <h2>{words.title}</h2>
      <ul>
        {words.lines.map(({ says, source }) => (
          <li key={says}>
            {says} <cite>{source}.</cite>
          </li>
        ))}
      </ul>
      <p>{words.defers}</p>
    </section>
  );
}

/** What has just happened, read out. */
function News({ store }: { readonly store: OwnOrderStore }) {
  const words = said(mineWords);
  const frame = said(frameWords);
  const told = store.told.value;
  const says = {
    stale: words.stale,
    over: words.over,
    'too-late': words.tooLate,
    'no-network': frame.noNetwork,
    longest: words.longest,
    'window-taken': words.pickUpTaken,
    'window-kept': words.pickUpKept,
  };
  return (
    <div role="status">
      {told !== null && <p class={told === 'window-kept' ? 'told' : 'fault'}>{says[told]}</p>}
      {store.missing.value === 'no-network' && told !== 'no-network' && <p class="fault">{words.lastSeen}</p>}
    </div>
  );
}

function Shown({
  store,
  promise,
  nowMs,
}: {
  readonly store: OwnOrderStore;
  readonly promise: OrderPromise;
  readonly nowMs: () => number;
}) {
  const words = said(mineWords);
  const { order, shop, date } = promise;
  return (
    <>
      <div class="page-top">
        <p class="kicker">
          {shop.name}, {words.cutOn(dateSaid(date))}
        </p>
        <h1>{words.order(order.number)}</h1>
      </div>
      <News store={store} />
      <StandingPart store={store} promise={promise} nowMs={nowMs} />
      <ShortPart promise={promise} />
      <PromiseTable promise={promise} units={shop} />
      <FetchingPart store={store} promise={promise} />
      <BillPart promise={promise} />
      <CancelPart store={store} promise={promise} />
      <Cautions />
    </>
  );
}

/** One order: what was promised, what has become of it, what can be done about it. */
export function OwnOrderPage({
  client,
  who,
  session,
  newKey,
  nowMs,
  orderId,
}: CustomersPageProps & { readonly orderId: string }) {
  const frame = said(frameWords);
  const words = said(mineWords);
  const store = useMemo(
    () => createOwnOrderStore({ client, orderId, newKey, keeping: { read: kept, write: keep } }),
    [orderId, client],
  );
  const personId = who?.person.personId ?? null;
  useEffect(() => {
    document.title = words.title;
    if (personId === null) return undefined;
    void store.look();
    const again = setInterval(() => {
      if (!document.hidden) void store.look();
    }, lookAgainMs);
    return () => clearInterval(again);
  }, [store, personId]);
  const promise = store.promise.value;
  return (
    <>
      <Link class="back" to={yours.orders}>
        {words.title}
      </Link>
      {!who && (
        <>
          <p>{frame.signInFirst}</p>
          <WaysIn client={client} session={session} />
        </>
      )}
      {who && promise && <Shown store={store} promise={promise} nowMs={nowMs} />}
      {who && !promise && store.missing.value === null && <Waiting says={frame.loading} />}
      {who && !promise && store.missing.value === 'unknown' && (
        <Failure title={frame.notThereTitle} says={words.notYours} />
      )}
      {who && !promise && store.missing.value === 'no-network' && (
        <Failure
          title={frame.noNetworkTitle}
          says={frame.noNetwork}
          action={frame.tryAgain}
          onAction={() => void store.look()}
        />
      )}
    </>
  );
}
