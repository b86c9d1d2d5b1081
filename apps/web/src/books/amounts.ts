const digitsOf = (currency: string): number =>
  new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2;

/** What somebody typed as money, in whole minor units; null where it is none. */
export function readAmount(text: string, currency: string): number | null {
  const found = /^(\d{1,9})(?:[.,](\d+))?$/.exec(text.trim());
  const digits = digitsOf(currency);
  if (!found || (found[2]?.length ?? 0) > digits) return null;
  return Number(`${found[1]}${(found[2] ?? '').padEnd(digits, '0')}`);
}

/** Minor units as they would be typed: 1468 is "14.68". */
export function amountText(minor: number, currency: string): string {
  const digits = digitsOf(currency);
  const text = String(minor).padStart(digits + 1, '0');
  return digits === 0 ? text : `${text.slice(0, -digits)}.${text.slice(-digits)}`;
}
