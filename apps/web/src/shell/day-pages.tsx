import { useMemo } from 'preact/hooks';
import { BoardPage } from '../board/board-page.tsx';
import { BoardStore } from '../board/board-store.ts';
import { OrderFormPage } from '../order-form/order-form-page.tsx';
import { rightsOf } from '../session/rights.ts';
import { WatchPage } from '../watch/watch-page.tsx';
import type { Client, Session } from '../wire/client.ts';

export interface DayPagesProps {
  readonly page: 'board' | 'new-order' | 'watch';
  readonly dayId: string;
  readonly client: Client;
  readonly session: Session;
  readonly newKey: () => string;
}

/** The pages of one cutting day. They look at one store, so that what the form changed is on the board. */
export function DayPages({ page, dayId, client, session, newKey }: DayPagesProps) {
  const store = useMemo(
    () => new BoardStore({ client, dayId, newKey, may: rightsOf(session) }),
    [client, dayId, newKey, session],
  );
  if (page === 'board') return <BoardPage store={store} />;
  if (page === 'watch') return <WatchPage store={store} />;
  return <OrderFormPage store={store} client={client} newKey={newKey} />;
}
