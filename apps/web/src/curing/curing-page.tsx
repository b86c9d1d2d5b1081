import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { words } from '../words/english.ts';
import type { Units } from '../words/measures.ts';
import { CuringAnswer } from './curing-answer.tsx';
import { CuringForm } from './curing-form.tsx';
import { firstDraft, viewOf } from './curing-model.ts';

/** Reckons a cure as it is typed. Nothing is kept. */
export function CuringPage({ units }: { readonly units: Units }) {
  const draft = useSignal(firstDraft);
  useEffect(() => {
    document.title = words.curing.title;
  }, []);
  const { answer, calendar, faults } = viewOf(draft.value, units.lengthUnit, words.curing.badThickness);
  return (
    <div class="curing">
      <h1>{words.curing.title}</h1>
      <p>{words.curing.says}</p>
      <div class="curing-bench">
        <CuringForm
          draft={draft.value}
          faults={faults}
          lengthUnit={units.lengthUnit}
          onChange={(next) => {
            draft.value = next;
          }}
        />
        {answer && <CuringAnswer answer={answer} calendar={calendar} />}
      </div>
    </div>
  );
}
