import { type Ratio, ratio, times } from '@flitchbook/carcass';

/** What a limit or a bag may speak of. Nitrites and nitrates are never set against each other. */
export type Substance =
  | 'sodium-nitrite'
  | 'potassium-nitrite'
  | 'nitrite-ion'
  | 'sodium-nitrate'
  | 'potassium-nitrate'
  | 'nitrate-ion';

/** Molar mass in milligrams, from the IUPAC abridged standard atomic weights: Na 22.990, K 39.098, N 14.007, O 15.999. */
const molarMg: Readonly<Record<Substance, number>> = {
  'sodium-nitrite': 68_995,
  'potassium-nitrite': 85_103,
  'nitrite-ion': 46_005,
  'sodium-nitrate': 84_994,
  'potassium-nitrate': 101_102,
  'nitrate-ion': 62_004,
};

export const substanceNames: Readonly<Record<Substance, string>> = {
  'sodium-nitrite': 'sodium nitrite',
  'potassium-nitrite': 'potassium nitrite',
  'nitrite-ion': 'nitrite ion',
  'sodium-nitrate': 'sodium nitrate',
  'potassium-nitrate': 'potassium nitrate',
  'nitrate-ion': 'nitrate ion',
};

export const isSubstance = (name: string): name is Substance => Object.hasOwn(molarMg, name);
export const isNitrite = (substance: Substance): boolean => substance.includes('nitrite');

/** As much of another substance as holds the same nitrite (or nitrate). @throws RangeError from a nitrite to a nitrate */
export function convert(amount: Ratio, from: Substance, to: Substance): Ratio {
  if (isNitrite(from) !== isNitrite(to))
    throw new RangeError(`${substanceNames[from]} can't be stated as ${substanceNames[to]}`);
  return times(amount, ratio(molarMg[to], molarMg[from]));
}
