import { type PriceByWeight, weightTimesPrice } from '@flitchbook/plan';

/** How an animal was dressed: a hanging weight means nothing without it. */
export interface DressedWeight {
  readonly skin: 'on' | 'off';
  readonly head: 'on' | 'off';
  readonly hotOrCold: 'hot' | 'cold';
  readonly grams: number;
}

/** One rung: what the animal weighed there, and what was lost since the rung before. */
export interface Rung {
  readonly name: string;
  readonly grams: number;
  readonly lostGrams: number;
}

/** Live, hanging, boxed: why 300 pounds of pig are 140 pounds of meat. */
export const ladder = (steps: readonly { readonly name: string; readonly grams: number }[]): Rung[] =>
  steps.map(({ name, grams }, place) => ({
    name,
    grams,
    lostGrams: (steps[place - 1]?.grams ?? grams) - grams,
  }));

/** Two quotes by hanging weight compare only by what a customer takes home of each. @returns minor units for a kilogram or pound of boxed meat, rounded once */
export function pricePerBoxed(
  hanging: DressedWeight,
  price: PriceByWeight,
  boxedGrams: number,
): PriceByWeight {
  if (!Number.isSafeInteger(boxedGrams) || boxedGrams < 1)
    throw new RangeError(`boxed grams must be 1 or more, got ${boxedGrams}`);
  const total = weightTimesPrice({ grams: hanging.grams }, price);
  const [over, under] = price.per === 'kg' ? [1000n, 1n] : [45_359_237n, 100_000n];
  const divisor = BigInt(boxedGrams) * under;
  return { minor: Number((BigInt(total) * over * 2n + divisor) / (divisor * 2n)), per: price.per };
}
