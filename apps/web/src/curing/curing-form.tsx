import { Field, PickOne, Select, TextInput } from '../form/fields.tsx';
import { words } from '../words/english.ts';
import {
  type CuringDraft,
  calendarRules,
  chosen,
  countsSkin,
  hasUptake,
  isWet,
  methodsOf,
  places,
  productsOf,
} from './curing-model.ts';

interface FormProps {
  readonly draft: CuringDraft;
  readonly faults: Readonly<Record<string, string>>;
  readonly lengthUnit: 'in' | 'mm';
  readonly onChange: (draft: CuringDraft) => void;
}

type TextField = Exclude<keyof CuringDraft, 'skin' | 'from' | 'jurisdiction' | 'product' | 'method' | 'rule'>;

interface TextProps extends FormProps {
  readonly name: TextField;
  readonly label: string;
  readonly hint?: string;
}

function Text({ draft, faults, onChange, name, label, hint }: TextProps) {
  return (
    <Field id={name} label={label} fault={faults[name]} {...(hint !== undefined && { hint })}>
      <TextInput
        id={name}
        value={draft[name]}
        fault={faults[name]}
        onChange={(value) => onChange({ ...draft, [name]: value })}
      />
    </Field>
  );
}

interface ChoiceProps extends FormProps {
  readonly name: 'jurisdiction' | 'product' | 'method' | 'rule';
  readonly label: string;
  readonly options: readonly { readonly id: string; readonly name: string }[];
}

function Choice({ draft, faults, onChange, name, label, options }: ChoiceProps) {
  return (
    <Field id={name} label={label} fault={faults[name]}>
      <Select id={name} value={draft[name]} onChange={(value) => onChange(chosen(draft, { [name]: value }))}>
        {options.map(({ id, name: shown }) => (
          <option key={id} value={id}>
            {shown}
          </option>
        ))}
      </Select>
    </Field>
  );
}

/** Place, product and way first: each has limits of its own. */
function Where(props: FormProps) {
  const { jurisdiction, product } = props.draft;
  const methods = methodsOf(jurisdiction, product).map((id) => ({ id, name: words.curing.methods[id] }));
  return (
    <>
      <Choice {...props} name="jurisdiction" label={words.curing.jurisdiction} options={places} />
      <Choice {...props} name="product" label={words.curing.product} options={productsOf(jurisdiction)} />
      <Choice {...props} name="method" label={words.curing.method} options={methods} />
    </>
  );
}

function Meat(props: FormProps) {
  const { draft, onChange } = props;
  return (
    <>
      <Text {...props} name="meat" label={words.curing.meat} hint={words.curing.weightHint} />
      <PickOne
        name="skin"
        label={words.curing.skin}
        value={draft.skin}
        options={[
          { id: 'off', name: words.curing.skins.off },
          { id: 'on', name: words.curing.skins.on },
        ]}
        onPick={(skin) => onChange({ ...draft, skin })}
      />
      {countsSkin(draft) && (
        <Text {...props} name="skinShare" label={words.curing.skinShare} hint={words.curing.skinHint} />
      )}
    </>
  );
}

function Dose(props: FormProps) {
  const { draft, onChange } = props;
  const uptakeLabel = draft.method === 'pumped' ? words.curing.pump : words.curing.pickUp;
  return (
    <>
      <Text {...props} name="nitrite" label={words.curing.nitrite} hint={words.curing.nitriteHint} />
      <PickOne
        name="from"
        label={words.curing.from}
        value={draft.from}
        options={[
          { id: 'target', name: words.curing.froms.target },
          { id: 'cure', name: words.curing.froms.cure },
        ]}
        onPick={(from) => onChange({ ...draft, from })}
      />
      {draft.from === 'target' ? (
        <Text {...props} name="target" label={words.curing.target} hint={words.curing.targetHint} />
      ) : (
        <Text {...props} name="cure" label={words.curing.cure} hint={words.curing.weightHint} />
      )}
      {isWet(draft.method) && (
        <Text {...props} name="pickle" label={words.curing.pickle} hint={words.curing.pickleHint} />
      )}
      {hasUptake(draft.method) && (
        <Text {...props} name="uptake" label={uptakeLabel} hint={words.curing.uptakeHint} />
      )}
    </>
  );
}

function Extras(props: FormProps) {
  const rules = [{ id: '', name: words.curing.noRule }, ...calendarRules];
  return (
    <>
      <Text {...props} name="salt" label={words.curing.salt} hint={words.curing.optional} />
      <Text {...props} name="sugar" label={words.curing.sugar} hint={words.curing.optional} />
      <Text {...props} name="ascorbate" label={words.curing.ascorbate} hint={words.curing.optional} />
      <Text {...props} name="scaleDivision" label={words.curing.scale} hint={words.curing.scaleHint} />
      <Choice {...props} name="rule" label={words.curing.rule} options={rules} />
      {props.draft.rule !== '' && (
        <>
          <Field id="start" label={words.curing.start} fault={props.faults['start']}>
            <input
              id="start"
              type="date"
              value={props.draft.start}
              onInput={(event) => props.onChange({ ...props.draft, start: event.currentTarget.value })}
            />
          </Field>
          <Text {...props} name="thickness" label={words.curing.thickness(props.lengthUnit)} />
        </>
      )}
    </>
  );
}

export function CuringForm(props: FormProps) {
  return (
    <form class="curing-form" onSubmit={(event) => event.preventDefault()}>
      <Where {...props} />
      <Meat {...props} />
      <Dose {...props} />
      <Extras {...props} />
    </form>
  );
}
