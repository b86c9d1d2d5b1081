import type { WeightUnit } from './reading.ts';

/** An exact number: a numerator over a denominator above 0, in lowest terms. */
export interface Ratio {
  readonly over: bigint;
  readonly under: bigint;
}

function greatestDivisor(left: bigint, right: bigint): bigint {
  let [a, b] = [left < 0n ? -left : left, right];
  while (b !== 0n) [a, b] = [b, a % b];
  return a === 0n ? 1n : a;
}

/** @throws RangeError when the denominator is 0 or a number is not whole */
export function ratio(over: bigint | number, under: bigint | number = 1n): Ratio {
  const [top, bottom] = [BigInt(over), BigInt(under)];
  if (bottom === 0n) throw new RangeError(`${top} can't be divided by 0`);
  const [upper, lower] = bottom < 0n ? [-top, -bottom] : [top, bottom];
  const divisor = greatestDivisor(upper, lower);
  return { over: upper / divisor, under: lower / divisor };
}

export const plus = (left: Ratio, right: Ratio): Ratio =>
  ratio(left.over * right.under + right.over * left.under, left.under * right.under);
export const minus = (left: Ratio, right: Ratio): Ratio =>
  ratio(left.over * right.under - right.over * left.under, left.under * right.under);
export const times = (left: Ratio, right: Ratio): Ratio =>
  ratio(left.over * right.over, left.under * right.under);
/** @throws RangeError when the divisor is 0 */
export const dividedBy = (left: Ratio, right: Ratio): Ratio =>
  ratio(left.over * right.under, left.under * right.over);

/** Below 0 when the left one is less, 0 when they are equal. */
export function compareRatios(left: Ratio, right: Ratio): number {
  const difference = left.over * right.under - right.over * left.under;
  return difference < 0n ? -1 : Number(difference > 0n);
}

/** Nearest whole number; a half goes up. @throws RangeError when it is more than can be counted exactly */
export function roundHalfUp({ over, under }: Ratio): number {
  const doubled = over * 2n + under;
  const rest = doubled % (under * 2n);
  const rounded = (doubled - (rest < 0n ? rest + under * 2n : rest)) / (under * 2n);
  const whole = Number(rounded);
  if (!Number.isSafeInteger(whole)) throw new RangeError(`${rounded} is more than can be counted exactly`);
  return whole;
}

/** Digits with at most one point: "12", "0.0625". The caller has checked the form. */
export function decimalRatio(text: string): Ratio {
  const [whole = '', digits = ''] = text.split('.');
  return ratio(BigInt(whole + digits), 10n ** BigInt(digits.length));
}

/** Grams in one of each unit, exactly: 1 lb is 453.592 37 g, 1 oz a sixteenth of it (NIST Handbook 44, appendix C). */
export const gramsIn: Readonly<Record<WeightUnit, Ratio>> = {
  kg: ratio(1000),
  g: ratio(1),
  lb: ratio(45_359_237, 100_000),
  oz: ratio(45_359_237, 1_600_000),
};
