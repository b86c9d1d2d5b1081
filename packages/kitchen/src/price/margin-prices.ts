import { dividedBy, gramsIn, minus, plus, type Ratio, ratio, roundHalfUp, times } from '@flitchbook/carcass';
import { FaultList, type KitchenFault } from '../faults.ts';
import type { UnitPrice } from './cutting-test.ts';

const whole = 1_000_000;

/** A cut of the animal with what it is priced after. */
export interface PricedCut {
  readonly cutId: string;
  readonly massMg: number;
  /** what the market pays, or what one more would bring by the plan's bid price; minor units a kilogram */
  readonly referenceMinorPerKg: number;
  /** not to be moved: bones, extras, what is agreed */
  readonly fixed?: UnitPrice;
}

export interface PriceTarget {
  /** all that the animal costs: its price, slaughter, labour, packing */
  readonly costMinor: number;
  /** of what it brings, in millionths */
  readonly marginPpm: number;
  readonly per: UnitPrice['per'];
  readonly by: 'sales-value' | 'bid-prices';
}

export interface MarginPrices {
  readonly by: PriceTarget['by'];
  readonly prices: readonly {
    readonly cutId: string;
    readonly price: UnitPrice;
    readonly lineMinor: number;
  }[];
  readonly salesMinor: number;
  readonly marginPpm: number;
  /** what each minor unit of the reference became, millionths */
  readonly factorPpm: number;
}

const perMg = (minor: Ratio, per: UnitPrice['per']): Ratio =>
  dividedBy(minor, times(gramsIn[per], ratio(1000)));
const up = ({ over, under }: Ratio): number => Number((over + under - 1n) / under);

function check(cuts: readonly PricedCut[], { costMinor, marginPpm }: PriceTarget): KitchenFault[] {
  const list = new FaultList();
  list.whole('costMinor', costMinor, 0, 1_000_000_000_000);
  list.whole('marginPpm', marginPpm, 0, whole - 1);
  for (const [index, { massMg, referenceMinorPerKg, fixed, cutId }] of cuts.entries()) {
    list.whole(`cuts[${index}].massMg`, massMg, 1, 10_000_000_000);
    list.whole(`cuts[${index}].referenceMinorPerKg`, referenceMinorPerKg, 0, 1_000_000_000);
    if (fixed) list.whole(`cuts[${index}].fixed.minor`, fixed.minor, 0, 1_000_000_000);
    list.need(
      cuts.findIndex((cut) => cut.cutId === cutId) === index,
      `cuts[${index}].cutId`,
      cutId,
      'stands there twice',
    );
  }
  return list.faults;
}

/**
 * A price for every cut, so that the animal brings its cost and the margin if all of it is sold. Each free cut carries the
 * cost in proportion to its reference; prices are rounded up to whole minor units, so that the margin is met.
 */
export function marginPrices(
  cuts: readonly PricedCut[],
  target: PriceTarget,
): MarginPrices | { readonly faults: readonly KitchenFault[] } {
  const faults = check(cuts, target);
  if (faults.length > 0) return { faults };
  const needed = dividedBy(times(ratio(target.costMinor), ratio(whole)), ratio(whole - target.marginPpm));
  const worth = (cut: PricedCut): Ratio =>
    times(perMg(ratio(cut.referenceMinorPerKg), 'kg'), ratio(cut.massMg));
  const settled = cuts.reduce(
    (sum, { fixed, massMg }) =>
      fixed ? plus(sum, times(perMg(ratio(fixed.minor), fixed.per), ratio(massMg))) : sum,
    ratio(0),
  );
  const free = cuts.reduce((sum, cut) => (cut.fixed ? sum : plus(sum, worth(cut))), ratio(0));
  const open = minus(needed, settled);
  if (open.over > 0n && free.over === 0n)
    return {
      faults: [
        { at: 'cuts', value: cuts.length, says: 'hold nothing with a reference that could carry the cost' },
      ],
    };
  const factor = open.over > 0n ? dividedBy(open, free) : ratio(0);
  const prices = cuts.map(({ cutId, massMg, referenceMinorPerKg, fixed }) => {
    const perUnit = times(
      times(perMg(times(ratio(referenceMinorPerKg), factor), 'kg'), times(gramsIn[target.per], ratio(1000))),
      ratio(1),
    );
    const price = fixed ?? { minor: up(perUnit), per: target.per };
    return {
      cutId,
      price,
      lineMinor: roundHalfUp(times(perMg(ratio(price.minor), price.per), ratio(massMg))),
    };
  });
  const salesMinor = prices.reduce((sum, { lineMinor }) => sum + lineMinor, 0);
  const earned = salesMinor === 0 ? ratio(0) : ratio(salesMinor - target.costMinor, salesMinor);
  return {
    by: target.by,
    prices,
    salesMinor,
    marginPpm: roundHalfUp(times(earned, ratio(whole))),
    factorPpm: roundHalfUp(times(factor, ratio(whole))),
  };
}
