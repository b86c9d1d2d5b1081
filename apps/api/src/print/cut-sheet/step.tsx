/** @jsxImportSource hono/jsx */
import { type CutStep, type PackRow, packRows, type ShownIn } from '@flitchbook/plan';
import type { Child } from 'hono/jsx';

/** A square to tick with a pencil. */
const Box = () => <span class="box" aria-hidden="true" />;

const columns = ['Cut', 'Pieces', 'Each', 'From the head end', 'Goes to', 'Wrapped', 'Weight'] as const;

interface RowProps {
  readonly row: PackRow;
  /** which side, where the table has pieces of several */
  readonly from?: string | undefined;
}

export function PackLine({ row, from }: RowProps) {
  return (
    <tr>
      {from !== undefined && <td data-says="Side">{from}</td>}
      <td data-says="Cut">
        <Box />
      </td>
      <td>
        <b>{row.count} ×</b> {row.name}
      </td>
      <td data-says="Each">{row.size}</td>
      <td data-says="From the head end">{row.place === '' ? 'leaves whole' : row.place}</td>
      <td class="owner" data-says="Goes to">
        {row.owner ?? 'the counter'}
      </td>
      <td data-says="Wrapped">
        <Box />
      </td>
      <td class="weight" data-says="Weight">
        <small>about {row.weight}</small>
      </td>
    </tr>
  );
}

/** Packs in a table that repeats its head on every page and never parts a row. */
export const PackTable = ({ from, children }: { readonly from?: boolean; readonly children: Child }) => (
  <table>
    <thead>
      <tr>
        {from && <th scope="col">Side</th>}
        {columns.map((name) => (
          <th scope="col">{name}</th>
        ))}
      </tr>
    </thead>
    <tbody>{children}</tbody>
  </table>
);

interface StepProps {
  readonly step: CutStep;
  readonly shown: ShownIn;
  /** "Hog 17, left side": where a list goes from side to side */
  readonly on?: string;
}

/** One thing to do: what, how, the packs it makes, and where what comes off goes. */
export function Step({ step, shown, on }: StepProps) {
  const rows = packRows(step, shown);
  return (
    <li class="step">
      <div class="what">
        <Box />
        <b>{on ?? `${step.order}. ${step.action}`}</b>
        <p>{step.detail}</p>
      </div>
      {rows.length > 0 && (
        <PackTable>
          {rows.map((row) => (
            <PackLine row={row} />
          ))}
        </PackTable>
      )}
      {step.to !== '' && <p class="to">What comes off: {step.to}</p>}
    </li>
  );
}
