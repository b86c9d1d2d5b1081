import { Field, Stepper } from '../form/fields.tsx';

interface CountFieldProps {
  readonly id: string;
  readonly label: string;
  readonly value: number;
  readonly most: number;
  readonly fewer: string;
  readonly more: string;
  readonly fault?: string | undefined;
  readonly onChange: (value: number) => void;
}

/** A count under its label, from 1 on. */
export const CountField = ({ id, label, value, most, fewer, more, fault, onChange }: CountFieldProps) => (
  <Field id={id} label={label} fault={fault}>
    <Stepper
      id={id}
      value={value}
      min={1}
      max={most}
      fewer={`${label} ${fewer}`}
      more={`${label} ${more}`}
      fault={fault}
      onChange={onChange}
    />
  </Field>
);
