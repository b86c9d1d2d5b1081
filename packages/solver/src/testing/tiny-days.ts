import { hog, type Portion } from '@flitchbook/carcass';
import type { CuttingDay, DemandLine } from '@flitchbook/plan';
import fc from 'fast-check';

const wanted: readonly { readonly cut: string; readonly portion: Portion }[] = [
  { cut: 'tenderloin', portion: { by: 'whole' } },
  { cut: 'back-ribs', portion: { by: 'whole' } },
  { cut: 'spareribs', portion: { by: 'whole' } },
  { cut: 'coppa', portion: { by: 'whole' } },
  { cut: 'porchetta', portion: { by: 'whole' } },
  { cut: 't-bone-chop', portion: { by: 'thickness', um: 31_750 } },
  { cut: 'rib-chop', portion: { by: 'thickness', um: 25_400 } },
  { cut: 'boneless-chop', portion: { by: 'thickness', um: 38_100 } },
  { cut: 'long-bone-chop', portion: { by: 'ribs', ribs: 1 } },
  { cut: 'slab-bacon', portion: { by: 'weight', fromGrams: 1400, toGrams: 1900 } },
];

/** Any line of a tiny day. */
export const lineOf = fc.record({
  which: fc.integer({ min: 0, max: wanted.length - 1 }),
  pieces: fc.integer({ min: 1, max: 6 }),
  price: fc.integer({ min: 300, max: 3000 }),
  promised: fc.boolean(),
});

type Asked = typeof lineOf extends fc.Arbitrary<infer One> ? One : never;

/** A day of one side with a few lines: with two, the plain model is not proven within seconds. */
export function tinyDay(lines: readonly Asked[]): CuttingDay {
  return {
    dayId: 'tiny',
    date: '2026-11-26',
    species: { hog },
    animals: [
      {
        animalId: 'hog',
        name: 'hog',
        speciesId: 'hog',
        lostItems: [],
        sides: (['left'] as const).map((hand) => ({
          sideId: hand,
          animalId: 'hog',
          hand,
          massMg: 41_776_000,
          carcassGrams: 83_552,
          ribs: 15,
          facts: ['skin-on', 'head', 'feet', 'organs'] as const,
          lostParts: [],
        })),
      },
    ],
    lines: lines.map(
      ({ which, pieces, price, promised }, nth): DemandLine => ({
        lineId: `line ${nth}`,
        orderId: `order ${nth}`,
        owner: `customer ${nth}`,
        speciesId: 'hog',
        ...(wanted[which] as (typeof wanted)[number]),
        ask: { pieces },
        rank: promised ? 'promised' : 'wished',
        priceMinorPerKg: price,
        sameAnimal: false,
        substitutes: [],
      }),
    ),
    shares: [],
    locks: [],
    tools: { saw: true, kerfUm: 1000 },
    counter: {
      itemSteps: [{ pieces: null, worthPercent: 100 }],
      stockSteps: [
        { grams: 3000, worthPercent: 100 },
        { grams: null, worthPercent: 50 },
      ],
      worthMinorPerKg: {},
      labourMinorPerHour: 3000,
    },
  };
}
