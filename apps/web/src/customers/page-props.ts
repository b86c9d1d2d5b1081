import type { SessionStore } from '../session/session-store.ts';
import type { Session } from '../wire/client.ts';
import type { CustomersClient } from '../wire/customers-client.ts';

/** What every page for customers is handed. */
export interface CustomersPageProps {
  readonly client: CustomersClient;
  /** who is signed in; null for a stranger */
  readonly who: Session | null;
  readonly session: SessionStore;
  readonly newKey: () => string;
  readonly nowMs: () => number;
}
