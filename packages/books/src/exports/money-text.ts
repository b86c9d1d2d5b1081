/** Digits after the point of a currency (ISO 4217), as the platform knows them. */
const minorDigits = (currency: string): number =>
  new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2;

/** Exact decimal text for machines: 1468 of a currency with two digits is "14.68". */
export function decimalText(minor: number, currency: string): string {
  const digits = minorDigits(currency);
  const sign = minor < 0 ? '-' : '';
  const text = String(Math.abs(minor)).padStart(digits + 1, '0');
  return digits === 0 ? sign + text : `${sign}${text.slice(0, -digits)}.${text.slice(-digits)}`;
}

/** For people, with the currency's sign: never through a binary fraction. */
export const moneyText = (minor: number, currency: string): string =>
  new Intl.NumberFormat('en', { style: 'currency', currency }).format(
    decimalText(minor, currency) as unknown as number,
  );
