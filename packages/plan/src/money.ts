import type { WeightUnit } from '@flitchbook/carcass';

/** A price by weight: whole minor units for one kilogram or one pound. */
export interface PriceByWeight {
  readonly minor: number;
  readonly per: 'kg' | 'lb';
}

/** A weight as a scale showed it, or in grams (fractions of a gram are refused). */
export type Weight = { readonly text: string; readonly unit: WeightUnit } | { readonly grams: number };

/** An exact fraction. */
interface Ratio {
  readonly over: bigint;
  readonly under: bigint;
}

/** Grams in one of each unit, exactly (NIST Handbook 44, appendix C: 1 lb is 453.592 37 g, 1 oz a sixteenth of it). */
const gramsIn: Readonly<Record<WeightUnit, Ratio>> = {
  kg: { over: 1000n, under: 1n },
  g: { over: 1n, under: 1n },
  lb: { over: 45_359_237n, under: 100_000n },
  oz: { over: 45_359_237n, under: 1_600_000n },
};

const times = (left: Ratio, right: Ratio): Ratio => ({
  over: left.over * right.over,
  under: left.under * right.under,
});
const dividedBy = (left: Ratio, right: Ratio): Ratio => ({
  over: left.over * right.under,
  under: left.under * right.over,
});

const decimal = /^\d{1,9}(\.\d{1,9})?$/;

function readDecimal(text: string): Ratio {
  if (!decimal.test(text)) throw new RangeError(`weight must be a plain decimal number, got "${text}"`);
  const [whole = '0', fraction = ''] = text.split('.');
  return { over: BigInt(whole + fraction), under: 10n ** BigInt(fraction.length) };
}

function wholeNumber(value: number, name: string): bigint {
  if (!Number.isSafeInteger(value) || value < 0)
    throw new RangeError(`${name} must be a whole number of 0 or more, got ${value}`);
  return BigInt(value);
}

/** Half of a minor unit goes up. */
function roundHalfUp({ over, under }: Ratio): number {
  const rounded = (over * 2n + under) / (under * 2n);
  if (rounded > BigInt(Number.MAX_SAFE_INTEGER))
    throw new RangeError(`${rounded} minor units are more than can be counted exactly`);
  return Number(rounded);
}

/** A weight in the unit of its price: what was read in pounds and is priced by the pound is not converted at all. */
function inPriceUnit(weight: Weight, per: PriceByWeight['per']): Ratio {
  if ('grams' in weight)
    return dividedBy({ over: wholeNumber(weight.grams, 'grams'), under: 1n }, gramsIn[per]);
  const read = readDecimal(weight.text);
  return weight.unit === per ? read : dividedBy(times(read, gramsIn[weight.unit]), gramsIn[per]);
}

/**
 * Weight times price in exact arithmetic, rounded once, half up, to whole minor units.
 * @throws RangeError on a weight that is not a plain decimal number, or a price or weight that is not whole and 0 or more
 */
export function weightTimesPrice(weight: Weight, price: PriceByWeight): number {
  return roundHalfUp(
    times(inPriceUnit(weight, price.per), { over: wholeNumber(price.minor, 'price'), under: 1n }),
  );
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
