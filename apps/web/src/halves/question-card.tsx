import type { QuestionShown } from '@flitchbook/carcass';
import { halfWords } from '../words/customers/half-words.ts';
import { said } from '../words/customers/language.ts';
import { answerName, cutList, lineText, questionName, type Speech, solid } from './half-text.ts';

type Answer = QuestionShown['answers'][number];

interface EffectProps {
  readonly answer: Answer;
  readonly speech: Speech;
}

/** What an answer gives, takes away and alone gives. */
function Effect({ answer, speech }: EffectProps) {
  const words = said(halfWords);
  if (answer.lacks.length > 0) {
    const missing = answer.lacks.map((fact) => words.facts[fact]).join(', ');
    return (
      <span class="lacks">
        {words.lacks} {missing}.
      </span>
    );
  }
  const gives = solid(answer.gives);
  return (
    <>
      <span class="gives">
        <b>{words.gives}</b>{' '}
        {gives.length === 0 ? words.nothingWhole : gives.map((line) => lineText(line, speech)).join('; ')}
      </span>
      {answer.rulesOut.length > 0 && (
        <span class="takes">
          <b>{words.takesAway}</b> {cutList(answer.rulesOut, speech)}
        </span>
      )}
      {answer.onlySo.length > 0 && (
        <span class="only">
          <b>{words.onlySo}</b> {cutList(answer.onlySo, speech)}
        </span>
      )}
    </>
  );
}

interface CardProps {
  readonly question: QuestionShown;
  readonly speech: Speech;
  readonly onPick: (answerId: string) => void;
  readonly onOpen: () => void;
}

/** A choice: what stands, and under it every other answer with what it comes to. */
export function QuestionCard({ question, speech, onPick, onOpen }: CardProps) {
  const words = said(halfWords);
  const { units } = speech;
  const standing = question.answers.find(({ id }) => id === question.standing);
  const name = questionName(question);
  const key = `${question.about}-${question.id}`;
  const option = (answer: Answer) => (
    <label key={answer.id} class={answer.lacks.length > 0 ? 'option cannot' : 'option'}>
      <input
        type="radio"
        name={key}
        checked={answer.id === question.standing}
        disabled={answer.lacks.length > 0}
        onChange={() => onPick(answer.id)}
      />
      <span class="option-says">
        <span class="option-name">{answerName(question, answer, units)}</span>
        <Effect answer={answer} speech={speech} />
      </span>
    </label>
  );
  const usual = question.answers.filter(({ rare }) => !rare);
  const rare = question.answers.filter((answer) => answer.rare);
  return (
    <details class="choice" onToggle={(event) => event.currentTarget.open && onOpen()}>
      <summary>
        <span class="choice-name">{name}</span>
        <span class="choice-stands">{standing && answerName(question, standing, units)}</span>
        <span class="choice-change">{words.change}</span>
      </summary>
      <fieldset>
        <legend class="visually-hidden">{name}</legend>
        {usual.map(option)}
        {rare.length > 0 && <p class="rare">{words.rare}</p>}
        {rare.map(option)}
      </fieldset>
    </details>
  );
}
