import { type Signal, useSignal } from '@preact/signals';
import type { BooksClient } from '../wire/books-client.ts';
import { booksWords } from '../words/books-words.ts';
import { words } from '../words/english.ts';

const says = booksWords.packs;

interface Batch {
  readonly runId: string;
  readonly open: readonly string[];
  readonly all: number;
}

interface LabelBatchProps {
  readonly books: BooksClient;
  readonly newKey: () => string;
  readonly picked: Signal<ReadonlySet<string>>;
}

/** Labels at the printer. What has not come out is printed again, under the same serials. */
export function LabelBatch({ books, newKey, picked }: LabelBatchProps) {
  const batch = useSignal<Batch | null>(null);
  const refusal = useSignal<string | null>(null);
  const take = async (ask: Promise<Awaited<ReturnType<BooksClient['startLabels']>>>): Promise<void> => {
    const answer = await ask;
    refusal.value = answer.ok
      ? null
      : answer.why === 'refused'
        ? answer.problem.detail
        : words.failures.noNetwork;
    if (!answer.ok) return;
    const { runId, packs } = answer.value;
    const open = packs.filter(({ isPrinted }) => !isPrinted).map(({ packId }) => packId);
    batch.value = open.length === 0 ? null : { runId, open, all: packs.length };
    if (open.length === 0) picked.value = new Set();
  };
  const at = batch.value;
  return (
    <div class="label-batch">
      <div role="alert">{refusal.value !== null && <p class="fault">{refusal.value}</p>}</div>
      {at === null && picked.value.size > 0 && (
        <button
          type="button"
          class="strong"
          onClick={() => void take(books.startLabels([...picked.value], newKey()))}
        >
          {says.print(picked.value.size)}
        </button>
      )}
      {at !== null && (
        <>
          <p>{says.batch(at.open.length, at.all)}</p>
          <p class="hint">{says.batchSays}</p>
          <span class="row-actions">
            <a
              class="button strong"
              href={`/api/label-runs/${at.runId}/labels.pdf`}
              target="_blank"
              rel="noreferrer"
            >
              {says.openPdf}
            </a>
            <a
              class="button"
              href={`/api/label-runs/${at.runId}/labels.html`}
              target="_blank"
              rel="noreferrer"
            >
              {says.openPage}
            </a>
            <button type="button" onClick={() => void take(books.confirmLabels(at.runId, at.open))}>
              {says.cameOut}
            </button>
          </span>
        </>
      )}
    </div>
  );
}
