import {
  decimalRatio,
  dividedBy,
  gramsIn,
  type Ratio,
  ratio,
  roundHalfUp,
  times,
  type WeightUnit,
} from '@flitchbook/carcass';

/** A price by weight: whole minor units for one kilogram or one pound. */
export interface PriceByWeight {
  readonly minor: number;
  readonly per: 'kg' | 'lb';
}

/** A weight as a scale showed it, or in grams (fractions of a gram are refused). */
export type Weight = { readonly text: string; readonly unit: WeightUnit } | { readonly grams: number };

const decimal = /^\d{1,9}(\.\d{1,9})?$/;

function readDecimal(text: string): Ratio {
  if (!decimal.test(text)) throw new RangeError(`weight must be a plain decimal number, got "${text}"`);
  return decimalRatio(text);
}

function wholeNumber(value: number, name: string): bigint {
  if (!Number.isSafeInteger(value) || value < 0)
    throw new RangeError(`${name} must be a whole number of 0 or more, got ${value}`);
  return BigInt(value);
}

/** A weight in the unit of its price: what was read in pounds and is priced by the pound is not converted at all. */
function inPriceUnit(weight: Weight, per: PriceByWeight['per']): Ratio {
  if ('grams' in weight) return dividedBy(ratio(wholeNumber(weight.grams, 'grams')), gramsIn[per]);
  const read = readDecimal(weight.text);
  return weight.unit === per ? read : dividedBy(times(read, gramsIn[weight.unit]), gramsIn[per]);
}

/**
 * Weight times price in exact arithmetic, rounded once, half up, to whole minor units.
 * @throws RangeError on a weight that is not a plain decimal number, or a price or weight that is not whole and 0 or more
 */
export function weightTimesPrice(weight: Weight, price: PriceByWeight): number {
  return roundHalfUp(times(inPriceUnit(weight, price.per), ratio(wholeNumber(price.minor, 'price'))));
}

/** What a line comes to before it is on the scale: whole grams at its price by the kilogram. */
export const lineWorth = (grams: number, priceMinorPerKg: number): number =>
  weightTimesPrice({ grams }, { minor: priceMinorPerKg, per: 'kg' });

/**
 * Total of amounts that are rounded already: totals add what was stored, and never weigh again.
 * @throws RangeError when an amount is not whole, or the sum leaves the whole numbers that are exact
 */
export function addMinor(amounts: readonly number[]): number {
  let sum = 0;
  for (const amount of amounts) {
    if (!Number.isSafeInteger(amount))
      throw new RangeError(`amount must be whole minor units, got ${amount}`);
    sum += amount;
    if (!Number.isSafeInteger(sum)) throw new RangeError('the sum is more than can be counted exactly');
  }
  return sum;
}
