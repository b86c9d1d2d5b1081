import { type Grams, grams } from './units.ts';

export type WeightUnit = 'kg' | 'g' | 'lb' | 'oz';

/** What a scale showed, kept as it was read. Conversion never changes it. */
export interface ScaleReading {
  /** decimal digits as shown: "92.1" */
  readonly text: string;
  readonly unit: WeightUnit;
}

/** Exact fractions of a gram: 1 lb = 453.592 37 g, 1 oz = a sixteenth of it (NIST Handbook 44, appendix C). */
const gramsPer: Record<WeightUnit, { readonly times: bigint; readonly over: bigint }> = {
  kg: { times: 1000n, over: 1n },
  g: { times: 1n, over: 1n },
  lb: { times: 45_359_237n, over: 100_000n },
  oz: { times: 45_359_237n, over: 1_600_000n },
};

const decimal = /^\d{1,7}(\.\d{1,6})?$/;

/**
 * The whole grams of a reading, rounded once, half up, in exact arithmetic.
 * @throws RangeError when the text is not a plain decimal number ("1e3", "-2", "NaN" and "12 " are not)
 */
export function readingToGrams(reading: ScaleReading): Grams {
  if (!decimal.test(reading.text))
    throw new RangeError(`weight must be a plain decimal number, got "${reading.text}"`);
  const [whole = '0', fraction = ''] = reading.text.split('.');
  const { times, over } = gramsPer[reading.unit];
  const numerator = BigInt(whole + fraction) * times;
  const divisor = 10n ** BigInt(fraction.length) * over;
  return grams(Number((numerator * 2n + divisor) / (divisor * 2n)));
}
