declare const unit: unique symbol;
type Quantity<U extends string> = number & { readonly [unit]: U };

/** Whole grams. Scale readings and customers' weights. */
export type Grams = Quantity<'g'>;
/** Whole milligrams. Planning splits masses in milligrams so that shares add up exactly. */
export type Milligrams = Quantity<'mg'>;
/** Whole micrometres. One inch is exactly 25 400 of them. */
export type Micrometres = Quantity<'um'>;
/** Whole minor units of the shop's money (cents, pence). */
export type MinorUnits = Quantity<'minor'>;

/** Micrometres in one inch: exact (NIST Handbook 44, appendix C). */
export const umPerInch = 25_400;

function wholeWithin(value: number, name: string, min: number): number {
  if (!Number.isSafeInteger(value)) throw new RangeError(`${name} must be a whole number, got ${value}`);
  if (value < min) throw new RangeError(`${name} must not be below ${min}, got ${value}`);
  return value;
}

/** @throws RangeError unless a whole number of 0 or more */
export const grams = (value: number): Grams => wholeWithin(value, 'grams', 0) as Grams;
/** @throws RangeError unless a whole number of 0 or more */
export const milligrams = (value: number): Milligrams => wholeWithin(value, 'milligrams', 0) as Milligrams;
/** @throws RangeError unless a whole number of 0 or more */
export const micrometres = (value: number): Micrometres =>
  wholeWithin(value, 'micrometres', 0) as Micrometres;
/** May be negative: a refund is. @throws RangeError unless a whole number */
export const minorUnits = (value: number): MinorUnits =>
  wholeWithin(value, 'minor units', Number.MIN_SAFE_INTEGER) as MinorUnits;

export const gramsToMilligrams = (mass: Grams): Milligrams => milligrams(mass * 1000);
