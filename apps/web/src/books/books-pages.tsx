import { ClosingPage } from './closing-page.tsx';
import { CounterPage } from './counter-page.tsx';
import { HandOverPage } from './hand-over-page.tsx';
import type { BooksPageProps } from './packs-page.tsx';
import { PacksPage } from './packs-page.tsx';

export interface BooksRouteProps extends BooksPageProps {
  readonly page: 'packs' | 'hand-over' | 'closing' | 'counter';
  readonly dayId: string;
}

/** What follows the cutting. */
export function BooksPages({ page, dayId, ...props }: BooksRouteProps) {
  switch (page) {
    case 'packs':
      return <PacksPage dayId={dayId} {...props} />;
    case 'hand-over':
      return <HandOverPage dayId={dayId} {...props} />;
    case 'closing':
      return <ClosingPage dayId={dayId} {...props} />;
    case 'counter':
      return <CounterPage {...props} />;
  }
}
