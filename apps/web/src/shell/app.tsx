import type { ComponentType } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { DaysPage } from '../days/days-page.tsx';
import { StencilWord } from '../marks/stencil-word.tsx';
import type { SessionStore } from '../session/session-store.ts';
import { SignIn } from '../session/sign-in.tsx';
import type { Client, Session } from '../wire/client.ts';
import { words } from '../words/english.ts';
import type { DayPagesProps } from './day-pages.tsx';
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

/** The pages of a day are fetched when a day is first opened: the door and the list of days stay light. */
function LazyDayPages(props: DayPagesProps) {
  const [pages, setPages] = useState<{ readonly show: ComponentType<DayPagesProps> } | 'missing' | null>(
    null,
  );
  const fetchPages = (): void => {
    setPages(null);
    import('./day-pages.tsx').then(
      ({ DayPages }) => setPages({ show: DayPages }),
      () => setPages('missing'),
    );
  };
  useEffect(fetchPages, []);
  if (pages === null) return <Waiting says={words.failures.loading} />;
  if (pages !== 'missing') return <pages.show {...props} />;
  return (
    <Failure
      title={words.failures.noNetworkTitle}
      says={words.failures.noNetwork}
      action={words.tryAgain}
      onAction={fetchPages}
    />
  );
}

interface PageProps extends Pick<AppProps, 'client' | 'newKey'> {
  readonly session: Session;
}

function Page(props: PageProps) {
  const route = routeOf(path.value);
  useFocusOnArrival();
  switch (route.page) {
    case 'days':
      return <DaysPage client={props.client} />;
    case 'unknown':
      return <Failure title={words.failures.notThereTitle} says={words.failures.notThere} />;
    default:
      return <LazyDayPages {...props} {...route} />;
  }
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
