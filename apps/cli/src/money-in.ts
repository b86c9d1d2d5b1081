/** Says minor units of a currency (ISO 4217). */
export function moneyIn(currency: string): (minor: number) => string {
  const form = new Intl.NumberFormat('en', { style: 'currency', currency });
  const scale = 10 ** (form.resolvedOptions().maximumFractionDigits ?? 2);
  return (minor) => form.format(minor / scale);
}
