import { decimalRatio, dividedBy, gramsIn, type Ratio, ratio, roundHalfUp, times } from '@flitchbook/carcass';

/** What a text means, exactly, or what is wrong with it. */
export type Read = { readonly value: Ratio } | { readonly says: string };

const number = String.raw`\d{1,9}(?:\.\d{1,9})?`;
const massForm = new RegExp(`^(${number}) ?(kg|g|mg|lb|oz)$`);
const volumeForm = new RegExp(`^${number} ?(gal|gallons?|l|litres?|liters?|ml|qt|pt|cups?|tsp|tbsp)$`, 'i');
const shareForm = new RegExp(`^(${number}) ?%$`);
const ppmForm = new RegExp(`^(${number}) ?(?:ppm|mg/kg)$`);
const bare = new RegExp(`^${number}$`);

export const million = ratio(1_000_000);
export const one = ratio(1);
const hundred = ratio(100);

const milligramsIn = (unit: string): Ratio =>
  unit === 'mg' ? one : times(gramsIn[unit as keyof typeof gramsIn], ratio(1000));

/** Exact milligrams of "12.4 lb", "0.25 oz" or "1.92 g". Volumes are refused: a gallon of pickle has no fixed weight. */
export function readMassMg(text: string): Read {
  const [, digits, unit = ''] = massForm.exec(text.trim()) ?? [];
  if (digits !== undefined) return { value: times(decimalRatio(digits), milligramsIn(unit)) };
  if (volumeForm.test(text.trim()))
    return { says: 'must be weighed: a volume has no fixed weight, spoons least of all' };
  return { says: 'must be a weight with its unit, such as "12.4 lb" or "850 g"' };
}

/**
 * The fraction that a percentage is: "6.25 %" is 1/16. A number without a sign is refused, since 6.25 and 0.0625 can
 * both be meant and differ a hundredfold.
 */
export function readShare(text: string): Read {
  const [, digits] = shareForm.exec(text.trim()) ?? [];
  if (digits !== undefined) {
    const value = dividedBy(decimalRatio(digits), hundred);
    return value.over > value.under ? { says: 'must be at most 100 %' } : { value };
  }
  if (bare.test(text.trim())) {
    const typed = decimalRatio(text.trim());
    const meant =
      typed.over <= typed.under ? `${text.trim()} of it is ${shareText(typed)}` : `${text.trim()} %?`;
    return { says: `must say that it is a percentage, such as "6.25 %": ${meant}` };
  }
  return { says: 'must be a percentage such as "6.25 %"' };
}

/** The fraction that parts per million are: "120 ppm" or "120 mg/kg". */
export function readPpm(text: string): Read {
  const [, digits] = ppmForm.exec(text.trim()) ?? [];
  if (digits === undefined) return { says: 'must be parts per million, such as "120 ppm" or "120 mg/kg"' };
  return { value: dividedBy(decimalRatio(digits), million) };
}

/** A fraction for a formula. @throws RangeError above 1: a percentage was put where a fraction is due */
export function fraction(value: Ratio, name: string): Ratio {
  if (value.over < 0n || value.over > value.under) {
    const shown = Number(value.over) / Number(value.under);
    throw new RangeError(`${name} must be a fraction from 0 to 1, got ${shown}: is it a percentage?`);
  }
  return value;
}

/** "6.25 %": at most four decimals. */
export function shareText(share: Ratio): string {
  return `${decimals(times(share, hundred), 4)} %`;
}

/** "156.25 ppm": at most two decimals. */
export function ppmText(share: Ratio): string {
  return `${decimals(times(share, million), 2)} ppm`;
}

/** Rounded half up, without zeros at the end. */
function decimals(value: Ratio, places: number): string {
  const scale = 10 ** places;
  return String(roundHalfUp(times(value, ratio(scale))) / scale);
}

/** Whole parts per billion: 156.25 ppm is 156 250. */
export const toPpb = (share: Ratio): number => roundHalfUp(times(share, ratio(1_000_000_000)));
