import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { CustomersPageProps } from '../customers/page-props.ts';
import { WaysIn } from '../customers/way-in-page.tsx';
import { Link } from '../shell/link.tsx';
import { yours } from '../shell/route.ts';
import { Failure, Waiting } from '../shell/states.tsx';
import type { Answer } from '../wire/client.ts';
import { frameWords } from '../words/customers/frame-words.ts';
import { said } from '../words/customers/language.ts';
import { mineWords } from '../words/customers/mine-words.ts';

type Got = Answer<{ readonly orders: readonly { orderId: string; number: number; state: State }[] }>;
type State = 'queued' | 'held' | 'standing' | 'lapsed' | 'released' | 'cancelled';

function OrderCards({ client }: Pick<CustomersPageProps, 'client'>) {
  const frame = said(frameWords);
  const words = said(mineWords);
  const got = useSignal<Got | null>(null);
  const look = async (): Promise<void> => {
    got.value = null;
    got.value = await client.readOrders();
  };
  useEffect(() => void look(), []);
  const answer = got.value;
  if (answer === null) return <Waiting says={frame.loading} />;
  if (!answer.ok) {
    return (
      <Failure
        isPart={true}
        title={frame.noNetworkTitle}
        says={frame.noNetwork}
        action={frame.tryAgain}
        onAction={() => void look()}
      />
    );
  }
  if (answer.value.orders.length === 0)
    return <Failure isPart={true} title={words.noneTitle} says={words.none} />;
  return (
    <ul class="own-orders">
      {answer.value.orders.map(({ orderId, number, state }) => (
        <li key={orderId}>
          <Link class="slip" to={yours.order(orderId)}>
            <strong>{words.order(number)}</strong>
            <span class={`rubber ${state}`}>{words.states[state]}</span>
          </Link>
        </li>
      ))}
    </ul>
  );
}

/** All orders of whoever is signed in. */
export function OwnOrdersPage({ client, session, who }: CustomersPageProps) {
  const frame = said(frameWords);
  const words = said(mineWords);
  useEffect(() => {
    document.title = words.title;
  }, []);
  if (who && who.person.role !== 'customer')
    return <Failure title={frame.staffTitle} says={frame.staffSays} />;
  return (
    <>
      <h1>{words.title}</h1>
      {who ? (
        <OrderCards client={client} />
      ) : (
        <>
          <p>{frame.signInFirst}</p>
          <WaysIn client={client} session={session} />
        </>
      )}
    </>
  );
}
