import { useEffect, useMemo, useRef } from 'preact/hooks';
import { BoardPage } from '../board/board-page.tsx';
import { BoardStore } from '../board/board-store.ts';
import { DaysPage } from '../days/days-page.tsx';
import { StencilWord } from '../marks/stencil-word.tsx';
import { OrderFormPage } from '../order-form/order-form-page.tsx';
import { rightsOf } from '../session/rights.ts';
import type { SessionStore } from '../session/session-store.ts';
import { SignIn } from '../session/sign-in.tsx';
import type { Client, Session } from '../wire/client.ts';
import { words } from '../words/english.ts';
import { Link } from './link.tsx';
import { path, routeOf } from './route.ts';
import { Failure, Waiting } from './states.tsx';

export interface AppProps {
  readonly client: Client;
  readonly session: SessionStore;
  readonly newKey: () => string;
}

function Apron({ session, store }: { readonly session: Session; readonly store: SessionStore }) {
  return (
    <header class="apron">
      <a class="skip" href="#content">
        {words.skipToContent}
      </a>
      <Link class="brand" to="/">
        <span class="visually-hidden">{words.product}</span>
        <StencilWord text="FLITCHBOOK" height={18} />
      </Link>
      <p class="shop-name">{session.shop.name}</p>
      <p class="person">
        {session.person.name}, {words.roles[session.person.role].toLowerCase()}
      </p>
      <button type="button" class="sign-out" onClick={() => void store.signOut()}>
        {words.signOut}
      </button>
    </header>
  );
}

/** A new page starts at its top for a keyboard and a screen reader too. */
function useFocusOnArrival(): void {
  const arrived = useRef(false);
  useEffect(() => {
    if (arrived.current) document.getElementById('content')?.focus();
    arrived.current = true;
  }, [path.value]);
}

interface PageProps extends Pick<AppProps, 'client' | 'newKey'> {
  readonly session: Session;
}

function Page({ client, newKey, session }: PageProps) {
  const route = routeOf(path.value);
  useFocusOnArrival();
  const dayId = 'dayId' in route ? route.dayId : null;
  // One store a day: the order form and the board look at the same one.
  const store = useMemo<BoardStore | null>(
    () => (dayId === null ? null : new BoardStore({ client, dayId, newKey, may: rightsOf(session) })),
    [client, dayId, newKey, session],
  );
  if (route.page === 'days') return <DaysPage client={client} />;
  if (route.page === 'board' && store) return <BoardPage store={store} />;
  if (route.page === 'new-order' && store)
    return <OrderFormPage store={store} client={client} newKey={newKey} />;
  return <Failure title={words.failures.notThereTitle} says={words.failures.notThere} />;
}

/** The whole app: the door, or the shop. */
export function App({ client, session, newKey }: AppProps) {
  const state = session.state.value;
  switch (state.at) {
    case 'looking':
      return <Waiting says="" />;
    case 'no-network':
      return (
        <main>
          <Failure
            title={words.failures.noNetworkTitle}
            says={words.failures.noNetwork}
            action={words.tryAgain}
            onAction={() => void session.look()}
          />
        </main>
      );
    case 'out':
      return <SignIn store={session} demo={state.demo} />;
    case 'in':
      return (
        <>
          <Apron session={state.session} store={session} />
          <main id="content" tabIndex={-1}>
            <Page client={client} newKey={newKey} session={state.session} />
          </main>
        </>
      );
  }
}
