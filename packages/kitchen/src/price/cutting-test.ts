import {
  compareRatios,
  dividedBy,
  gramsIn,
  minus,
  plus,
  type Ratio,
  ratio,
  roundHalfUp,
  times,
} from '@flitchbook/carcass';
import { FaultList, type KitchenFault } from '../faults.ts';
import { readMassMg } from '../quantities.ts';

/** Whole minor units for a kilogram or a pound. */
export interface UnitPrice {
  readonly minor: number;
  readonly per: 'kg' | 'lb';
}

export interface CuttingTestEntry {
  readonly bought: { readonly mass: string; readonly price: UnitPrice };
  /** what fell off: each is credited at what it brings, waste at 0 */
  readonly parts: readonly { readonly name: string; readonly mass: string; readonly minor: number }[];
  readonly usable: string;
  readonly portion?: string;
}

export interface Costing {
  /** minor units a unit of the price, in thousandths */
  readonly perUnitMilli: number;
  readonly per: UnitPrice['per'];
  readonly portionMilli: number | null;
  /** cost of a usable unit over the price of a bought one, in millionths: times the next price, it is the next cost */
  readonly factorPpm: number;
  readonly portionFactorPpm: number | null;
}

export interface CuttingTest extends Costing {
  readonly boughtMilli: number;
  readonly creditMilli: number;
  readonly usableMilli: number;
  /** of the bought weight, in millionths */
  readonly shares: readonly { readonly name: string; readonly ppm: number; readonly creditMilli: number }[];
  readonly usablePpm: number;
  /** bought, and neither usable nor listed */
  readonly missingMg: number;
}

const milli = (value: Ratio): number => roundHalfUp(times(value, ratio(1000)));
const millionths = (value: Ratio): number => roundHalfUp(times(value, ratio(1_000_000)));

class TestReader extends FaultList {
  mass(at: string, text: string): Ratio {
    const read = readMassMg(text);
    if ('says' in read) this.add(at, text, read.says);
    return 'value' in read ? read.value : ratio(1);
  }
}

/** Minor units a milligram. */
const priceOf = (minor: number, per: UnitPrice['per']): Ratio =>
  dividedBy(ratio(minor), times(gramsIn[per], ratio(1000)));

function costing(value: Ratio, left: Ratio, portion: Ratio | null, price: UnitPrice): Costing {
  const perMg = dividedBy(value, left);
  const perUnit = times(perMg, times(gramsIn[price.per], ratio(1000)));
  const ofPortion = portion && times(perMg, portion);
  return {
    perUnitMilli: milli(perUnit),
    per: price.per,
    portionMilli: ofPortion && milli(ofPortion),
    factorPpm: millionths(dividedBy(perUnit, ratio(price.minor))),
    portionFactorPpm: ofPortion && millionths(dividedBy(ofPortion, ratio(price.minor))),
  };
}

interface Weighed {
  readonly bought: Ratio;
  readonly parts: readonly { readonly name: string; readonly mass: Ratio; readonly credit: Ratio }[];
  readonly usable: Ratio;
  readonly portion: Ratio | null;
  readonly price: UnitPrice;
}

function readTest(entry: CuttingTestEntry): Weighed | { readonly faults: readonly KitchenFault[] } {
  const reader = new TestReader();
  const { bought, parts, usable, portion } = entry;
  reader.whole('bought.price.minor', bought.price.minor, 1, 1_000_000_000);
  const read = {
    bought: reader.mass('bought.mass', bought.mass),
    usable: reader.mass('usable', usable),
    portion: portion === undefined ? null : reader.mass('portion', portion),
    price: bought.price,
    parts: parts.map(({ name, mass, minor }, index) => {
      reader.whole(`parts[${index}].minor`, minor, 0, 1_000_000_000);
      const weighed = reader.mass(`parts[${index}].mass`, mass);
      return {
        name,
        mass: weighed,
        credit: times(weighed, priceOf(Math.max(0, Math.round(minor)) || 0, bought.price.per)),
      };
    }),
  };
  reader.need(read.usable.over > 0n, 'usable', usable, 'must be above 0');
  const made = read.parts.reduce((sum, { mass }) => plus(sum, mass), read.usable);
  reader.need(
    compareRatios(made, read.bought) <= 0,
    'parts',
    parts,
    'weigh more with what is usable than was bought',
  );
  return reader.faults.length > 0 ? { faults: reader.faults } : read;
}

/** The butcher's test: what a usable unit of a primal costs once what fell off is credited. Parts are priced by the unit that was bought. */
export function cuttingTest(
  entry: CuttingTestEntry,
): CuttingTest | { readonly faults: readonly KitchenFault[] } {
  const read = readTest(entry);
  if ('faults' in read) return read;
  const { bought, parts, usable, portion, price } = read;
  const total = times(bought, priceOf(price.minor, price.per));
  const credit = parts.reduce((sum, part) => plus(sum, part.credit), ratio(0));
  const listed = parts.reduce((sum, { mass }) => plus(sum, mass), usable);
  return {
    ...costing(minus(total, credit), usable, portion, price),
    boughtMilli: milli(total),
    creditMilli: milli(credit),
    usableMilli: milli(minus(total, credit)),
    shares: parts.map(({ name, mass, credit: worth }) => ({
      name,
      ppm: millionths(dividedBy(mass, bought)),
      creditMilli: milli(worth),
    })),
    usablePpm: millionths(dividedBy(usable, bought)),
    missingMg: roundHalfUp(minus(bought, listed)),
  };
}

/** Whether the cooked piece carries the price of all that was bought, or that less what fell off. Books do both. */
export type CookingConvention = 'by-products-credited' | 'full-cost';

export interface CookingTest extends Costing {
  readonly convention: CookingConvention;
  readonly trimmingMg: number;
  readonly cookingLossMg: number;
}

/** The cooking test on the same piece. @param cooked out of the oven @param saleable after carving */
export function cookingTest(
  entry: CuttingTestEntry,
  cooked: string,
  saleable: string,
  convention: CookingConvention,
): CookingTest | { readonly faults: readonly KitchenFault[] } {
  const read = readTest(entry);
  if ('faults' in read) return read;
  const reader = new TestReader();
  const [hot, served] = [reader.mass('cooked', cooked), reader.mass('saleable', saleable)];
  reader.need(compareRatios(hot, read.usable) <= 0, 'cooked', cooked, 'weighs more than it did raw');
  reader.need(
    served.over > 0n && compareRatios(served, hot) <= 0,
    'saleable',
    saleable,
    'must be above 0 and at most what was cooked',
  );
  if (reader.faults.length > 0) return { faults: reader.faults };
  const total = times(read.bought, priceOf(read.price.minor, read.price.per));
  const credit = read.parts.reduce((sum, part) => plus(sum, part.credit), ratio(0));
  const value = convention === 'full-cost' ? total : minus(total, credit);
  return {
    ...costing(value, served, read.portion, read.price),
    convention,
    trimmingMg: roundHalfUp(minus(read.bought, read.usable)),
    cookingLossMg: roundHalfUp(minus(read.usable, hot)),
  };
}

/** What must be bought for portions, milligrams: portions times their size over the yield. */
export function toBuy(portions: number, portion: string, yieldPpm: number): number {
  const read = readMassMg(portion);
  if ('says' in read) throw new RangeError(`portion ${read.says}, got "${portion}"`);
  if (!(yieldPpm > 0 && yieldPpm <= 1_000_000))
    throw new RangeError(`yieldPpm must be above 0 and at most 1000000, got ${yieldPpm}`);
  return roundHalfUp(dividedBy(times(times(read.value, ratio(portions)), ratio(1_000_000)), ratio(yieldPpm)));
}
