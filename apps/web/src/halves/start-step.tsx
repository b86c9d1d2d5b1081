import { PickOne } from '../form/fields.tsx';
import { halfWords } from '../words/customers/half-words.ts';
import { said } from '../words/customers/language.ts';
import { weightText } from '../words/measures.ts';
import type { HalfStore } from './half-store.ts';
import type { Speech } from './half-text.ts';
import { QuestionCard } from './question-card.tsx';

interface StepProps {
  readonly store: HalfStore;
  readonly speech: Speech;
}

/** How much, and from which style to set out. */
export function StartStep({ store, speech }: StepProps) {
  const words = said(halfWords);
  const draft = store.draft.value;
  const model = store.model.value;
  const day = store.basis.value;
  if (!draft || !model || typeof day !== 'object' || !('hangingMg' in day)) return null;
  const { low, high } = day.hangingMg;
  const sides = day.size === 'whole' ? 2 : 1;
  const side = (mg: number): string => weightText(mg / sides, speech.units);
  return (
    <>
      <PickOne
        name="size"
        label={words.start.size}
        value={draft.size}
        options={[
          { id: 'half', name: words.start.half },
          { id: 'whole', name: words.start.whole },
        ]}
        onPick={(size) => void store.setSize(size)}
      />
      <p class="hint">{words.start.notASize(side(low), side(high))}</p>
      <PickOne
        name="style"
        label={words.start.style}
        value={draft.style}
        options={model.takeHome.styles.map(({ id, name }) => ({ id, name: words.start.styles[id] ?? name }))}
        onPick={store.startWith}
      />
      <p class="hint">{words.start.styleSays}</p>
      {draft.size === 'whole' && (
        <PickOne
          name="apart"
          label={words.start.apart}
          value={draft.right === null ? 'alike' : 'apart'}
          options={[
            { id: 'alike', name: words.start.alike },
            { id: 'apart', name: words.start.eachItsOwn },
          ]}
          onPick={(picked) => store.setApart(picked === 'apart')}
        />
      )}
      {store.shown.value?.preview.first.map((question) => (
        <QuestionCard
          key={question.id}
          question={question}
          speech={speech}
          onOpen={() => undefined}
          onPick={(answerId) => store.answer(question, answerId)}
        />
      ))}
    </>
  );
}
