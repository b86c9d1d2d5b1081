import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { words } from '../words/english.ts';
import { Failure, Waiting } from './states.tsx';

interface FetchedProps<P> {
  readonly fetch: () => Promise<ComponentType<P>>;
  readonly given: P;
  /** what to say meanwhile, and when the page cannot be fetched */
  readonly says?: {
    readonly loading: string;
    readonly noNetworkTitle: string;
    readonly noNetwork: string;
    readonly tryAgain: string;
  };
}

const usual = { ...words.failures, tryAgain: words.tryAgain };

/** Pages that are fetched when they are first opened: the door and the list of days stay light. */
export function Fetched<P extends object>({ fetch, given, says = usual }: FetchedProps<P>) {
  const [pages, setPages] = useState<{ readonly show: ComponentType<P> } | 'missing' | null>(null);
  const fetchPages = (): void => {
    setPages(null);
    fetch().then(
      (show) => setPages({ show }),
      () => setPages('missing'),
    );
  };
  useEffect(fetchPages, []);
  if (pages === null) return <Waiting says={says.loading} />;
  if (pages !== 'missing') return <pages.show {...given} />;
  return (
    <Failure title={says.noNetworkTitle} says={says.noNetwork} action={says.tryAgain} onAction={fetchPages} />
  );
}
