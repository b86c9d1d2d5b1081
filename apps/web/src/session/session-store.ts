import { signal } from '@preact/signals';
import type { Client, DemoSignIn, Session } from '../wire/client.ts';

export type SessionState =
  | { readonly at: 'looking' | 'no-network' }
  | { readonly at: 'out'; readonly demo: readonly DemoSignIn[] }
  | { readonly at: 'in'; readonly session: Session };

/** Who is at the screen. */
export function createSessionStore(client: Client) {
  const state = signal<SessionState>({ at: 'looking' });
  const isGoing = signal(false);
  /** why the last try failed, in the service's words */
  const refusal = signal<string | null>(null);

  async function showDoor(): Promise<void> {
    const answer = await client.readDemoSignIns();
    state.value = { at: 'out', demo: answer.ok ? answer.value.signIns : [] };
  }

  async function look(): Promise<void> {
    state.value = { at: 'looking' };
    const answer = await client.readSession();
    if (answer.ok) state.value = { at: 'in', session: answer.value };
    else if (answer.why === 'refused') await showDoor();
    else state.value = { at: 'no-network' };
  }

  /** @param offline what to say when the service cannot be reached */
  async function signIn(email: string, password: string, offline: string): Promise<void> {
    isGoing.value = true;
    refusal.value = null;
    const answer = await client.signIn(email, password);
    isGoing.value = false;
    if (answer.ok) state.value = { at: 'in', session: answer.value };
    else refusal.value = answer.why === 'refused' ? answer.problem.detail : offline;
  }

  async function signOut(): Promise<void> {
    await client.signOut();
    await look();
  }

  return { state, isGoing, refusal, look, signIn, signOut };
}

export type SessionStore = ReturnType<typeof createSessionStore>;
