import type { Cut, PortionRule, Species } from '@flitchbook/carcass';
import type { DayAnimal } from '@flitchbook/plan';
import { useEffect, useRef } from 'preact/hooks';
import { Field, PickOne, Select, Stepper, TextInput } from '../form/fields.tsx';
import { words } from '../words/english.ts';
import { lengthText, type Units } from '../words/measures.ts';
import type { CutGroup } from './cut-groups.ts';
import type { LineDraft } from './order-draft.ts';
import type { OrderFormStore } from './order-form-store.ts';

export interface LineFieldsProps {
  readonly line: LineDraft;
  readonly number: number;
  readonly species: Species;
  readonly groups: readonly CutGroup[];
  readonly animals: readonly DayAnimal[];
  readonly units: Units;
  readonly store: OrderFormStore;
}

const stepUm = { in: 3_175, mm: 1_000 } as const;

/** Thicknesses to choose from: eighths of an inch, or every second millimetre, inside the limits of the cut. */
function thicknesses(rule: PortionRule & { by: 'thickness' }, units: Units): number[] {
  const step = stepUm[units.lengthUnit] * (units.lengthUnit === 'mm' ? 2 : 1);
  const first = Math.ceil(rule.minUm / step) * step;
  const all = Array.from(
    { length: Math.floor((rule.maxUm - first) / step) + 1 },
    (_, index) => first + index * step,
  );
  return all.filter((um) => um <= 50_800 || um % (step * 2) === 0);
}

function Portioning({ line, cut, units, store, faultOf }: PortionProps) {
  const set = (part: Partial<LineDraft>): void => store.changeLine(line.key, part);
  const rule = cut.portions.find((candidate) => candidate.by === line.by);
  if (rule?.by === 'thickness') {
    const choices = [...new Set([...thicknesses(rule, units), line.thicknessUm])].sort(
      (one, other) => one - other,
    );
    return (
      <Field id={`${line.key}-thickness`} label={words.form.thickness}>
        <Select
          id={`${line.key}-thickness`}
          value={String(line.thicknessUm)}
          onChange={(value) => set({ thicknessUm: Number(value) })}
        >
          {choices.map((um) => (
            <option key={um} value={String(um)}>
              {lengthText(um, units)}
            </option>
          ))}
        </Select>
      </Field>
    );
  }
  if (rule?.by === 'ribs') {
    return (
      <Field id={`${line.key}-ribs`} label={words.form.ribs} fault={faultOf('ribs')}>
        <Stepper
          id={`${line.key}-ribs`}
          value={line.ribs}
          min={rule.min}
          max={rule.max}
          fewer={`${words.form.ribs}: ${words.form.fewer}`}
          more={`${words.form.ribs}: ${words.form.more}`}
          onChange={(ribs) => set({ ribs })}
        />
      </Field>
    );
  }
  if (rule?.by !== 'weight') return null;
  return (
    <div class="pair">
      {(['from', 'to'] as const).map((end) => (
        <Field
          key={end}
          id={`${line.key}-${end}`}
          label={words.form[end](units.weightUnit)}
          fault={faultOf(end)}
        >
          <TextInput
            id={`${line.key}-${end}`}
            decimal={true}
            value={line[end]}
            fault={faultOf(end)}
            onChange={(value) => set({ [end]: value })}
          />
        </Field>
      ))}
    </div>
  );
}

interface PortionProps extends Pick<LineFieldsProps, 'line' | 'units' | 'store'> {
  readonly cut: Cut;
  readonly faultOf: (field: string) => string | undefined;
}

function HowMuch({ line, units, store, faultOf }: Omit<PortionProps, 'cut'>) {
  const set = (part: Partial<LineDraft>): void => store.changeLine(line.key, part);
  if (line.by === 'bulk') {
    return (
      <Field id={`${line.key}-loose`} label={words.form.loosely(units.weightUnit)} fault={faultOf('loose')}>
        <TextInput
          id={`${line.key}-loose`}
          decimal={true}
          value={line.loose}
          fault={faultOf('loose')}
          onChange={(loose) => set({ loose })}
        />
      </Field>
    );
  }
  return (
    <Field id={`${line.key}-pieces`} label={words.form.pieces} fault={faultOf('pieces')}>
      <Stepper
        id={`${line.key}-pieces`}
        value={line.pieces}
        min={1}
        max={999}
        fewer={`${words.form.pieces}: ${words.form.fewer}`}
        more={`${words.form.pieces}: ${words.form.more}`}
        onChange={(pieces) => set({ pieces })}
      />
    </Field>
  );
}

function Conditions({ line, groups, animals, store }: LineFieldsProps) {
  const set = (part: Partial<LineDraft>): void => store.changeLine(line.key, part);
  return (
    <details class="conditions">
      <summary>{words.form.further}</summary>
      <div class="field-grid">
        <label class="check">
          <input
            type="checkbox"
            checked={line.sameAnimal}
            onChange={(event) => set({ sameAnimal: event.currentTarget.checked })}
          />
          <span>{words.form.sameAnimal}</span>
        </label>
        <Field id={`${line.key}-animal`} label={words.form.onlyAnimal}>
          <Select
            id={`${line.key}-animal`}
            value={line.onlyAnimal}
            onChange={(onlyAnimal) => set({ onlyAnimal })}
          >
            <option value="">{words.form.anyAnimal}</option>
            {animals.map(({ animalId, name }) => (
              <option key={animalId} value={animalId}>
                {name}
              </option>
            ))}
          </Select>
        </Field>
        <Field id={`${line.key}-hand`} label={words.form.onlyHand}>
          <Select
            id={`${line.key}-hand`}
            value={line.onlyHand}
            onChange={(value) => set({ onlyHand: value as LineDraft['onlyHand'] })}
          >
            <option value="">{words.form.anyHand}</option>
            <option value="left">{words.handWords.left}</option>
            <option value="right">{words.handWords.right}</option>
          </Select>
        </Field>
        <Field id={`${line.key}-substitute`} label={words.form.substitute}>
          <Select
            id={`${line.key}-substitute`}
            value={line.substitute}
            onChange={(substitute) => set({ substitute })}
          >
            <option value="">{words.form.noSubstitute}</option>
            {groups.map((group) => (
              <optgroup key={group.name} label={group.name}>
                {group.cuts
                  .filter(({ id }) => id !== line.cut)
                  .map(({ id, name }) => (
                    <option key={id} value={id}>
                      {name}
                    </option>
                  ))}
              </optgroup>
            ))}
          </Select>
        </Field>
      </div>
    </details>
  );
}

/** One line of the order: how it is cut, how many, how firm, on what conditions. */
export function LineFields(props: LineFieldsProps) {
  const { line, number, species, units, store } = props;
  const cut = species.cuts[line.cut];
  const fieldset = useRef<HTMLFieldSetElement>(null);
  useEffect(() => {
    fieldset.current?.focus({ preventScroll: true });
    fieldset.current?.scrollIntoView({ block: 'center' });
  }, []);
  if (!cut) return null;
  const faultOf = (field: string): string | undefined => {
    const found = store.faults.value.find((fault) => fault.field === `${line.key}-${field}`);
    return found && words.form.faults[found.fault];
  };
  return (
    <fieldset ref={fieldset} class="line-fields" tabIndex={-1}>
      <legend>
        <span class="visually-hidden">{`${words.form.line(number)}: `}</span>
        {cut.name}
      </legend>
      <p class="hint">{cut.says}</p>
      {cut.portions.length > 1 && (
        <PickOne
          name={`${line.key}-by`}
          label={words.form.by}
          value={line.by}
          options={cut.portions.map(({ by }) => ({ id: by, name: words.form.byNames[by] }))}
          onPick={(by) => store.changeLine(line.key, { by })}
        />
      )}
      <div class="field-grid">
        <HowMuch line={line} units={units} store={store} faultOf={faultOf} />
        <Portioning line={line} cut={cut} units={units} store={store} faultOf={faultOf} />
      </div>
      <PickOne
        name={`${line.key}-rank`}
        label={words.form.rank}
        value={line.rank}
        options={[
          { id: 'promised', name: words.form.promisedSays },
          { id: 'wished', name: words.form.wishedSays },
        ]}
        onPick={(rank) => store.changeLine(line.key, { rank })}
      />
      <Conditions {...props} />
      <button
        type="button"
        class="quiet"
        aria-label={words.form.remove(cut.name)}
        onClick={() => store.removeLine(line.key)}
      >
        {words.form.removeShort}
      </button>
    </fieldset>
  );
}
