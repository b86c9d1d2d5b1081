import { yieldModelOf, yieldSpecies } from '@flitchbook/carcass';
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { Field, PickOne, Select, TextInput } from '../form/fields.tsx';
import { words } from '../words/english.ts';
import type { Units } from '../words/measures.ts';
import { LearnedPanel } from './learned-panel.tsx';
import { YieldTables } from './yield-tables.tsx';
import { answerDraft, dressingOf, firstDraft, type LearnedFrom, type YieldDraft } from './yields-model.ts';

interface FormProps {
  readonly draft: YieldDraft;
  readonly faults: Readonly<Record<string, string>>;
  readonly onChange: (draft: YieldDraft) => void;
}

function DraftForm({ draft, faults, onChange }: FormProps) {
  const model = yieldModelOf(draft.speciesId);
  const set = (changes: Partial<YieldDraft>): void => onChange({ ...draft, ...changes });
  return (
    <form class="yield-form" onSubmit={(event) => event.preventDefault()}>
      <Field id="species" label={words.yields.species} fault={faults['species']}>
        <Select
          id="species"
          value={draft.speciesId}
          onChange={(speciesId) => set({ speciesId, dressing: dressingOf(speciesId), fat: '' })}
        >
          {yieldSpecies.map((id) => (
            <option key={id} value={id}>
              {yieldModelOf(id)?.species.name ?? id}
            </option>
          ))}
        </Select>
      </Field>
      <Field id="weight" label={words.yields.weight(draft.unit)} fault={faults['weight']}>
        <TextInput
          id="weight"
          decimal={true}
          value={draft.weight}
          fault={faults['weight']}
          onChange={(weight) => set({ weight })}
        />
      </Field>
      <PickOne
        name="unit"
        label={words.yields.unit}
        value={draft.unit}
        options={[
          { id: 'lb', name: 'lb' },
          { id: 'kg', name: 'kg' },
        ]}
        onPick={(unit) => set({ unit })}
      />
      <PickOne
        name="stage"
        label={words.yields.stage}
        value={draft.stage}
        options={(['live', 'hot', 'cold'] as const).map((id) => ({ id, name: words.yields.stages[id] }))}
        onPick={(stage) => set({ stage })}
      />
      {model && model.yields.dressing.length > 0 && (
        <fieldset class="dressing">
          <legend>{words.yields.hangsWith}</legend>
          {model.yields.dressing.map(({ id, name }) => (
            <label key={id}>
              <input
                type="checkbox"
                checked={draft.dressing[id] ?? false}
                onChange={(event) =>
                  set({ dressing: { ...draft.dressing, [id]: event.currentTarget.checked } })
                }
              />
              <span>{name}</span>
            </label>
          ))}
        </fieldset>
      )}
      {model?.yields.lastRibFatMm && (
        <Field id="fat" label={words.yields.fat} fault={faults['fat']}>
          <TextInput
            id="fat"
            decimal={true}
            value={draft.fat}
            fault={faults['fat']}
            onChange={(fat) => set({ fat })}
          />
        </Field>
      )}
    </form>
  );
}

/** What an animal gives, how sure that is, and what the shop has learned of its farms. */
export function YieldsPage({ units }: { readonly units: Units }) {
  const draft = useSignal(firstDraft(units.weightUnit));
  const from = useSignal<LearnedFrom | null>(null);
  const farm = useSignal<string | null>(null);
  useEffect(() => {
    document.title = words.yields.title;
  }, []);
  const taught = from.value && 'learned' in from.value ? from.value : null;
  const fits = taught?.speciesId === draft.value.speciesId ? taught.learned : null;
  const figures = fits && (fits.farms.find((entry) => entry.farm === farm.value) ?? fits.shop);
  const answer = answerDraft(draft.value, figures);
  const faults =
    'faults' in answer ? Object.fromEntries(answer.faults.map(({ at, says }) => [at, says])) : {};
  return (
    <div class="yields">
      <h1>{words.yields.title}</h1>
      <p class="form-day">{words.yields.says}</p>
      <DraftForm
        draft={draft.value}
        faults={faults}
        onChange={(changed) => {
          draft.value = changed;
        }}
      />
      <LearnedPanel
        from={from.value}
        figures={figures}
        onFile={(read) => {
          from.value = read;
          farm.value = 'learned' in read ? (read.learned.farms[0]?.farm ?? null) : null;
        }}
        onFarm={(picked) => {
          farm.value = picked;
        }}
      />
      {'faults' in answer ? (
        <ul class="yield-faults" role="status">
          {answer.faults.map(({ at, says }) => (
            <li key={at}>{says}</li>
          ))}
        </ul>
      ) : (
        <YieldTables yields={answer} units={{ ...units, weightUnit: draft.value.unit }} />
      )}
    </div>
  );
}
