import '../look/front.css';
import { useEffect, useMemo } from 'preact/hooks';
import { useFocusOnArrival } from '../shell/arrival.ts';
import { Fetched } from '../shell/fetched.tsx';
import { hash, path, routeOf } from '../shell/route.ts';
import { Failure } from '../shell/states.tsx';
import type { Ask } from '../wire/client.ts';
import { createCustomersClient } from '../wire/customers-client.ts';
import { frameWords } from '../words/customers/frame-words.ts';
import { language, languageTags, said } from '../words/customers/language.ts';
import { ByLinkPage } from './by-link-page.tsx';
import { Frame } from './frame.tsx';
import { OwnOrdersPage } from './own-orders-page.tsx';
import type { CustomersPageProps } from './page-props.ts';
import { WayInPage } from './way-in-page.tsx';

const halfOrWholePage = () => import('../halves/half-or-whole-page.tsx').then((page) => page.HalfOrWholePage);

/** The page that an address means. A heavy page is fetched when it is opened. */
function CustomersPage(props: CustomersPageProps) {
  const words = said(frameWords);
  const route = routeOf(path.value, hash.value);
  useFocusOnArrival();
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
    case 'days':
    case 'coming':
    case 'own-orders':
      return <OwnOrdersPage {...props} />;
    default:
      return <Failure title={words.notThereTitle} says={words.notThere} />;
  }
}

export interface FrontProps extends Omit<CustomersPageProps, 'client' | 'who'> {
  readonly ask: Ask;
}

/** The shop as its customers see it. */
export function Front({ ask, ...given }: FrontProps) {
  const client = useMemo(() => createCustomersClient(ask), [ask]);
  const state = given.session.state.value;
  const who = state.at === 'in' ? state.session : null;
  useEffect(() => {
    document.documentElement.lang = languageTags[language.value];
    return () => {
      document.documentElement.lang = 'en';
    };
  }, [language.value]);
  return (
    <Frame who={who} session={given.session}>
      <CustomersPage {...given} client={client} who={who} />
    </Frame>
  );
}
