import type { CureAnswer, CureCalendar } from '@flitchbook/kitchen/curing';
import { dateText } from '../words/dates.ts';
import { words } from '../words/english.ts';

const space = '\u00a0';
const gramsText = (mg: number): string => `${(mg / 1000).toFixed(2)}${space}g`;
const ppmText = (ppb: number): string => `${(ppb / 1000).toFixed(2)}${space}ppm`;

interface FigureProps {
  readonly says: string;
  readonly figure: string;
}

const Figure = ({ says, figure }: FigureProps) => (
  <div>
    <dt>{says}</dt>
    <dd>{figure}</dd>
  </div>
);

function Figures({ answer }: { readonly answer: CureAnswer }) {
  const { cureMg, mostCureMg, add, needs } = answer;
  return (
    <dl class="cure-figures">
      {cureMg !== null && <Figure says={words.curing.dose} figure={gramsText(cureMg)} />}
      {mostCureMg !== null && <Figure says={words.curing.most} figure={gramsText(mostCureMg)} />}
      <Figure says={words.curing.nitriteIn} figure={ppmText(answer.nitritePpb)} />
      <Figure
        says={`${words.curing.nitriteIn}, ${words.curing.asIon}`}
        figure={ppmText(answer.nitriteIonPpb)}
      />
      {add && <Figure says={words.curing.addSalt} figure={gramsText(add.saltMg)} />}
      {add && <Figure says={words.curing.addSugar} figure={gramsText(add.sugarMg)} />}
      {add && <Figure says={words.curing.together} figure={gramsText(add.totalMg)} />}
      {needs.map(({ what, mg }) => (
        <Figure key={what} says={words.curing.needs} figure={gramsText(mg)} />
      ))}
    </dl>
  );
}

function Limits({ answer }: { readonly answer: CureAnswer }) {
  return (
    <section>
      <h3>{words.curing.limits}</h3>
      <ul class="cure-limits">
        {answer.judgements.map(({ verdict, says, source, standing, checkedOn }) => (
          <li key={`${source}/${says}`} class={verdict}>
            <strong>{words.curing.verdicts[verdict]}</strong>
            <p>{says}</p>
            <p class="from">
              {source} ({words.curing.dated(words.curing.standings[standing], checkedOn)})
            </p>
          </li>
        ))}
      </ul>
    </section>
  );
}

function CalendarPanel({ calendar }: { readonly calendar: CureCalendar }) {
  return (
    <section>
      <h3>{words.curing.calendar}</h3>
      <ol class="cure-stages">
        {calendar.stages.map(({ what, from, until }) => (
          <li key={what}>
            {what}: {dateText(from)} – {dateText(until)}
          </li>
        ))}
      </ol>
      <p>
        <strong>{words.curing.look(dateText(calendar.earliestReady))}</strong>
      </p>
      <p class="from">
        {calendar.source} ({words.curing.standings[calendar.standing]})
      </p>
    </section>
  );
}

interface AnswerProps {
  readonly answer: CureAnswer;
  readonly calendar: CureCalendar | null;
}

export function CuringAnswer({ answer, calendar }: AnswerProps) {
  const cautions = [...answer.cautions, ...(calendar?.cautions ?? [])];
  return (
    <section class="cure-answer" aria-labelledby="cure-answer-title">
      <h2 id="cure-answer-title">{words.curing.answer}</h2>
      <div aria-live="polite">
        <p class={`cure-outcome ${answer.outcome}`}>{words.curing.outcomes[answer.outcome]}</p>
        <Figures answer={answer} />
        <ul class="cure-remarks">
          {answer.says.map((says) => (
            <li key={says}>{says}</li>
          ))}
        </ul>
      </div>
      {calendar && <CalendarPanel calendar={calendar} />}
      <Limits answer={answer} />
      <section>
        <h3>{words.curing.cautions}</h3>
        <ul class="cure-cautions">
          {cautions.map(({ id, says, source }) => (
            <li key={id}>
              <p>{says}</p>
              <p class="from">{source}</p>
            </li>
          ))}
        </ul>
      </section>
    </section>
  );
}
