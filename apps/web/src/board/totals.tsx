import { words } from '../words/english.ts';
import { lengthText, moneyText, type Units, weightText } from '../words/measures.ts';
import type { BoardView } from './board-model.ts';
import type { Assurance } from './proof-model.ts';
import type { LeftOver, Totals } from './totals-model.ts';

function TrimTable({ totals, units }: { readonly totals: Totals; readonly units: Units }) {
  const anyOrdered = totals.bulks.some(({ orderedMg }) => orderedMg > 0);
  const anyOwned = totals.bulks.some(({ ownersMg }) => ownersMg > 0);
  const cell = (mg: number): string => (mg > 0 ? weightText(mg, units) : '–');
  return (
    <table class="figures">
      <caption>{words.left.trimTitle}</caption>
      <thead>
        <tr>
          <th scope="col">{words.left.kind}</th>
          <th scope="col">{words.left.shop}</th>
          {anyOrdered && <th scope="col">{words.left.ordered}</th>}
          {anyOwned && <th scope="col">{words.left.owners}</th>}
        </tr>
      </thead>
      <tbody>
        {totals.bulks.map(({ bulkId, name, shopMg, orderedMg, ownersMg }) => (
          <tr key={bulkId}>
            <th scope="row">{name}</th>
            <td>{cell(shopMg)}</td>
            {anyOrdered && <td>{cell(orderedMg)}</td>}
            {anyOwned && <td>{cell(ownersMg)}</td>}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function LeftRows({ left, units }: { readonly left: readonly LeftOver[]; readonly units: Units }) {
  return left.map(({ id, name, kind, count, lengthUm, massMg }) => (
    <tr key={`${kind}/${id}`}>
      <th scope="row">{name}</th>
      <td>{count}</td>
      <td>{kind === 'stretch' ? lengthText(lengthUm, units) : '–'}</td>
      <td>{weightText(massMg, units)}</td>
    </tr>
  ));
}

function CounterTable({ totals, units }: { readonly totals: Totals; readonly units: Units }) {
  const { left, offcutMg } = totals;
  if (left.length === 0) return <p class="empty">{words.left.nothing}</p>;
  return (
    <table class="figures">
      <caption>{words.left.counterTitle}</caption>
      <thead>
        <tr>
          <th scope="col">{words.left.what}</th>
          <th scope="col">{words.left.number}</th>
          <th scope="col">{words.left.length}</th>
          <th scope="col">{words.left.weight}</th>
        </tr>
      </thead>
      <tbody>
        <LeftRows left={left.filter(({ kind }) => kind === 'stretch')} units={units} />
      </tbody>
      <tbody>
        <LeftRows left={left.filter(({ kind }) => kind === 'item')} units={units} />
      </tbody>
      {offcutMg > 0 && (
        <tbody>
          <tr>
            <th scope="row">{words.left.offcuts}</th>
            <td>–</td>
            <td>–</td>
            <td>{weightText(offcutMg, units)}</td>
          </tr>
        </tbody>
      )}
    </table>
  );
}

/** The proof in plain words, the most important first. */
export function sayAssurance(assurance: Assurance, currency: string): string[] {
  if (assurance.sure === 'unproven') return [words.proof.unproven];
  const { sure, promisedMore, wishedMore, restMore, gapPercent, seconds } = assurance;
  const head = {
    proven: words.proof.provenLong,
    nearly: words.proof.nearly(gapPercent),
    'ran-out': words.proof.ranOut(seconds),
  }[sure];
  if (sure === 'proven') return [head];
  return [
    head,
    ...(promisedMore > 0 ? [words.proof.promisedMore(moneyText(promisedMore, currency))] : []),
    ...(wishedMore > 0 ? [words.proof.wishedMore(moneyText(wishedMore, currency))] : []),
    ...(restMore > 0 ? [words.proof.restMore(moneyText(restMore, currency))] : []),
  ];
}

function ProofBox({ view }: { readonly view: BoardView }) {
  const { currency } = view.board.shop;
  const goals = view.plan?.proof?.goals;
  return (
    <section class="proof" aria-labelledby="proof-title">
      <h3 id="proof-title">{words.left.proofTitle}</h3>
      {sayAssurance(view.assurance, currency).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {goals && (
        <dl class="goals">
          {(['promised', 'wished', 'rest'] as const).map((goal) => (
            <div key={goal}>
              <dt>{words.left.goals[goal]}</dt>
              <dd>{moneyText(goals[goal], currency)}</dd>
            </div>
          ))}
        </dl>
      )}
    </section>
  );
}

/** What the orders leave: trim and fat by kind, meat for the counter, and how sure the plan is. */
export function TotalsSection({ view }: { readonly view: BoardView }) {
  if (!view.totals) return null;
  const units = view.board.shop;
  return (
    <section class="totals" aria-labelledby="left-title">
      <header class="column-head">
        <h2 id="left-title">{words.left.title}</h2>
      </header>
      <div class="totals-columns">
        <CounterTable totals={view.totals} units={units} />
        <div class="stack">
          <TrimTable totals={view.totals} units={units} />
          <ProofBox view={view} />
        </div>
      </div>
    </section>
  );
}
