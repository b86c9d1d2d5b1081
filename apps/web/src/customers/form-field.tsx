import type { Signal } from '@preact/signals';
import { Field } from '../form/fields.tsx';

interface FormFieldProps {
  readonly id: string;
  readonly label: string;
  readonly value: Signal<string>;
  readonly type?: 'text' | 'email' | 'password';
  readonly autocomplete?: string;
  readonly hint?: string | undefined;
  readonly fault?: string | undefined;
}

/** The element's own types keep a kind of input apart from another; which one this is, is not known here. */
const kindOf = (type: NonNullable<FormFieldProps['type']>) => ({ type }) as { readonly type: 'text' };

/** A labelled text field; what is wrong with it is read out with it. */
export function FormField({
  id,
  label,
  value,
  type = 'text',
  autocomplete = 'off',
  hint,
  fault,
}: FormFieldProps) {
  const about = [hint !== undefined && `${id}-hint`, fault !== undefined && `${id}-fault`].filter(Boolean);
  return (
    <Field id={id} label={label} hint={hint} fault={fault}>
      <input
        id={id}
        {...kindOf(type)}
        dir="auto"
        autocomplete={autocomplete}
        value={value}
        aria-invalid={fault !== undefined}
        aria-describedby={about.length > 0 ? about.join(' ') : undefined}
        onInput={(event) => {
          value.value = event.currentTarget.value;
        }}
      />
    </Field>
  );
}
