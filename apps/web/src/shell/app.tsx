import { DaysPage } from '../days/days-page.tsx';
import { StencilWord } from '../marks/stencil-word.tsx';
import type { SessionStore } from '../session/session-store.ts';
import { SignIn } from '../session/sign-in.tsx';
import type { BooksClient } from '../wire/books-client.ts';
import type { Ask, Client, Session } from '../wire/client.ts';
import { words } from '../words/english.ts';
import { useFocusOnArrival } from './arrival.ts';
import type { DayPagesProps } from './day-pages.tsx';
import { Fetched } from './fetched.tsx';
import { Link } from './link.tsx';
import { hash, isForCustomers, path, routeOf } from './route.ts';
import { Failure, Waiting } from './states.tsx';

export interface AppProps {
  readonly client: Client;
  readonly books: BooksClient;
  readonly session: SessionStore;
  /** for the pages of customers, which bring their own client */
  readonly ask: Ask;
  readonly newKey: () => string;
  readonly nowMs: () => number;
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

const dayPages = () => import('./day-pages.tsx').then(({ DayPages }) => DayPages);
const curingPage = () => import('../curing/curing-page.tsx').then((page) => page.CuringPage);
const yieldsPage = () => import('../yields/yields-page.tsx').then((page) => page.YieldsPage);
const customersFront = () => import('../customers/front.tsx').then(({ Front }) => Front);
const booksPages = () => import('../books/books-pages.tsx').then((pages) => pages.BooksPages);

interface PageProps extends Pick<AppProps, 'client' | 'books' | 'newKey'> {
  readonly session: Session;
}

function Page(props: PageProps) {
  const route = routeOf(path.value);
  useFocusOnArrival();
  switch (route.page) {
    case 'days':
      return <DaysPage client={props.client} />;
    case 'yields':
      return <Fetched key="yields" fetch={yieldsPage} given={{ units: props.session.shop }} />;
    case 'curing':
      return <Fetched key="curing" fetch={curingPage} given={{ units: props.session.shop }} />;
    case 'board':
    case 'new-order':
    case 'watch':
      return <Fetched<DayPagesProps> key="day" fetch={dayPages} given={{ ...props, ...route }} />;
    case 'counter':
      return <Fetched key="books" fetch={booksPages} given={{ ...props, page: route.page, dayId: '' }} />;
    case 'packs':
    case 'hand-over':
    case 'closing':
      return <Fetched key="books" fetch={booksPages} given={{ ...props, ...route }} />;
    default:
      return <Failure title={words.failures.notThereTitle} says={words.failures.notThere} />;
  }
}

/** The whole app: the door, or the shop. Customers have a front of their own, and see nothing else. */
export function App({ client, books, session, ask, newKey, nowMs }: AppProps) {
  const state = session.state.value;
  const isCustomer = state.at === 'in' && state.session.person.role === 'customer';
  const isFront = isCustomer || isForCustomers(routeOf(path.value, hash.value));
  if (isFront) {
    return <Fetched key="front" fetch={customersFront} given={{ ask, session, newKey, nowMs }} />;
  }
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
            <Page client={client} books={books} newKey={newKey} session={state.session} />
          </main>
        </>
      );
  }
}
