/** Something in what was handed in is not right: where it stands, what was there, what is wrong with it. */
export interface Slip {
  readonly at: string;
  readonly value: unknown;
  readonly says: string;
}

/** A value, or everything that is wrong with what it was to be made from. */
export type Made<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly slips: readonly Slip[] };

export const made = <T>(value: T): Made<T> => ({ ok: true, value });

export const slip = (at: string, value: unknown, says: string): Made<never> => ({
  ok: false,
  slips: [{ at, value, says }],
});
