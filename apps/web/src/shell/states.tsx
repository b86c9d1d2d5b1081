interface FailureProps {
  readonly title: string;
  readonly says: string;
  readonly action?: string;
  readonly onAction?: () => void;
  /** it is part of a page that has a heading of its own */
  readonly isPart?: boolean;
}

/** Nothing to show, why, and the way on. */
export function Failure({ title, says, action, onAction, isPart = false }: FailureProps) {
  const Heading = isPart ? 'h2' : 'h1';
  return (
    <section class="state">
      <Heading>{title}</Heading>
      <p>{says}</p>
      {action !== undefined && onAction && (
        <button type="button" class="strong" onClick={onAction}>
          {action}
        </button>
      )}
    </section>
  );
}

export function Waiting({ says }: { readonly says: string }) {
  return (
    <section class="state waiting" role="status">
      <p>{says}</p>
    </section>
  );
}
