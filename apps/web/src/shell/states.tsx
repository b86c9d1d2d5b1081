interface FailureProps {
  readonly title: string;
  readonly says: string;
  readonly action?: string;
  readonly onAction?: () => void;
}

/** Nothing to show, why, and the way on. */
export function Failure({ title, says, action, onAction }: FailureProps) {
  return (
    <section class="state">
      <h2>{title}</h2>
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
