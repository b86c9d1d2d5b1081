import { readingToGrams, type ScaleReading, type WeightUnit } from '../reading.ts';

/**
 * Whole units of 10^-11 grams, a sixteenth of it for ounces: fine enough that every reading is exact, so that lists add
 * up exactly as they were written.
 */
export type ExactMass = bigint;

const digitsAfterPoint = 6;
const sixteenths = 16n;
/** A millionth of each unit. 1 lb = 453.592 37 g, 1 oz = a sixteenth of it (NIST Handbook 44, appendix C). */
const perMillionth: Readonly<Record<WeightUnit, bigint>> = {
  kg: 100_000_000n * sixteenths,
  g: 100_000n * sixteenths,
  lb: 45_359_237n * sixteenths,
  oz: 45_359_237n,
};

/** @throws RangeError when the text is not a plain decimal number */
export function exactMass(reading: ScaleReading): ExactMass {
  readingToGrams(reading);
  const [whole = '0', fraction = ''] = reading.text.split('.');
  return BigInt(whole + fraction.padEnd(digitsAfterPoint, '0')) * perMillionth[reading.unit];
}

/** Half a unit of the last digit written: how far the true mass may lie from the reading. */
export function halfLastDigit({ text, unit }: ScaleReading): ExactMass {
  const decimals = text.split('.')[1]?.length ?? 0;
  return (perMillionth[unit] * 10n ** BigInt(digitsAfterPoint - decimals)) / 2n;
}

/** In a unit of the trade, as a plain number: for saying, never for adding up. */
export const inUnit = (mass: ExactMass, unit: WeightUnit): number =>
  Number((mass * 1_000_000n) / perMillionth[unit]) / 1e12;

/** Whole milligrams, half up for masses of 0 or more. */
export const exactToMilligrams = (mass: ExactMass): number => Math.round(inUnit(mass, 'g') * 1000);

export const percentOf = (mass: ExactMass, whole: ExactMass): number =>
  Number((mass * 1_000_000_000n) / whole) / 10_000_000;

export const sumOf = (masses: readonly ExactMass[]): ExactMass =>
  masses.reduce((sum, mass) => sum + mass, 0n);
