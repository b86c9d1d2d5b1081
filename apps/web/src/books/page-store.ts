import { signal } from '@preact/signals';
import type { Answer } from '../wire/client.ts';
import { words } from '../words/english.ts';

/** One thing that a page shows, and what the service said about the last change of it. */
export function createPageStore<T>(load: () => Promise<Answer<T>>) {
  const shown = signal<Answer<T> | null>(null);
  const refusal = signal<string | null>(null);
  const isBusy = signal(false);

  async function look(): Promise<void> {
    shown.value = await load();
  }

  /** Sends a change; when it went through the page is read again. @returns the answer's value, or null */
  async function send<R>(change: () => Promise<Answer<R>>): Promise<R | null> {
    isBusy.value = true;
    refusal.value = null;
    const answer = await change();
    if (answer.ok) await look();
    else refusal.value = answer.why === 'refused' ? sayProblem(answer.problem) : words.failures.noNetwork;
    isBusy.value = false;
    return answer.ok ? answer.value : null;
  }

  return { shown, refusal, isBusy, look, send };
}

export type PageStore<T> = ReturnType<typeof createPageStore<T>>;

interface Problem {
  readonly detail: string;
  readonly errors?: readonly { readonly at: string; readonly value?: unknown; readonly says: string }[];
}

/** The first field at fault with its value, after what went wrong. */
function sayProblem({ detail, errors }: Problem): string {
  const [first] = errors ?? [];
  return first ? `${detail} ${first.at} “${String(first.value)}” ${first.says}.` : detail;
}
