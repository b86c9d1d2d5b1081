import type { ComponentChildren } from 'preact';
import { Link } from '../shell/link.tsx';
import { Failure, Waiting } from '../shell/states.tsx';
import type { Answer } from '../wire/client.ts';
import { booksWords } from '../words/books-words.ts';
import { words } from '../words/english.ts';
import type { PageStore } from './page-store.ts';

/** What was looked up, or why it is not there. */
export function Shown<T>({
  answer,
  onAgain,
  children,
}: {
  readonly answer: Answer<T> | null;
  readonly onAgain: () => void;
  readonly children: (value: T) => ComponentChildren;
}) {
  if (answer === null) return <Waiting says={booksWords.loading} />;
  if (answer.ok) return <>{children(answer.value)}</>;
  if (answer.why === 'refused')
    return <Failure isPart={true} title={answer.problem.title} says={answer.problem.detail} />;
  return (
    <Failure
      isPart={true}
      title={words.failures.noNetworkTitle}
      says={words.failures.noNetwork}
      action={words.tryAgain}
      onAction={onAgain}
    />
  );
}

/** The last refusal, where a screen reader hears it. */
export const Refusal = ({ store }: { readonly store: Pick<PageStore<unknown>, 'refusal'> }) => (
  <div role="alert">{store.refusal.value !== null && <p class="fault">{store.refusal.value}</p>}</div>
);

type Part = 'packs' | 'handOver' | 'closing';

interface BooksHeadProps {
  readonly dayId: string;
  readonly at: Part;
  readonly mayClose: boolean;
}

/** The way between the pages of a day. */
export function BooksHead({ dayId, at, mayClose }: BooksHeadProps) {
  const { parts } = booksWords;
  const pages: readonly (readonly [Part, string])[] = [
    ['packs', `/days/${dayId}/packs`],
    ['handOver', `/days/${dayId}/hand-over`],
    ...(mayClose ? ([['closing', `/days/${dayId}/closing`]] as const) : []),
  ];
  return (
    <nav class="books-nav" aria-label={parts.label}>
      <Link class="back" to={`/days/${dayId}`}>
        {parts.board}
      </Link>
      {pages.map(([part, to]) =>
        part === at ? (
          <span key={part} class="button here" aria-current="page">
            {parts[part]}
          </span>
        ) : (
          <Link key={part} class="button" to={to}>
            {parts[part]}
          </Link>
        ),
      )}
      <Link class="button" to="/counter">
        {parts.counter}
      </Link>
    </nav>
  );
}

interface FieldProps {
  readonly label: string;
  readonly id: string;
  readonly children: ComponentChildren;
}

export const Field = ({ label, id, children }: FieldProps) => (
  <div class="field">
    <label for={id}>{label}</label>
    {children}
  </div>
);
