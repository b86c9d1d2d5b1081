/** @jsxImportSource hono/jsx */
import {
  type AnimalCutList,
  byPerson,
  byStation,
  type CutList,
  type PersonList,
  type ShownIn,
  type SideCutList,
  weightText,
} from '@flitchbook/plan';
import { PackLine, PackTable, Step } from './step.tsx';

interface ListProps {
  readonly list: CutList;
  readonly shown: ShownIn;
}

const sideName = (animal: string, hand: 'left' | 'right' | null): string =>
  hand === null ? `${animal}, whole animal` : `${animal}, ${hand} side`;

function Side({
  side,
  animal,
  shown,
}: {
  readonly side: SideCutList;
  readonly animal: AnimalCutList;
  readonly shown: ShownIn;
}) {
  return (
    <section class="part">
      <h2>{sideName(animal.name, side.hand)}</h2>
      <p class="facts">
        {weightText(side.massMg, shown)}, about {Math.round(side.minutes)} min
        {side.sharedBy === null ? '' : `, the whole side for ${side.sharedBy}`}
      </p>
      <ol>
        {side.steps.map((step) => (
          <Step step={step} shown={shown} />
        ))}
      </ol>
    </section>
  );
}

/** One side after the other, each from a new page, in the order of the bench. */
export const SideBySide = ({ list, shown }: ListProps) => (
  <>
    {list.animals.map((animal) => (
      <>
        {animal.singles && (
          <section class="part">
            <h2>{animal.name}, pieces of the whole animal</h2>
            <ol>
              <Step step={animal.singles} shown={shown} />
            </ol>
          </section>
        )}
        {animal.sides.map((side) => (
          <Side side={side} animal={animal} shown={shown} />
        ))}
      </>
    ))}
  </>
);

/** One task after the other, on every side that has it: for benches at which each does one thing. */
export const StationByStation = ({ list, shown }: ListProps) => (
  <>
    {byStation(list).map(({ action, steps }) => (
      <section class="part together">
        <h2>{action}</h2>
        <ol>
          {steps.map(({ animal, hand, step }) => (
            <Step step={step} shown={shown} on={sideName(animal, hand)} />
          ))}
        </ol>
      </section>
    ))}
  </>
);

function Person({ person: { owner, rows } }: { readonly person: PersonList }) {
  return (
    <section class="part together">
      <h2>{owner ?? 'The counter'}</h2>
      <p class="facts">{rows.length === 1 ? 'One pack' : `${rows.length} packs`}</p>
      <PackTable from={true}>
        {rows.map((row) => (
          <PackLine row={row} from={sideName(row.animal, row.hand)} />
        ))}
      </PackTable>
    </section>
  );
}

/** What each customer has, the counter last: for whoever lays out and wraps. */
export const PersonByPerson = ({ list, shown }: ListProps) => (
  <>
    {byPerson(list, shown).map((person) => (
      <Person person={person} />
    ))}
  </>
);
