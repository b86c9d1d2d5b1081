import type { Ppm } from '../bill/money-rules.ts';

/** Where meat went that left in no pack. */
export type OutKind =
  | 'batch'
  | 'rendering'
  | 'bone-and-skin'
  | 'set-aside'
  | 'condemned'
  | 'staff'
  | 'drying'
  | 'saw-dust';

export interface NamedOut {
  readonly kind: OutKind;
  readonly name: string;
  readonly grams: number;
}

/** Weighed apart from the carcass: liver, head. They come in and go out on their own scale reading. */
export interface WeighedApart {
  readonly name: string;
  readonly grams: number;
}

export interface AnimalToBalance {
  readonly hangingGrams: number;
  readonly apart: readonly WeighedApart[];
  readonly packedGrams: number;
  readonly outs: readonly NamedOut[];
  /** how much may be unexplained */
  readonly tolerancePpm: Ppm;
}

/** In equals out to the gram: packs, named outs and a rest that is drip, dust and drying, or a mistake. */
export interface Balance {
  readonly inGrams: number;
  readonly packedGrams: number;
  readonly namedGrams: number;
  /** negative: more went out than came in, which no animal does */
  readonly restGrams: number;
  readonly flag: 'none' | 'rest-too-large' | 'more-out-than-in';
}

const sum = (list: readonly { readonly grams: number }[]): number =>
  list.reduce((total, { grams }) => total + grams, 0);

/** @throws RangeError when a weight is not whole grams of 0 or more */
export function balanceAnimal({
  hangingGrams,
  apart,
  packedGrams,
  outs,
  tolerancePpm,
}: AnimalToBalance): Balance {
  for (const grams of [
    hangingGrams,
    packedGrams,
    ...apart.map((one) => one.grams),
    ...outs.map((out) => out.grams),
  ])
    if (!Number.isSafeInteger(grams) || grams < 0)
      throw new RangeError(`grams must be whole and 0 or more, got ${grams}`);
  const inGrams = hangingGrams + sum(apart);
  const namedGrams = sum(outs);
  const restGrams = inGrams - packedGrams - namedGrams;
  const allowed = Math.floor((inGrams * tolerancePpm) / 1_000_000);
  const flag =
    Math.abs(restGrams) <= allowed ? 'none' : restGrams < 0 ? 'more-out-than-in' : 'rest-too-large';
  return { inGrams, packedGrams, namedGrams, restGrams, flag };
}
