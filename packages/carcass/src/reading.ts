import { decimalRatio, gramsIn, roundHalfUp, times } from './ratio.ts';
import { type Grams, grams } from './units.ts';

export type WeightUnit = 'kg' | 'g' | 'lb' | 'oz';

/** What a scale showed, kept as it was read. Conversion never changes it. */
export interface ScaleReading {
  /** decimal digits as shown: "92.1" */
  readonly text: string;
  readonly unit: WeightUnit;
}

const decimal = /^\d{1,7}(\.\d{1,6})?$/;

/**
 * The whole grams of a reading, rounded once, half up, in exact arithmetic.
 * @throws RangeError when the text is not a plain decimal number ("1e3", "-2", "NaN" and "12 " are not)
 */
export function readingToGrams(reading: ScaleReading): Grams {
  if (!decimal.test(reading.text))
    throw new RangeError(`weight must be a plain decimal number, got "${reading.text}"`);
  return grams(roundHalfUp(times(decimalRatio(reading.text), gramsIn[reading.unit])));
}
