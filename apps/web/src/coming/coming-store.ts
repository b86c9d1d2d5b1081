import { signal } from '@preact/signals';
import type { Answer } from '../wire/client.ts';
import type { Coming, CustomersClient } from '../wire/customers-client.ts';

const lookAgainMs = 15_000;

/** What is coming, read again while somebody looks at it. One store for all pages: going back shows it at once. */
export function createComingStore(client: Pick<CustomersClient, 'readComing'>) {
  const coming = signal<Coming | null>(null);
  const missing = signal<Exclude<Answer<Coming>, { ok: true }> | null>(null);

  async function look(): Promise<void> {
    const answer = await client.readComing();
    missing.value = answer.ok ? null : answer;
    if (answer.ok) coming.value = answer.value;
  }

  /** @returns what ends it */
  function follow(): () => void {
    void look();
    const again = setInterval(() => {
      if (!document.hidden) void look();
    }, lookAgainMs);
    return () => clearInterval(again);
  }

  return { coming, missing, look, follow };
}

export type ComingStore = ReturnType<typeof createComingStore>;
