/** @jsxImportSource hono/jsx */
import { type AnimalCutList, type CutStep, type SideCutList, weightText } from '@flitchbook/plan';
import type { BenchList } from '../services/plans/cut-list.ts';

interface Shown {
  readonly weightUnit: 'lb' | 'kg';
}

/** "Thursday, 26 November 2026" */
const dateText = (date: string): string =>
  new Intl.DateTimeFormat('en-GB', { dateStyle: 'full', timeZone: 'UTC' }).format(
    new Date(`${date}T00:00:00Z`),
  );

function Step({ step }: { readonly step: CutStep }) {
  return (
    <li class="step">
      <div class="what">
        <span class="box" aria-hidden="true" />
        <b>
          {step.order}. {step.action}
        </b>
        <p>{step.detail}</p>
      </div>
      {step.pieces.length > 0 && (
        <table>
          <thead>
            <tr>
              <th scope="col">Done</th>
              <th scope="col">Piece</th>
              <th scope="col">Size</th>
              <th scope="col">For</th>
              <th scope="col">Weighed</th>
            </tr>
          </thead>
          <tbody>
            {step.pieces.map((piece) => (
              <tr>
                <td>
                  <span class="box" aria-hidden="true" />
                </td>
                <td>{piece.name}</td>
                <td>{piece.size}</td>
                <td>{piece.owner ?? 'counter'}</td>
                <td />
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {step.to !== '' && <p class="to">To: {step.to}</p>}
    </li>
  );
}

function Side({
  side,
  animal,
  shown,
}: {
  readonly side: SideCutList;
  readonly animal: AnimalCutList;
  readonly shown: Shown;
}) {
  return (
    <section class="side">
      <h2>
        {animal.name}, {side.hand} side
      </h2>
      <p class="facts">
        {weightText(side.massMg, shown)}, about {Math.round(side.minutes)} min
        {side.sharedBy === null ? '' : `, the whole side for ${side.sharedBy}`}
      </p>
      <ol>
        {side.steps.map((step) => (
          <Step step={step} />
        ))}
      </ol>
    </section>
  );
}

/** The day's cut list on paper, A4 or Letter, black on white, one side after the other; each side starts a page. */
export function CutSheet({ bench }: { readonly bench: BenchList }) {
  const { shop, list, stale } = bench;
  const title = `Cut list, ${dateText(list.date)}`;
  return (
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <title>{title}</title>
        <link rel="stylesheet" href="/api/cut-sheet.css" />
      </head>
      <body>
        <header>
          <p>{shop.name}</p>
          <h1>{title}</h1>
          {stale && (
            <p class="stale" role="alert">
              The day has changed since it was planned. Print this again before cutting.
            </p>
          )}
        </header>
        <main>
          {list.animals.length === 0 && <p>No animal is booked for this day.</p>}
          {list.animals.map((animal) => (
            <>
              {animal.sides.map((side) => (
                <Side side={side} animal={animal} shown={shop} />
              ))}
              {animal.singles && (
                <section class="side">
                  <h2>{animal.name}, pieces of the whole animal</h2>
                  <ol>
                    <Step step={animal.singles} />
                  </ol>
                </section>
              )}
            </>
          ))}
        </main>
      </body>
    </html>
  );
}
