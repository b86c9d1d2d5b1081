import { type Made, made, slip } from '../slips.ts';
import { priceVerifier, withCheckDigit } from './check-digit.ts';

/**
 * How a shop's own numbers with a price inside are built: prefix, item, verifier digit if wanted, price, check digit.
 * Layouts differ by country and are set by the local GS1 office, so this is the shop's setting.
 */
export interface RetailLayout {
  readonly prefix: string;
  readonly itemDigits: number;
  readonly hasVerifier: boolean;
  /** digits of the price in minor units */
  readonly priceDigits: number;
}

/** Twelve or thirteen digits in all, the check digit included: UPC-A or EAN-13. */
export function checkLayout({ prefix, itemDigits, hasVerifier, priceDigits }: RetailLayout): Made<null> {
  // Restricted circulation starts with 2 on EAN-13 (20 to 29) and on UPC-A.
  if (!/^2\d?$/.test(prefix)) return slip('prefix', prefix, 'a number with a price inside starts with 2');
  const digits = prefix.length + itemDigits + (hasVerifier ? 1 : 0) + priceDigits;
  if (digits !== 11 && digits !== 12)
    return slip(
      'priceDigits',
      priceDigits,
      `the parts make ${digits} digits; 11 (UPC-A) or 12 (EAN-13) are needed before the check digit`,
    );
  if (hasVerifier && priceDigits !== 4 && priceDigits !== 5)
    return slip('priceDigits', priceDigits, 'only prices of 4 or 5 digits have a verifier');
  return made(null);
}

/**
 * The number for a pack at its price. A price that does not fit is refused: it is never cut short.
 * @param item the shop's own number for the cut
 */
export function retailNumber(layout: RetailLayout, item: string, priceMinor: number): Made<string> {
  const checked = checkLayout(layout);
  if (!checked.ok) return checked;
  if (!/^\d+$/.test(item) || item.length !== layout.itemDigits)
    return slip('item', item, `must be ${layout.itemDigits} digits`);
  if (!Number.isSafeInteger(priceMinor) || priceMinor < 0)
    return slip('priceMinor', priceMinor, 'must be a whole number of 0 or more');
  const price = String(priceMinor).padStart(layout.priceDigits, '0');
  if (price.length > layout.priceDigits)
    return slip(
      'priceMinor',
      priceMinor,
      `does not fit into ${layout.priceDigits} digits; print the price in words, or use another symbol`,
    );
  return made(
    withCheckDigit(layout.prefix + item + (layout.hasVerifier ? priceVerifier(price) : '') + price),
  );
}
