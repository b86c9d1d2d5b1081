/** @jsxImportSource hono/jsx */
import type { BenchList } from '../../services/plans/cut-list.ts';
import { PersonByPerson, SideBySide, StationByStation } from './arrangements.tsx';

export const arrangements = ['side', 'station', 'person'] as const;
type Arrangement = (typeof arrangements)[number];

export interface SheetWish {
  readonly by: Arrangement;
  readonly isLarge: boolean;
  /** what was asked for and is not known */
  readonly unknown: string | null;
}

const lists = { side: SideBySide, station: StationByStation, person: PersonByPerson };
const names = { side: 'By side', station: 'By station', person: 'By person' };

/** "Thursday, 26 November 2026" */
const dateText = (date: string): string =>
  new Intl.DateTimeFormat('en-GB', { dateStyle: 'full', timeZone: 'UTC' }).format(
    new Date(`${date}T00:00:00Z`),
  );

const address = (by: Arrangement, isLarge: boolean): string => `?by=${by}${isLarge ? '&print=large' : ''}`;

/** Ways to look at the list; not on paper. */
function Ways({ dayId, wish: { by, isLarge } }: { readonly dayId: string; readonly wish: SheetWish }) {
  return (
    <nav aria-label="Ways to look at the list">
      <a href={`/days/${dayId}`}>Board</a>
      {arrangements.map((way) => (
        <a href={address(way, isLarge)} aria-current={way === by ? 'page' : undefined}>
          {names[way]}
        </a>
      ))}
      <a href={address(by, !isLarge)}>{isLarge ? 'Usual print' : 'Large print'}</a>
    </nav>
  );
}

const Notes = ({ notes }: Pick<BenchList, 'notes'>) => (
  <section class="notes">
    <h2>What customers wrote</h2>
    <ul>
      {notes.map(({ number, owner, note }) => (
        <li>
          <b>
            No. {number}, {owner}:
          </b>{' '}
          {note}
        </li>
      ))}
    </ul>
  </section>
);

/** The day's cut list, on a screen as on paper, A4 or Letter, black on white. */
export function CutSheet({ bench, wish }: { readonly bench: BenchList; readonly wish: SheetWish }) {
  const { shop, list, stale, notes } = bench;
  const title = `Cut list, ${dateText(list.date)}`;
  const Arranged = lists[wish.by];
  return (
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <title>{title}</title>
        <link rel="stylesheet" href="/api/cut-sheet.css" />
      </head>
      <body class={wish.isLarge ? 'large' : ''}>
        <header>
          <Ways dayId={list.dayId} wish={wish} />
          <p>{shop.name}</p>
          <h1>{title}</h1>
          {wish.unknown !== null && (
            <p class="stale" role="alert">
              There is no list “{wish.unknown}”: by side, by station and by person there is.
            </p>
          )}
          {stale && (
            <p class="stale" role="alert">
              The day has changed since it was planned. Print this again before cutting.
            </p>
          )}
        </header>
        <main>
          {list.animals.length === 0 && <p>No animal is booked for this day.</p>}
          {notes.length > 0 && <Notes notes={notes} />}
          <Arranged list={list} shown={shop} />
        </main>
      </body>
    </html>
  );
}
