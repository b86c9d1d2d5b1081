import type { ComingStore } from '../coming/coming-store.ts';
import type { SessionStore } from '../session/session-store.ts';
import type { Session } from '../wire/client.ts';
import type { CustomersClient } from '../wire/customers-client.ts';
import type { Outbox } from './outbox.ts';

/** What every page for customers is handed. */
export interface CustomersPageProps {
  readonly client: CustomersClient;
  /** who is signed in; null for a stranger */
  readonly who: Session | null;
  readonly session: SessionStore;
  readonly coming: ComingStore;
  readonly outbox: Outbox;
  readonly newKey: () => string;
  readonly nowMs: () => number;
}
