import { isDate } from '../dates.ts';
import type { UnitPrice } from './cutting-test.ts';

/** Prices from a day on. A list is never changed: a new one follows it. */
export interface PriceList {
  readonly version: number;
  readonly from: string;
  readonly prices: Readonly<Record<string, UnitPrice>>;
}

/** The list that holds on a day, or nothing before the first. */
export function listOn(lists: readonly PriceList[], date: string): PriceList | undefined {
  return lists.filter(({ from }) => from <= date).sort((a, b) => b.version - a.version)[0];
}

/**
 * The next list: what changes, and all else as before. Null takes a cut off.
 * @throws RangeError when it would begin before the last one, or a price is not whole and 0 or more
 */
export function nextList(
  lists: readonly PriceList[],
  from: string,
  changes: Readonly<Record<string, UnitPrice | null>>,
): PriceList {
  const last = [...lists].sort((a, b) => b.version - a.version)[0];
  if (!isDate(from)) throw new RangeError(`from must be a day that exists, as yyyy-mm-dd, got "${from}"`);
  if (last && from < last.from)
    throw new RangeError(`from must not be before ${last.from}, when the last list began, got "${from}"`);
  const prices: Record<string, UnitPrice> = { ...last?.prices };
  for (const [cutId, price] of Object.entries(changes)) {
    if (price && !(Number.isSafeInteger(price.minor) && price.minor >= 0))
      throw new RangeError(`${cutId} must have whole minor units of 0 or more, got ${price.minor}`);
    if (price) prices[cutId] = price;
    else delete prices[cutId];
  }
  return { version: (last?.version ?? 0) + 1, from, prices };
}
