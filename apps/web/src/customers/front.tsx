import '../look/front.css';
import '../look/front-pages.css';
import { useEffect, useMemo } from 'preact/hooks';
import { ComingPage } from '../coming/coming-page.tsx';
import { createComingStore } from '../coming/coming-store.ts';
import { useFocusOnArrival } from '../shell/arrival.ts';
import { Fetched } from '../shell/fetched.tsx';
import { goInstead, hash, path, routeOf, yours } from '../shell/route.ts';
import { Failure, Waiting } from '../shell/states.tsx';
import type { Ask } from '../wire/client.ts';
import { createCustomersClient } from '../wire/customers-client.ts';
import { frameWords } from '../words/customers/frame-words.ts';
import { keep, kept, language, languageTags, said } from '../words/customers/language.ts';
import { ByLinkPage } from './by-link-page.tsx';
import { Frame } from './frame.tsx';
import { createOutbox } from './outbox.ts';
import type { CustomersPageProps } from './page-props.ts';
import { WayInPage } from './way-in-page.tsx';

const cutPage = () => import('../cut-order/cut-page.tsx').then((page) => page.CutPage);
const ownOrderPage = () => import('../own-orders/own-order-page.tsx').then((page) => page.OwnOrderPage);
const ownOrdersPage = () => import('../own-orders/own-orders-page.tsx').then((page) => page.OwnOrdersPage);
const halfOrWholePage = () => import('../halves/half-or-whole-page.tsx').then((page) => page.HalfOrWholePage);

const keptAs = 'flitchbook.tapped';

/** What is coming is for strangers too; every other page wants to know first who is there. */
function CustomersPage(props: CustomersPageProps) {
  const words = said(frameWords);
  const route = routeOf(path.value, hash.value);
  const { at } = props.session.state.value;
  useFocusOnArrival();
  if (route.page === 'coming' || at === 'in' || at === 'out') return <KnownPage {...props} />;
  if (at === 'looking') return <Waiting says={words.loading} />;
  return (
    <Failure
      title={words.noNetworkTitle}
      says={words.noNetwork}
      action={words.tryAgain}
      onAction={() => void props.session.look()}
    />
  );
}

/** The page that an address means. A heavy page is fetched when it is opened. */
function KnownPage(props: CustomersPageProps) {
  const words = said(frameWords);
  const route = routeOf(path.value, hash.value);
  switch (route.page) {
    case 'by-link':
      return <ByLinkPage key={route.token} {...props} token={route.token} />;
    case 'way-in':
      return <WayInPage {...props} />;
    case 'half-or-whole':
      return (
        <Fetched
          key="half-or-whole"
          fetch={halfOrWholePage}
          given={{ ...props, dayId: route.dayId }}
          says={words}
        />
      );
    case 'order-cut':
      return <Fetched key="cut" fetch={cutPage} given={{ ...props, ...route }} says={words} />;
    case 'own-orders':
      return <Fetched key="orders" fetch={ownOrdersPage} given={props} says={words} />;
    case 'own-order':
      return (
        <Fetched
          key={route.orderId}
          fetch={ownOrderPage}
          given={{ ...props, orderId: route.orderId }}
          says={words}
        />
      );
    case 'days':
    case 'coming':
      return <ComingPage {...props} />;
    default:
      return <Failure title={words.notThereTitle} says={words.notThere} />;
  }
}

export interface FrontProps extends Omit<CustomersPageProps, 'client' | 'who' | 'coming' | 'outbox'> {
  readonly ask: Ask;
}

/** The shop as its customers see it. */
export function Front({ ask, ...given }: FrontProps) {
  const { client, coming, outbox } = useMemo(() => {
    const own = createCustomersClient(ask);
    const keeping = { read: () => kept(keptAs), write: (text: string | null) => keep(keptAs, text) };
    return {
      client: own,
      coming: createComingStore(own),
      outbox: createOutbox(own, keeping, given.newKey),
    };
  }, [ask]);
  const state = given.session.state.value;
  const who = state.at === 'in' ? state.session : null;
  useEffect(() => {
    document.documentElement.lang = languageTags[language.value];
    return () => {
      document.documentElement.lang = 'en';
    };
  }, [language.value]);
  const personId = who?.person.role === 'customer' ? who.person.personId : null;
  useEffect(() => {
    if (personId === null) return undefined;
    const sendKept = (): void => void outbox.sendKept(personId);
    sendKept();
    addEventListener('online', sendKept);
    return () => removeEventListener('online', sendKept);
  }, [personId, outbox]);
  // Mails are written in the language that was read when somebody was here last.
  useEffect(() => {
    if (personId !== null) void client.tellLanguage();
  }, [personId, language.value]);
  const out = outbox.state.value;
  // The form gives way to the order: the way back does not lead to a form that is sent.
  useEffect(() => {
    if (out.at !== 'held') return;
    outbox.forget();
    goInstead(yours.order(out.order.orderId));
  }, [out]);
  return (
    <Frame who={who} session={given.session}>
      <CustomersPage {...given} {...{ client, who, coming, outbox }} />
    </Frame>
  );
}
