import { describe, expect, it } from 'vitest';
import { type CuttingTestEntry, cookingTest, cuttingTest, toBuy } from './cutting-test.ts';

const perLb = (minor: number) => ({ minor, per: 'lb' }) as const;
const part = (name: string, mass: string, minor = 0) => ({ name, mass, minor });
const ounces = (pounds: number, oz: number) => `${pounds * 16 + oz} oz`;

function taken<T extends object>(answer: T): Exclude<T, { readonly faults: unknown }> {
  if ('faults' in answer) throw new Error(JSON.stringify(answer));
  return answer as Exclude<T, { readonly faults: unknown }>;
}

/** Exercise 6.3 of a food-cost-control textbook. */
const lambLoin: CuttingTestEntry = {
  bought: { mass: '12 lb', price: perLb(665) },
  parts: [
    part('Fat', '3 lb'),
    part('Kidneys', '1 lb', 610),
    part('Flanks', ounces(1, 8), 460),
    part('Cutting loss', ounces(0, 8)),
  ],
  usable: '6 lb',
  portion: '5 oz',
};

/** A textbook problem with its circulated answer; that answer's 22 oz portion is a slip for 10 oz. */
const beefRib: CuttingTestEntry = {
  bought: { mass: ounces(38, 12), price: perLb(319) },
  parts: [
    part('Fat', ounces(6, 8)),
    part('Bones', ounces(4, 4), 32),
    part('Short ribs', ounces(3, 4), 149),
    part('Chopped', ounces(2, 8), 159),
    part('Cutting loss', ounces(0, 4)),
  ],
  usable: '22 lb',
  portion: '10 oz',
};

describe('the butcher’s test', () => {
  it('19: lamb loin', () => {
    const test = taken(cuttingTest(lambLoin));
    expect([test.boughtMilli, test.creditMilli, test.usableMilli]).toEqual([7_980_000, 1_300_000, 6_680_000]);
    expect(test.perUnitMilli / 100_000).toBeCloseTo(11.1333, 4);
    expect(test.perUnitMilli / 100_000 / 16).toBeCloseTo(0.69583, 4);
    expect(test.portionMilli! / 100_000).toBeCloseTo(3.4792, 4);
    expect(test.factorPpm / 1e6).toBeCloseTo(1.6742, 4);
    expect(test.portionFactorPpm! / 1e6).toBeCloseTo(0.5232, 4);
    expect(test.shares.map(({ ppm }) => Math.round(ppm / 100) / 100)).toEqual([25, 8.33, 12.5, 4.17]);
    expect(test.missingMg).toBe(0);
  });

  it('20: rib of beef', () => {
    const test = taken(cuttingTest(beefRib));
    expect(test.usableMilli / 100_000).toBeCloseTo(113.435, 4);
    expect(test.perUnitMilli / 100_000).toBeCloseTo(5.15614, 4);
    expect(test.portionMilli! / 100_000).toBeCloseTo(3.22259, 4);
    expect(test.factorPpm / 1e6).toBeCloseTo(1.61634, 5);
    expect(test.portionFactorPpm! / 1e6).toBeCloseTo(1.01021, 4);
    expect(test.usablePpm / 1e4).toBeCloseTo(56.77, 2);
  });

  it('20, cooked: 20 lb 4 oz out of the oven, 19 lb to sell', () => {
    const credited = taken(cookingTest(beefRib, ounces(20, 4), '19 lb', 'by-products-credited'));
    expect(credited.perUnitMilli / 100_000).toBeCloseTo(5.97026, 4);
    expect(credited.portionMilli! / 100_000).toBeCloseTo(3.73141, 4);
    expect(credited.factorPpm / 1e6).toBeCloseTo(1.87156, 5);
    expect(credited.portionFactorPpm! / 1e6).toBeCloseTo(1.16972, 5);
    const full = taken(cookingTest(beefRib, ounces(20, 4), '19 lb', 'full-cost'));
    expect(full.perUnitMilli / 100_000).toBeCloseTo(6.50592, 4);
    expect([full.convention, full.cookingLossMg / 453_592.37]).toEqual([
      'full-cost',
      expect.closeTo(1.75, 4),
    ]);
  });

  it('19, cooked: the book takes the full cost, and the credit would make it 13.36; the answer says which', () => {
    const cooked = (convention: 'full-cost' | 'by-products-credited') =>
      taken(cookingTest(lambLoin, ounces(5, 8), '5 lb', convention));
    expect(cooked('full-cost').perUnitMilli / 100_000).toBeCloseTo(15.96, 2);
    expect(cooked('full-cost').factorPpm / 1e6).toBeCloseTo(2.4, 2);
    expect(cooked('by-products-credited').perUnitMilli / 100_000).toBeCloseTo(13.36, 2);
    expect(cooked('by-products-credited').factorPpm / 1e6).toBeCloseTo(2.009, 3);
  });

  it('beef rib of 28 lb at 1.30 (culinary blog): 28.40 is left, where the page prints 22.40', () => {
    const test = taken(
      cuttingTest({
        bought: { mass: '28 lb', price: perLb(130) },
        parts: [part('Fat', '3 lb', 10), part('Bones', '4 lb', 30), part('Trim', '5 lb', 130)],
        usable: '16 lb',
      }),
    );
    expect(test.usableMilli).toBe(2_840_000);
    expect(test.perUnitMilli / 100_000).toBeCloseTo(1.775, 3);
    expect(test.usablePpm / 1e4).toBeCloseTo(57.14, 2);
    expect(test.factorPpm / 1e6).toBeCloseTo(1.36538, 4);
  });

  it('22: striploin of 5.2 kg to 4.6 (Canadian trade lesson): 88.46 %, 13.509 a kilogram, 16.335 kg for 85 portions of 170 g', () => {
    const test = taken(
      cuttingTest({
        bought: { mass: '5.2 kg', price: { minor: 1195, per: 'kg' } },
        parts: [],
        usable: '4.6 kg',
      }),
    );
    expect(test.usablePpm / 1e4).toBeCloseTo(88.46, 2);
    expect(test.perUnitMilli / 100_000).toBeCloseTo(13.509, 2);
    expect(toBuy(85, '170 g', test.usablePpm) / 1e6).toBeCloseTo(16.335, 2);
    // 48 portions of 4 oz at a yield of 0.425: the textbook of the rib of beef.
    expect(toBuy(48, '4 oz', 425_000) / 453_592.37).toBeCloseTo(28.235, 3);
  });

  it.each([
    ['parts that weigh more than was bought', { usable: '8 lb' }, 'parts'],
    ['nothing usable', { usable: '0 lb' }, 'usable'],
    ['a weight without a unit', { usable: '6' }, 'usable'],
    ['a price of 0', { bought: { mass: '12 lb', price: perLb(0) } }, 'bought.price.minor'],
    ['a negative credit', { parts: [part('Fat', '1 lb', -5)] }, 'parts[0].minor'],
  ])('refuses %s by name', (_, change, at) => {
    const answer = cuttingTest({ ...lambLoin, ...change });
    expect('faults' in answer && answer.faults.map((fault) => fault.at)).toContain(at);
  });

  it('refuses meat that gains in the oven', () => {
    expect(cookingTest(beefRib, '23 lb', '19 lb', 'full-cost')).toMatchObject({ faults: [{ at: 'cooked' }] });
    expect(cookingTest(beefRib, '20 lb', '21 lb', 'full-cost')).toMatchObject({
      faults: [{ at: 'saleable' }],
    });
    expect(() => toBuy(1, '1 lb', 0)).toThrow(/yieldPpm/);
  });
});
