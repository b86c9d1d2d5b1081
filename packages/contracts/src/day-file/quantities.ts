import {
  decimalRatio,
  dividedBy,
  gramsIn,
  plus,
  type Ratio,
  ratio,
  roundHalfUp,
  type ScaleReading,
  times,
  umPerInch,
  type WeightUnit,
} from '@flitchbook/carcass';

/** What a text means, or what is wrong with it. */
export type Read<T> = { readonly value: T; readonly remark?: string } | { readonly says: string };

const decimal = String.raw`\d{1,7}(?:\.\d{1,6})?`;
const fraction = String.raw`\d{1,4}\/\d{1,4}`;
const amount = String.raw`(?:\d{1,4} ${fraction}|${fraction}|${decimal})`;

const vulgar: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/** One spelling for what people write in several: spaces, dashes, fraction signs. */
const tidy = (text: string): string =>
  text
    .replace(/[½¼¾⅛⅜⅝⅞]/g, (sign) => ` ${vulgar[sign]}`)
    .replace(/⁄/g, '/')
    .replace(/[–—]/g, '-')
    .replace(/\s+/g, ' ')
    .trim();

function ratioOf(text: string): Ratio | undefined {
  const [first = '', second] = text.split(' ');
  if (second !== undefined) {
    const part = ratioOf(second);
    return part && plus(ratio(BigInt(first)), part);
  }
  const [over = '', under] = first.split('/');
  if (under === undefined) return decimalRatio(first);
  return BigInt(under) === 0n ? undefined : ratio(BigInt(over), BigInt(under));
}

const umPer: Readonly<Record<string, bigint>> = {
  mm: 1000n,
  cm: 10_000n,
  in: BigInt(umPerInch),
  inch: BigInt(umPerInch),
  inches: BigInt(umPerInch),
  '"': BigInt(umPerInch),
  '″': BigInt(umPerInch),
};

const lengthForm = new RegExp(`^(${amount}) ?(mm|cm|inches|inch|in|"|″)$`);

/** Whole micrometres of "1 1/4 in", "32 mm" or "3.2 cm", exactly; rounded half up, with a remark, where there is no whole number. */
export function readLength(text: string): Read<number> {
  const [, size = '', unit = ''] = lengthForm.exec(tidy(text).replace(/^(\d+)-(?=\d+\/)/, '$1 ')) ?? [];
  const amountRead = size === '' ? undefined : ratioOf(size);
  if (!amountRead) return { says: 'must be a length such as "1 1/4 in" or "32 mm"' };
  const exactUm = times(amountRead, ratio(umPer[unit] ?? 1n));
  const whole = roundHalfUp(exactUm);
  if (whole === 0) return { says: 'must be above 0' };
  if (exactUm.under === 1n) return { value: whole };
  return { value: whole, remark: `is not a whole number of micrometres: taken as ${whole / 1000} mm` };
}

const weightUnit = '(kg|g|lb|oz)';
const weightForm = new RegExp(`^(${amount}) ?${weightUnit}$`);
const rangeForm = new RegExp(`^(${amount}) ?${weightUnit}?(?: ?- ?| to )(${amount}) ?${weightUnit}$`);
const readingForm = new RegExp(`^(${decimal}) ?${weightUnit}$`);

function gramsOf(size: string, unit: string): number | undefined {
  const read = ratioOf(size);
  return read && roundHalfUp(times(read, gramsIn[unit as WeightUnit]));
}

/** Whole grams of "5 lb", "2 1/2 lb" or "900 g", rounded once, half up. */
export function readWeight(text: string): Read<number> {
  const [, size = '', unit = ''] = weightForm.exec(tidy(text)) ?? [];
  const value = size === '' ? undefined : gramsOf(size, unit);
  if (value === undefined) return { says: 'must be a weight such as "5 lb" or "2.2 kg"' };
  return value === 0 ? { says: 'must be above 0' } : { value };
}

export interface WeightRange {
  readonly fromGrams: number;
  readonly toGrams: number;
}

/** "3-4 lb", "3 to 4 lb", "1.4 kg - 1.8 kg". */
export function readWeightRange(text: string): Read<WeightRange> {
  const tidied = tidy(text);
  const [, low = '', lowUnit, high = '', unit = ''] = rangeForm.exec(tidied) ?? [];
  const fromGrams = low === '' ? undefined : gramsOf(low, lowUnit ?? unit);
  const toGrams = high === '' ? undefined : gramsOf(high, unit);
  if (fromGrams === undefined || toGrams === undefined) {
    const single = weightForm.test(tidied) ? ': no piece weighs exactly that' : '';
    return { says: `must be a range such as "3-4 lb" or "900-1400 g"${single}` };
  }
  if (fromGrams === 0) return { says: 'must begin above 0' };
  if (fromGrams > toGrams) return { says: 'must go from the lesser weight to the greater' };
  return { value: { fromGrams, toGrams } };
}

/** A scale reading written in one: "184 lb", "83.5 kg". It is kept as it was read. */
export function readReading(text: string): Read<ScaleReading> {
  const [, digits = '', unit = ''] = readingForm.exec(tidy(text)) ?? [];
  if (digits === '')
    return { says: 'must be a weight as the scale showed it, such as "184 lb" or "83.5 kg"' };
  return { value: { text: digits, unit: unit as WeightUnit } };
}

const money = /^(\d{1,7})(?:\.(\d{1,4}))?$/;
const priceForm = /^(\d{1,7}(?:\.\d{1,4})?) ?(?:\/|per) ?(lb|kg)$/;

/** Decimals of a currency's minor unit, as ISO 4217 has them: 2 for USD, 0 for JPY. */
const decimalsOf = (currency: string): number =>
  new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2;

/** Minor units of "24.00", exactly. */
export function readMoney(text: string, currency: string): Read<number> {
  const decimals = decimalsOf(currency);
  const [, whole, cents = ''] = money.exec(text.trim()) ?? [];
  if (whole === undefined) return { says: 'must be an amount of money such as "24.00"' };
  if (cents.length > decimals) return { says: `must have at most ${decimals} decimals, as ${currency} has` };
  return { value: Number(whole + cents.padEnd(decimals, '0')) };
}

/** "24.00" of 2400 minor units, with the decimals that the currency has. */
export function moneyText(minor: number, currency: string): string {
  const decimals = decimalsOf(currency);
  const digits = String(minor).padStart(decimals + 1, '0');
  return decimals === 0 ? digits : `${digits.slice(0, -decimals)}.${digits.slice(-decimals)}`;
}

/** Minor units a kilogram of "8.50/lb" or "18.74/kg", rounded once, half up. */
export function readPrice(text: string, currency: string): Read<number> {
  const [, sum = '', unit = ''] = priceForm.exec(tidy(text)) ?? [];
  if (sum === '') return { says: 'must be a price that says per what, such as "8.50/lb" or "18.70/kg"' };
  const minor = readMoney(sum, currency);
  if ('says' in minor) return minor;
  if (unit === 'kg') return minor;
  return { value: roundHalfUp(dividedBy(times(ratio(minor.value), gramsIn.kg), gramsIn.lb)) };
}
