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

/** A count with a key on either side, for thumbs; the number can be typed too. */
export function CountField({ id, label, value, most, fewer, more, fault, onChange }: CountFieldProps) {
  return (
    <div class={fault === undefined ? 'field' : 'field at-fault'}>
      <label for={id}>{label}</label>
      <div class="stepper">
        <button
          type="button"
          aria-label={`${label} ${fewer}`}
          disabled={!(value > 1)}
          onClick={() => onChange(value - 1)}
        >
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
          onInput={({ currentTarget }) =>
            onChange(/^\d{1,4}$/.test(currentTarget.value) ? Number(currentTarget.value) : Number.NaN)
          }
        />
        <button
          type="button"
          aria-label={`${label} ${more}`}
          disabled={value >= most}
          onClick={() => onChange(Number.isNaN(value) ? 1 : value + 1)}
        >
          +
        </button>
      </div>
      {fault !== undefined && (
        <p class="fault" id={`${id}-fault`}>
          {fault}
        </p>
      )}
    </div>
  );
}
