import { dividedBy, minus, plus, type Ratio, ratio, roundHalfUp, times } from '@flitchbook/carcass';

/** One way to sell a primal: what it becomes, and the hands it takes. */
export interface SellingWay {
  readonly name: string;
  /** shares of the primal's mass, millionths; the first is what the way is named for */
  readonly products: readonly [Product, ...Product[]];
  readonly seconds: number;
}

interface Product {
  readonly name: string;
  readonly ppm: number;
  readonly minorPerKg: number;
}

export interface WayWorth {
  readonly name: string;
  readonly salesMinor: number;
  readonly labourMinor: number;
  readonly netMinor: number;
  /** price of its first product at which it is worth as much as the best other way, minor units a kilogram */
  readonly evenMinorPerKg: number;
}

const kgIn = ratio(1, 1_000_000);

function net(
  { products, seconds }: SellingWay,
  massMg: number,
  labourMinorPerHour: number,
): { sales: Ratio; labour: Ratio } {
  const sales = products.reduce(
    (sum, { ppm, minorPerKg }) =>
      plus(sum, times(times(ratio(massMg), kgIn), ratio(ppm * minorPerKg, 1_000_000))),
    ratio(0),
  );
  return { sales, labour: ratio(seconds * labourMinorPerHour, 3600) };
}

/**
 * Ways to sell one primal, best first: bone-in against boneless, with the labour of each.
 * @throws RangeError when there are fewer than two, or a way makes more than the primal weighs
 */
export function compareWays(
  massMg: number,
  ways: readonly SellingWay[],
  labourMinorPerHour: number,
): WayWorth[] {
  if (ways.length < 2) throw new RangeError(`ways must be two at least, got ${ways.length}`);
  for (const { name, products } of ways) {
    const made = products.reduce((sum, { ppm }) => sum + ppm, 0);
    if (made > 1_000_000)
      throw new RangeError(`${name} must not make more than the primal weighs, got ${made} millionths`);
  }
  const worths = ways.map((way) => ({ way, ...net(way, massMg, labourMinorPerHour) }));
  const left = ({ sales, labour }: { sales: Ratio; labour: Ratio }): Ratio => minus(sales, labour);
  return worths
    .map((entry) => {
      const others = worths.filter(({ way }) => way !== entry.way).map(left);
      const rival = others.reduce((best, other) => (minus(other, best).over > 0n ? other : best));
      const [first] = entry.way.products;
      const firstKg = times(times(ratio(massMg), kgIn), ratio(first.ppm, 1_000_000));
      const even = plus(ratio(first.minorPerKg), dividedBy(minus(rival, left(entry)), firstKg));
      return {
        name: entry.way.name,
        salesMinor: roundHalfUp(entry.sales),
        labourMinor: roundHalfUp(entry.labour),
        netMinor: roundHalfUp(left(entry)),
        evenMinorPerKg: roundHalfUp(even),
      };
    })
    .sort((a, b) => b.netMinor - a.netMinor);
}
