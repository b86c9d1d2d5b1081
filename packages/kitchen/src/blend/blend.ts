import { compareRatios, dividedBy, minus, plus, type Ratio, ratio, times } from '@flitchbook/carcass';
import type { KitchenFault } from '../faults.ts';
import { fraction, shareText } from '../quantities.ts';

/** Some trim: its mass in any one unit, and the fraction of it that is fat. */
export interface Trim {
  readonly mass: Ratio;
  readonly fat: Ratio;
}

type OrFaults<T> = T | { readonly faults: readonly KitchenFault[] };

const zero = ratio(0);

const outside = (target: Ratio, low: Ratio, high: Ratio): { readonly faults: readonly KitchenFault[] } => ({
  faults: [
    {
      at: 'target',
      value: shareText(target),
      says: `must lie between ${shareText(low)} and ${shareText(high)}: no mixture of these trims is leaner or fatter than they are`,
    },
  ],
});

/** The fraction of fat in a mixture. @throws RangeError of nothing, or of a fat that is no fraction */
export function fatOf(trims: readonly Trim[]): Ratio {
  const fatMass = trims.reduce((sum, { mass, fat }) => plus(sum, times(mass, fraction(fat, 'fat'))), zero);
  return dividedBy(fatMass, totalMass(trims));
}

const totalMass = (trims: readonly Trim[]): Ratio => trims.reduce((sum, { mass }) => plus(sum, mass), zero);

/**
 * Parts of two trims for a target: the square. Each trim takes as many parts as the other is away from the target.
 * @throws RangeError of a fat that is no fraction
 */
export function squareOfTwo(
  first: Ratio,
  second: Ratio,
  target: Ratio,
): OrFaults<{ readonly first: Ratio; readonly second: Ratio }> {
  const swapped = compareRatios(first, second) < 0;
  const [high, low] = swapped ? [second, first] : [first, second];
  for (const fat of [high, low, target]) fraction(fat, 'fat');
  const [ofHigh, ofLow] = [minus(target, low), minus(high, target)];
  if (ofHigh.over < 0n || ofLow.over < 0n) return outside(target, low, high);
  if (compareRatios(high, low) === 0) return { first: ratio(1), second: zero };
  return swapped ? { first: ofLow, second: ofHigh } : { first: ofHigh, second: ofLow };
}

/** How much of another trim brings what is there to a target: 10 lb of lean to 30 % takes 4.29 lb of pure fat, not 3. */
export function toReach(there: Trim, added: Ratio, target: Ratio): OrFaults<{ readonly mass: Ratio }> {
  if (compareRatios(there.fat, target) === 0) return { mass: zero };
  const parts = squareOfTwo(there.fat, added, target);
  if ('faults' in parts) return parts;
  const reachable = parts.first.over > 0n;
  return reachable
    ? { mass: dividedBy(times(there.mass, parts.second), parts.first) }
    : outside(target, target, there.fat);
}

/**
 * Three trims and more: all but two are settled, and those two fill up to a total at a target.
 * @returns the masses of the two, exactly
 */
export function fillUp(
  settled: readonly Trim[],
  first: Ratio,
  second: Ratio,
  total: Ratio,
  target: Ratio,
): OrFaults<{ readonly first: Ratio; readonly second: Ratio }> {
  const rest = minus(total, totalMass(settled));
  if (rest.over <= 0n)
    return {
      faults: [
        {
          at: 'total',
          value: Number(total.over) / Number(total.under),
          says: 'must be more than what is settled',
        },
      ],
    };
  const settledFat = settled.reduce(
    (sum, { mass, fat }) => plus(sum, times(mass, fraction(fat, 'fat'))),
    zero,
  );
  const restFat = dividedBy(minus(times(fraction(target, 'fat'), total), settledFat), rest);
  const [low, high] = compareRatios(first, second) < 0 ? [first, second] : [second, first];
  if (compareRatios(restFat, low) < 0 || compareRatios(restFat, high) > 0) {
    const bound = (fat: Ratio) => dividedBy(plus(settledFat, times(fat, rest)), total);
    return outside(target, bound(low), bound(high));
  }
  const parts = squareOfTwo(first, second, restFat);
  if ('faults' in parts) return parts;
  const all = plus(parts.first, parts.second);
  return {
    first: dividedBy(times(rest, parts.first), all),
    second: dividedBy(times(rest, parts.second), all),
  };
}
