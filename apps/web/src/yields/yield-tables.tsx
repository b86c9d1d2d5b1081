import { words } from '../words/english.ts';
import { type Units, weightText } from '../words/measures.ts';
import type { ShownRow, ShownYields } from './yields-model.ts';

function Chain({ yields, units }: { readonly yields: ShownYields; readonly units: Units }) {
  return (
    <ol class="yield-chain">
      {yields.chain.map(({ stage, weighed, grams, loses, lowMg, highMg }) => (
        <li key={stage}>
          <strong>{words.yields.steps[stage]}</strong> {weightText(grams.mean * 1000, units)}
          {!weighed && grams.sd > 0 && (
            <span> ({words.yields.range(weightText(lowMg, units), weightText(highMg, units))})</span>
          )}
          {loses !== '' && <span class="loses"> {words.yields.off(loses)}</span>}
        </li>
      ))}
    </ol>
  );
}

function Row({ row, units }: { readonly row: ShownRow; readonly units: Units }) {
  return (
    <tr class={row.learned === null ? '' : 'learned-row'}>
      <th scope="row">
        <span style={{ paddingInlineStart: `${row.depth * 14}px` }}>{row.name}</span>
      </th>
      <td>{row.percent.toFixed(1)} %</td>
      <td>{weightText(row.meanMg, units)}</td>
      <td>{weightText(row.leastMg, units)}</td>
      <td class="from">{row.learned ?? row.from}</td>
    </tr>
  );
}

function Homes({ yields, units }: { readonly yields: ShownYields; readonly units: Units }) {
  return (
    <ul class="yield-homes">
      {yields.homes.map(({ style, boxed, percent, declined, servings }) => (
        <li key={style.id}>
          <h3>{style.name}</h3>
          <p>{style.says}</p>
          <p>
            {words.yields.boxed(
              weightText(boxed.low, units),
              weightText(boxed.high, units),
              Math.round(percent.low),
              Math.round(percent.high),
            )}
            {servings.high > 0 && ` ${words.yields.servings(servings.low, servings.high)}`}
          </p>
          {declined.length > 0 && (
            <p class="loses">
              {words.yields.stays(
                declined.map(({ name, massMg }) => `${name} ${weightText(massMg.mean, units)}`).join(', '),
              )}
            </p>
          )}
        </li>
      ))}
    </ul>
  );
}

/** The way to one side, its tree with where each figure comes from, and the boxes. */
export function YieldTables({ yields, units }: { readonly yields: ShownYields; readonly units: Units }) {
  const ribs = yields.ribs.map(({ ribs: count, chance }) =>
    words.yields.ribChance(count, Math.round(100 * chance)),
  );
  return (
    <>
      {yields.warnings.map((says) => (
        <p key={says} class="yield-warning" role="status">
          {words.yields.lookAgain(says)}
        </p>
      ))}
      <section aria-labelledby="way-title">
        <h2 id="way-title">{words.yields.way}</h2>
        <Chain yields={yields} units={units} />
      </section>
      <div class="yield-part">
        <h2 id="tree-title">{words.yields.tree}</h2>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard (WCAG 2.1.1) */}
        <section class="yield-scroll" tabIndex={0} aria-labelledby="tree-title">
          <table class="yield-tree">
            <thead>
              <tr>
                <th scope="col">{words.yields.part}</th>
                <th scope="col">{words.yields.share}</th>
                <th scope="col">{words.yields.mean}</th>
                <th scope="col">{words.yields.least}</th>
                <th scope="col">{words.yields.from}</th>
              </tr>
            </thead>
            <tbody>
              {yields.rows.map((row, at) => (
                <Row key={`${at}/${row.id}`} row={row} units={units} />
              ))}
            </tbody>
          </table>
        </section>
        <p>{words.yields.ribs(ribs.join(', '))}</p>
      </div>
      <section aria-labelledby="homes-title">
        <h2 id="homes-title">{words.yields.home}</h2>
        <Homes yields={yields} units={units} />
      </section>
    </>
  );
}
