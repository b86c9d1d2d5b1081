import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { animalMargin, costPerUsableKg, feeQuote } from './animal-margin.ts';
import { compareWays } from './compare-ways.ts';
import { type MarginPrices, marginPrices, type PricedCut } from './margin-prices.ts';
import { listOn, nextList } from './price-lists.ts';

const kg = 1_000_000;
const cut = (cutId: string, kilograms: number, referenceMinorPerKg: number): PricedCut => ({
  cutId,
  massMg: Math.round(kilograms * kg),
  referenceMinorPerKg,
});
const hog = [
  cut('tenderloin', 0.7, 3000),
  cut('chop', 9, 1500),
  cut('belly', 16, 1300),
  cut('ham', 20, 800),
  cut('trim', 8, 400),
];
const target = { costMinor: 60_000, marginPpm: 300_000, per: 'kg', by: 'sales-value' } as const;

function priced(cuts: readonly PricedCut[], change: object = {}): MarginPrices {
  const made = marginPrices(cuts, { ...target, ...change });
  if ('faults' in made) throw new Error(JSON.stringify(made.faults));
  return made;
}

describe('the price of every cut', () => {
  it('carries cost and margin in proportion to sales value', () => {
    const { prices, salesMinor, factorPpm } = priced(hog);
    // Worked by hand: 60 000 over 0.7 is 85 714.3; the cuts are worth 55 600 at their references.
    expect(factorPpm).toBe(Math.round((600_000 / 7 / 55_600) * 1e6));
    expect(salesMinor).toBeGreaterThanOrEqual(85_714);
    expect(prices.map(({ price }) => price.minor)).toEqual([4625, 2313, 2005, 1234, 617]);
  });

  it('by bid prices: what nobody is short of carries nothing, and what is fixed is left alone', () => {
    const cuts = [
      cut('tenderloin', 0.7, 2800),
      cut('ham', 20, 0),
      { ...cut('bone', 4, 0), fixed: { minor: 100, per: 'kg' } as const },
    ];
    const { prices, by } = priced(cuts, { by: 'bid-prices', costMinor: 1000 });
    expect(prices[1]!.price.minor).toBe(0);
    expect(prices[2]!.price.minor).toBe(100);
    expect(by).toBe('bid-prices');
  });

  it('always makes its margin, in kilograms and in pounds', () => {
    const anyCut = fc.tuple(fc.integer({ min: 1000, max: 50 * kg }), fc.integer({ min: 1, max: 9000 }));
    const per = fc.constantFrom('kg', 'lb');
    fc.assert(
      fc.property(
        fc.array(anyCut, { minLength: 1, maxLength: 30 }),
        fc.integer({ min: 0, max: 500_000 }),
        fc.integer({ min: 0, max: 900_000 }),
        per,
        (cuts, costMinor, marginPpm, unit) => {
          const list = cuts.map(
            ([massMg, referenceMinorPerKg], index): PricedCut => ({
              cutId: `cut-${index}`,
              massMg,
              referenceMinorPerKg,
            }),
          );
          const { salesMinor } = priced(list, { costMinor, marginPpm, per: unit });
          // Lines are rounded half up once each, so half a minor unit a line may be missing.
          expect(salesMinor + list.length / 2).toBeGreaterThanOrEqual(
            costMinor / (1 - marginPpm / 1e6) - 1e-6,
          );
        },
      ),
    );
  });

  it.each([
    ['a margin of all of it', hog, { marginPpm: 1_000_000 }, 'marginPpm'],
    ['a negative cost', hog, { costMinor: -1 }, 'costMinor'],
    ['a cut twice', [hog[0]!, hog[0]!], {}, 'cuts[1].cutId'],
    ['a cut of no weight', [{ ...hog[0]!, massMg: 0 }], {}, 'cuts[0].massMg'],
    ['nothing to carry the cost', [cut('bone', 4, 0)], {}, 'cuts'],
  ])('refuses %s by name', (_, cuts, change, at) => {
    expect(marginPrices(cuts, { ...target, ...change })).toMatchObject({ faults: [{ at }] });
  });
});

describe('bone-in against boneless (Journal of Animal Science, January 1996: 180 loins)', () => {
  const loin = 7_665_000;
  const boneIn = (minorPerKg: number, ppm = 940_000) => ({
    name: 'bone-in',
    products: [{ name: 'bone-in chops', ppm, minorPerKg }] as const,
    seconds: 271,
  });
  const boneless = (minorPerKg: number, ppm = 745_000) =>
    ({
      name: 'boneless',
      products: [
        { name: 'boneless chops', ppm, minorPerKg },
        { name: 'back ribs', ppm: 95_000, minorPerKg: 1100 },
      ],
      seconds: 542,
    }) as const;

  it('12: bone-in keeps 92.8 to 95.3 %, boneless 71.1 to 77.9 %: 15 to 24 points apart, twice the hands', () => {
    const kept = (ppm: number) =>
      compareWays(
        100 * kg,
        [
          { ...boneIn(100, ppm), seconds: 0 },
          { ...boneIn(0), name: 'none' },
        ],
        0,
      )[0]!.salesMinor / 100;
    expect([kept(928_000) - kept(779_200), kept(952_800) - kept(711_200)]).toEqual([
      expect.closeTo(15, 0),
      expect.closeTo(24, 0),
    ]);
    expect(453 / 223).toBeCloseTo(2, 0);
  });

  it('tells which is worth more, labour in, and at what price it tips', () => {
    const [best, other] = compareWays(loin, [boneIn(1200), boneless(1500)], 3600);
    expect([best!.name, other!.name]).toEqual(['boneless', 'bone-in']);
    const tipped = compareWays(loin, [boneIn(other!.evenMinorPerKg), boneless(1500)], 3600);
    expect(Math.abs(tipped[0]!.netMinor - tipped[1]!.netMinor)).toBeLessThanOrEqual(5);
    const [cheaper] = compareWays(loin, [boneIn(1200), boneless(best!.evenMinorPerKg - 5)], 3600);
    expect(cheaper!.name).toBe('bone-in');
  });

  it('refuses one way alone, and more than the loin weighs', () => {
    expect(() => compareWays(loin, [boneIn(1)], 0)).toThrow(/two at least/);
    expect(() => compareWays(loin, [boneIn(1), boneIn(1, 1_000_001)], 0)).toThrow(
      /more than the primal weighs/,
    );
  });
});

describe('what an animal earned', () => {
  const costs = {
    animalMinor: 40_000,
    slaughterMinor: 9_000,
    packingMinor: 1_500,
    minutes: 190,
    labourMinorPerHour: 3_000,
  };
  it('by channel, cost after sales value, to the minor unit; case 57: bones are never counted as meat', () => {
    const margin = animalMargin(
      [
        { channel: 'counter', minor: 30_001, massMg: 20 * kg, kind: 'meat' },
        { channel: 'counter', minor: 400, massMg: 4 * kg, kind: 'extra' },
        { channel: 'restaurants', minor: 45_000, massMg: 35 * kg, kind: 'meat' },
      ],
      costs,
    );
    if ('faults' in margin) throw new Error('refused');
    expect([margin.salesMinor, margin.costMinor, margin.marginMinor]).toEqual([75_401, 60_000, 15_401]);
    const [counter, restaurants] = margin.channels;
    expect([counter!.meatMg, counter!.extraMg]).toEqual([20 * kg, 4 * kg]);
    expect(counter!.costMinor + restaurants!.costMinor).toBe(60_000);
    expect(counter!.marginMinor + restaurants!.marginMinor).toBe(15_401);
  });

  it('stands when nothing is sold, and refuses costs that cannot be', () => {
    expect(animalMargin([], costs)).toMatchObject({ marginMinor: -60_000, channels: [] });
    expect(animalMargin([], { ...costs, minutes: -1 })).toMatchObject({ faults: [{ at: 'costs.minutes' }] });
  });

  it('case 83: halves are cheaper a pound than boxes until a day’s labour and bones nobody wants are in', () => {
    const half = { priceMinor: 30_000, usableMg: 60 * kg, minutes: 480, byProductsMinor: 0 };
    const boxed = { priceMinor: 42_000, usableMg: 60 * kg, minutes: 60, byProductsMinor: 0 };
    expect(half.priceMinor).toBeLessThan(boxed.priceMinor);
    expect(costPerUsableKg(half, 2_500)).toBe(833);
    expect(costPerUsableKg(boxed, 2_500)).toBe(742);
    expect(costPerUsableKg({ ...half, byProductsMinor: 9_000 }, 2_500)).toBe(683);
    expect(() => costPerUsableKg({ ...half, usableMg: 0 }, 1)).toThrow(/usableMg/);
  });

  it('case 52: the fees are on the table before the order: half the sausage in links, all of it seasoned', () => {
    const quote = feeQuote(
      [
        { name: 'Links', massMg: 15 * kg, feeMinorPerKg: 550 },
        { name: 'Seasoning', massMg: 30 * kg, feeMinorPerKg: 165 },
      ],
      14_000,
    );
    expect(quote).toEqual({
      lines: [
        { name: 'Links', feeMinor: 8250 },
        { name: 'Seasoning', feeMinor: 4950 },
      ],
      feesMinor: 13_200,
      ofAnimalPpm: 942_857,
    });
  });
});

describe('price lists', () => {
  it('follow each other and never change', () => {
    const first = nextList([], '2026-11-01', {
      chop: { minor: 1500, per: 'kg' },
      ham: { minor: 900, per: 'kg' },
    });
    const second = nextList([first], '2026-12-01', { chop: { minor: 1600, per: 'kg' }, ham: null });
    expect(second).toEqual({ version: 2, from: '2026-12-01', prices: { chop: { minor: 1600, per: 'kg' } } });
    expect(first.prices['chop']!.minor).toBe(1500);
    const lists = [second, first];
    expect([listOn(lists, '2026-10-31'), listOn(lists, '2026-11-30'), listOn(lists, '2026-12-01')]).toEqual([
      undefined,
      first,
      second,
    ]);
    expect(() => nextList(lists, '2026-11-30', {})).toThrow(/must not be before 2026-12-01/);
    expect(() => nextList(lists, '2026-12-02', { chop: { minor: 1.5, per: 'kg' } })).toThrow(/chop/);
  });
});
