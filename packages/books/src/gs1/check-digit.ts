/**
 * The check digit of a GS1 number: from the right, weights 3, 1, 3, 1 ...; the digit that lifts the sum to the next ten.
 * GS1 General Specifications, section 7.9.1.
 * @param digits without the check digit
 * @throws RangeError when it is not 1 to 17 decimal digits
 */
export function checkDigit(digits: string): string {
  if (!/^\d{1,17}$/.test(digits)) throw new RangeError(`must be 1 to 17 digits, got "${digits}"`);
  const sum = [...digits]
    .reverse()
    .reduce((running, digit, place) => running + Number(digit) * (place % 2 === 0 ? 3 : 1), 0);
  return String((10 - (sum % 10)) % 10);
}

export const withCheckDigit = (digits: string): string => digits + checkDigit(digits);

/** Whether a number of 8, 12, 13 or 14 digits ends in the digit that it should. */
export const hasCheckDigit = (number: string): boolean =>
  /^(\d{8}|\d{12,14})$/.test(number) && checkDigit(number.slice(0, -1)) === number.slice(-1);

type Weight = '2-' | '3' | '5+' | '5-';

/** Products of the weighted digits, by digit (GS1 General Specifications, section 7.9.2). */
const weighted: Readonly<Record<Weight, readonly number[]>> = {
  '2-': [0, 2, 4, 6, 8, 9, 1, 3, 5, 7],
  '3': [0, 3, 6, 9, 2, 5, 8, 1, 4, 7],
  '5+': [0, 5, 1, 6, 2, 7, 3, 8, 4, 9],
  '5-': [0, 5, 9, 4, 8, 3, 7, 2, 6, 1],
};

const sumWeighted = (digits: string, weights: readonly Weight[]): number =>
  weights.reduce((sum, weight, place) => sum + (weighted[weight][Number(digits[place])] ?? 0), 0);

/**
 * The digit that guards a price inside a number, so that a torn symbol is not read as another price.
 * GS1 General Specifications, sections 7.9.3 (four digits) and 7.9.4 (five digits).
 * @throws RangeError unless 4 or 5 decimal digits
 */
export function priceVerifier(price: string): string {
  if (/^\d{4}$/.test(price)) return String((sumWeighted(price, ['2-', '2-', '3', '5-']) * 3) % 10);
  if (/^\d{5}$/.test(price)) {
    const gap = (10 - (sumWeighted(price, ['5+', '2-', '5-', '5+', '2-']) % 10)) % 10;
    return String(weighted['5-'].indexOf(gap));
  }
  throw new RangeError(`a price of 4 or 5 digits has a verifier, got "${price}"`);
}
