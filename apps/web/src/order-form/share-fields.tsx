import type { Species } from '@flitchbook/carcass';
import { Field, PickOne, Select } from '../form/fields.tsx';
import { words } from '../words/english.ts';
import { portionText, type Units } from '../words/measures.ts';
import { answer, answerOf, noInstructions, questionsOf } from './instructions-model.ts';
import type { ShareDraft } from './order-draft.ts';
import type { OrderFormStore } from './order-form-store.ts';

interface ShareFieldsProps {
  readonly species: Species;
  readonly units: Units;
  readonly store: OrderFormStore;
}

function Instructions({ share, species, units, store }: ShareFieldsProps & { readonly share: ShareDraft }) {
  const say = (portion: Parameters<typeof portionText>[0]): string => portionText(portion, units);
  const questions = questionsOf(species, share.instructions, say);
  return (
    <fieldset class="instructions">
      <legend>{words.form.instructions}</legend>
      <div class="field-grid">
        {questions.map((question) => {
          const id = `ask-${question.about}-${question.id}`;
          const label = question.about === 'portions' ? words.form.portionOf(question.name) : question.name;
          return (
            <Field key={id} id={id} label={label}>
              <Select
                id={id}
                value={answerOf(share.instructions, question)}
                onChange={(value) => {
                  const instructions = answer(species, share.instructions, question, value, say);
                  store.change({ share: { ...share, instructions } });
                }}
              >
                <option value="">
                  {question.about === 'portions' ? words.form.leftWhole : words.form.usualWay}
                </option>
                {question.answers.map((each) => (
                  <option key={each.id} value={each.id}>
                    {each.name}
                  </option>
                ))}
              </Select>
            </Field>
          );
        })}
      </div>
    </fieldset>
  );
}

/** A half or whole animal for one customer, with the questions of a cutting-instruction sheet. */
export function ShareFields({ species, units, store }: ShareFieldsProps) {
  const { share } = store.draft.value;
  if (share === null) {
    return (
      <button
        type="button"
        onClick={() =>
          store.change({ share: { size: 'half', rank: 'promised', instructions: noInstructions } })
        }
      >
        {words.form.addShare}
      </button>
    );
  }
  const set = (part: Partial<ShareDraft>): void => store.change({ share: { ...share, ...part } });
  return (
    <fieldset class="line-fields">
      <legend>{words.form.share}</legend>
      <PickOne
        name="share-size"
        label={words.form.size}
        value={share.size}
        options={(['half', 'whole'] as const).map((id) => ({ id, name: words.form.sizes[id] }))}
        onPick={(size) => set({ size })}
      />
      <PickOne
        name="share-rank"
        label={words.form.rank}
        value={share.rank}
        options={[
          { id: 'promised', name: words.form.promisedSays },
          { id: 'wished', name: words.form.wishedSays },
        ]}
        onPick={(rank) => set({ rank })}
      />
      <Instructions share={share} species={species} units={units} store={store} />
      <button type="button" class="quiet" onClick={() => store.change({ share: null })}>
        {words.form.removeShare}
      </button>
    </fieldset>
  );
}
