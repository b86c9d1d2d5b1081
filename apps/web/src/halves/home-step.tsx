import type { SlaughterFact } from '@flitchbook/carcass';
import { halfWords } from '../words/customers/half-words.ts';
import { said } from '../words/customers/language.ts';
import type { HalfStore } from './half-store.ts';
import { type Speech, thingName, weightRange } from './half-text.ts';

interface StepProps {
  readonly store: HalfStore;
  readonly speech: Speech;
}

const asked: readonly SlaughterFact[] = ['skin-on', 'head', 'feet', 'organs'];

/** Where trim, fat, bones, feet and the rest go. */
export function HomeStep({ store, speech }: StepProps) {
  const words = said(halfWords);
  const draft = store.draft.value;
  const model = store.model.value;
  const day = store.basis.value;
  if (!draft || !model || typeof day !== 'object' || !('side' in day)) return null;
  // What any style leaves behind may be left, and all loose meat.
  const leavable = new Set(model.takeHome.styles.flatMap(({ declines }) => declines));
  const rows = new Map(
    (store.seen.value?.sides ?? [])
      .flatMap(({ preview }) => [...preview.steps.flatMap(({ gives }) => gives), ...preview.stays])
      .filter(
        ({ kind, id, highMg }) => highMg > 0 && (leavable.has(id) || (kind === 'bulk' && id === 'trim')),
      )
      .map((line) => [line.id, line] as const),
  );
  const preview = store.seen.value?.sides[0]?.preview;
  const whole = [...(preview?.home.lines ?? []), ...(preview?.home.declined ?? [])];
  const without = asked.filter((fact) => !day.side.facts.includes(fact)).map((fact) => words.facts[fact]);
  return (
    <>
      <fieldset class="goes-home">
        <legend>{words.home.question}</legend>
        {[...rows.values()].map(({ kind, id, name }) => {
          const mean = whole.find((each) => each.kind === kind && each.id === id)?.massMg.mean ?? 0;
          return (
            <label key={id} class="tick">
              <input
                type="checkbox"
                checked={!draft.leaves.includes(id)}
                onChange={(event) => store.setLeft(id, !event.currentTarget.checked)}
              />
              <span>
                {thingName(id, name)}{' '}
                <span class="soft">
                  {words.counts.about} {weightRange(mean, mean, speech.units)}
                </span>
              </span>
            </label>
          );
        })}
      </fieldset>
      <p class="hint">{words.home.says}</p>
      <p class="hint">{words.home.trim}</p>
      <p class="hint">{words.home.singles}</p>
      {without.length > 0 && <p class="caution">{words.home.without(without.join(', '))}</p>}
    </>
  );
}
