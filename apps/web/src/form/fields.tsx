import type { ComponentChildren, TargetedInputEvent } from 'preact';

interface FieldProps {
  readonly id: string;
  readonly label: string;
  readonly hint?: string | undefined;
  readonly fault?: string | undefined;
  readonly children: ComponentChildren;
}

/** A labelled input with its hint and, when it has to be put right, what is wrong with it. */
export function Field({ id, label, hint, fault, children }: FieldProps) {
  return (
    <div class={fault === undefined ? 'field' : 'field at-fault'}>
      <label for={id}>{label}</label>
      {children}
      {hint !== undefined && (
        <p class="hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      {fault !== undefined && (
        <p class="fault" id={`${id}-fault`}>
          {fault}
        </p>
      )}
    </div>
  );
}

interface TextInputProps {
  readonly id: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly fault?: string | undefined;
  readonly decimal?: boolean;
  readonly autocomplete?: string;
}

export function TextInput({
  id,
  value,
  onChange,
  fault,
  decimal = false,
  autocomplete = 'off',
}: TextInputProps) {
  return (
    <input
      id={id}
      type="text"
      inputMode={decimal ? 'decimal' : 'text'}
      autocomplete={autocomplete}
      value={value}
      aria-invalid={fault !== undefined}
      aria-describedby={fault === undefined ? undefined : `${id}-fault`}
      onInput={(event: TargetedInputEvent<HTMLInputElement>) => onChange(event.currentTarget.value)}
    />
  );
}

interface SelectProps {
  readonly id: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly children: ComponentChildren;
}

export function Select({ id, value, onChange, children }: SelectProps) {
  return (
    <select id={id} value={value} onChange={(event) => onChange(event.currentTarget.value)}>
      {children}
    </select>
  );
}

interface PickOneProps<T extends string> {
  readonly name: string;
  readonly label: string;
  readonly value: T;
  readonly options: readonly { readonly id: T; readonly name: string }[];
  readonly onPick: (id: T) => void;
}

/** One out of a few, side by side: radio buttons that look like keys. */
export function PickOne<T extends string>({ name, label, value, options, onPick }: PickOneProps<T>) {
  return (
    <fieldset class="pick-one">
      <legend>{label}</legend>
      <div class="keys">
        {options.map((option) => (
          <label key={option.id}>
            <input
              type="radio"
              name={name}
              checked={option.id === value}
              onChange={() => onPick(option.id)}
            />
            <span>{option.name}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}

interface StepperProps {
  readonly id: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly fewer: string;
  readonly more: string;
  readonly fault?: string | undefined;
  readonly onChange: (value: number) => void;
}

/** A count with a key on either side, for thumbs; the number can be typed too. */
export function Stepper({ id, value, min, max, fewer, more, fault, onChange }: StepperProps) {
  return (
    <div class="stepper">
      <button type="button" aria-label={fewer} disabled={!(value > min)} onClick={() => onChange(value - 1)}>
        −
      </button>
      <input
        id={id}
        type="text"
        inputMode="numeric"
        autocomplete="off"
        value={Number.isNaN(value) ? '' : String(value)}
        aria-invalid={fault !== undefined}
        aria-describedby={fault === undefined ? undefined : `${id}-fault`}
        onInput={(event) =>
          onChange(
            /^\d{1,4}$/.test(event.currentTarget.value) ? Number(event.currentTarget.value) : Number.NaN,
          )
        }
      />
      <button
        type="button"
        aria-label={more}
        disabled={value >= max}
        onClick={() => onChange(Number.isNaN(value) ? min : value + 1)}
      >
        +
      </button>
    </div>
  );
}
