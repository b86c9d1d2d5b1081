import { cutName } from '../coming/find-cuts.ts';
import type { OrderPromise } from '../wire/customers-client.ts';
import { dateSaid, moneysSaid, portionSaid, weightSaid, weightsSaid } from '../words/customers/amounts.ts';
import { language, said } from '../words/customers/language.ts';
import { mineWords } from '../words/customers/mine-words.ts';
import type { Units } from '../words/measures.ts';

type Line = OrderPromise['lines'][number];

interface RowProps {
  readonly line: Line;
  readonly promise: OrderPromise;
  readonly units: Units;
}

function weighedSaid({ line, promise, units }: RowProps): string {
  const words = said(mineWords);
  const packs = promise.packs.filter(({ lineId }) => lineId === line.lineId);
  if (packs.length === 0) return words.notWeighed;
  return weightSaid(
    packs.reduce((sum, { netGrams }) => sum + netGrams, 0),
    units,
  );
}

function Row(props: RowProps) {
  const words = said(mineWords);
  const { line, promise, units } = props;
  const portion = promise.order.lines.find(({ lineId }) => lineId === line.lineId)?.portion;
  const how = portion ? portionSaid(portion, units) : '';
  const count = line.byWeight ? weightSaid(line.asked, units) : words.pieces(line.asked);
  return (
    <tr>
      <th scope="row">
        {cutName(line, language.value)}
        <small>{[count, how].filter(Boolean).join(', ')}</small>
      </th>
      <td data-says={words.promised}>
        {words.about} {weightsSaid(line.expectedGrams, units)}
        <small>{moneysSaid(line.expectedMinor, promise.shop.currency)}</small>
      </td>
      <td data-says={words.scale}>{weighedSaid(props)}</td>
    </tr>
  );
}

/** What was promised beside what the scale has said since. */
export function PromiseTable({ promise, units }: Omit<RowProps, 'line'>) {
  const words = said(mineWords);
  const { lines, order, packs, unpacked } = promise;
  return (
    <section class="slip">
      <table class="promise-table">
        <thead>
          <tr>
            <th scope="col">{words.order(order.number)}</th>
            <th scope="col">{words.promised}</th>
            <th scope="col">{words.scale}</th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <Row key={line.lineId} line={line} promise={promise} units={units} />
          ))}
          {order.shares.map(({ shareId }) => (
            <tr key={shareId}>
              <th scope="row" colSpan={3}>
                {words.whole}
              </th>
            </tr>
          ))}
        </tbody>
      </table>
      {packs.length > 0 && (
        <ul class="packs-said">
          {packs.map(({ packId, name, netGrams, frozen, isGone, packedOn }) => (
            <li key={packId}>
              {[
                `${name}: ${weightSaid(netGrams, units)}`,
                words.packedOn(dateSaid(packedOn)),
                frozen && words.frozen,
                isGone && words.gone,
              ]
                .filter(Boolean)
                .join(', ')}
            </li>
          ))}
        </ul>
      )}
      {packs.length > 0 && unpacked > 0 && <p>{words.packsLeft(unpacked)}</p>}
      {order.note !== '' && (
        <details>
          <summary>{words.yourWords}</summary>
          <p class="own-words" dir="auto">
            {order.note}
          </p>
        </details>
      )}
    </section>
  );
}
