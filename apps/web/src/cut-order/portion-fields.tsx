import { PickOne } from '../form/fields.tsx';
import type { OfferedCut } from '../wire/customers-client.ts';
import { lengthSaid, weightsSaid } from '../words/customers/amounts.ts';
import { said } from '../words/customers/language.ts';
import { orderWords } from '../words/customers/order-words.ts';
import type { Units } from '../words/measures.ts';
import { CountField } from './count-field.tsx';
import { type CutDraft, nextThickness, piecesMost, ruleOf } from './cut-draft.ts';
import type { CutStore } from './cut-store.ts';
import { SliceDrawing } from './slice-drawing.tsx';

export interface CutFieldsProps {
  readonly store: CutStore;
  readonly offer: OfferedCut;
  readonly units: Units;
}

function Thickness({ store, offer, units }: CutFieldsProps) {
  const words = said(orderWords);
  const um = store.draft.value.thicknessUm;
  const rule = ruleOf(offer, 'thickness');
  if (rule?.by !== 'thickness') return null;
  const [thinner, thicker] = [false, true].map((up) => nextThickness(um, up, rule, units)) as [
    number,
    number,
  ];
  const set = (thicknessUm: number): void => store.change({ thicknessUm });
  return (
    <fieldset class="thickness">
      <legend>{words.thickness}</legend>
      <SliceDrawing um={um} units={units} />
      <div class="stepper">
        <button
          type="button"
          aria-label={words.thinner}
          disabled={thinner === um}
          onClick={() => set(thinner)}
        >
          −
        </button>
        <output aria-live="polite">{lengthSaid(um, units)}</output>
        <button
          type="button"
          aria-label={words.thicker}
          disabled={thicker === um}
          onClick={() => set(thicker)}
        >
          +
        </button>
      </div>
    </fieldset>
  );
}

function WeightField({
  id,
  label,
  value,
  units,
  isWrong,
  onChange,
}: {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly units: Units;
  readonly isWrong: boolean;
  readonly onChange: (value: string) => void;
}) {
  return (
    <div class={isWrong ? 'field at-fault' : 'field'}>
      <label for={id}>
        {label} ({units.weightUnit})
      </label>
      <input
        id={id}
        type="text"
        inputMode="decimal"
        autocomplete="off"
        value={value}
        aria-invalid={isWrong}
        aria-describedby={isWrong ? 'portion-fault' : undefined}
        onInput={({ currentTarget }) => onChange(currentTarget.value)}
      />
    </div>
  );
}

function limitsSaid(offer: OfferedCut, by: CutDraft['by'], units: Units): string {
  const words = said(orderWords);
  const rule = ruleOf(offer, by);
  if (rule?.by === 'ribs') return words.limits(`${rule.min}–${rule.max}`);
  if (rule?.by === 'weight')
    return words.limits(weightsSaid({ from: rule.minGrams, to: rule.maxGrams }, units));
  return words.needWeights;
}

/** What is wrong with the portion, beside its fields. */
function PortionFault({ store, offer, units }: CutFieldsProps) {
  const words = said(orderWords);
  const asked = store.asked.value;
  if (asked.at !== 'fault' || asked.fault === 'count') return null;
  const says = {
    weights: words.needWeights,
    loose: words.needLoose,
    limits: limitsSaid(offer, store.draft.value.by, units),
  }[asked.fault];
  return (
    <p class="fault" id="portion-fault">
      {says}
    </p>
  );
}

function Portioning(props: CutFieldsProps) {
  const words = said(orderWords);
  const { store, units } = props;
  const draft = store.draft.value;
  const asked = store.asked.value;
  const isWrong = asked.at === 'fault' && asked.fault !== 'count';
  switch (draft.by) {
    case 'thickness':
      return <Thickness {...props} />;
    case 'ribs':
      return (
        <CountField
          id="ribs"
          label={words.ribs}
          value={draft.ribs}
          most={20}
          fewer={words.fewer}
          more={words.more}
          onChange={(ribs) => store.change({ ribs })}
        />
      );
    case 'weight':
      return (
        <fieldset>
          <legend>{words.each}</legend>
          <div class="pair">
            <WeightField
              id="from"
              label={words.from}
              value={draft.from}
              units={units}
              isWrong={isWrong}
              onChange={(from) => store.change({ from })}
            />
            <WeightField
              id="to"
              label={words.to}
              value={draft.to}
              units={units}
              isWrong={isWrong}
              onChange={(to) => store.change({ to })}
            />
          </div>
        </fieldset>
      );
    case 'bulk':
      return (
        <WeightField
          id="loose"
          label={words.loose}
          value={draft.loose}
          units={units}
          isWrong={isWrong}
          onChange={(loose) => store.change({ loose })}
        />
      );
    default:
      return null;
  }
}

/** How it is cut and how many. */
export function PortionFields(props: CutFieldsProps) {
  const words = said(orderWords);
  const { store, offer } = props;
  const draft = store.draft.value;
  const asked = store.asked.value;
  return (
    <>
      {offer.portions.length > 1 && (
        <PickOne
          name="by"
          label={words.by}
          value={draft.by}
          options={offer.portions.map(({ by }) => ({ id: by, name: words.byNames[by] }))}
          onPick={(by) => store.change({ by })}
        />
      )}
      <Portioning {...props} />
      <PortionFault {...props} />
      {draft.by !== 'bulk' && (
        <CountField
          id="pieces"
          label={words.count}
          value={draft.pieces}
          most={piecesMost}
          fewer={words.fewer}
          more={words.more}
          fault={asked.at === 'fault' && asked.fault === 'count' ? words.needCount : undefined}
          onChange={(pieces) => store.change({ pieces })}
        />
      )}
    </>
  );
}
