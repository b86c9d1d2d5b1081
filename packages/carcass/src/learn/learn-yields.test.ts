import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hog } from '../hog/hog.ts';
import { breakdownOf } from '../yield/breakdown.ts';
import { hogYields } from '../yield/hog-yields.ts';
import { predictYields } from '../yield/predict-yields.ts';
import { learnYields } from './learn-yields.ts';
import type { MeasuredSide } from './measured-side.ts';

const breakdown = breakdownOf(hog);
const dressing = { skin: true, head: false, feet: true, 'leaf-fat': true };
const sideGrams = 41_000;
const bellyGrams = 4229; // 9.5 of 92.1 lb, as the National Pork Producers Council has it, of 41 kg

function side(changes: Partial<MeasuredSide> & { readonly sideId: string }): MeasuredSide {
  return {
    farm: 'Bramble Hollow',
    known: { coldGrams: 2 * sideGrams, dressing },
    sideGrams,
    weighed: [],
    slices: [],
    ...changes,
  };
}

const bellies = (farm: string, ratios: readonly number[]): MeasuredSide[] =>
  ratios.map((ratio, turn) =>
    side({
      sideId: `${farm}-${turn}`,
      farm,
      weighed: [{ id: 'belly-slab', grams: Math.round(bellyGrams * ratio) }],
    }),
  );
const learn = (sides: readonly MeasuredSide[]) => learnYields(breakdown, hogYields, sides);
const bellyOf = (sides: readonly MeasuredSide[], farm = 'Bramble Hollow') =>
  learn(sides)
    .farms.find((entry) => entry.farm === farm)!
    .figures.find(({ id }) => id === 'belly-slab')!;

describe('learning from measured sides', () => {
  it('says in a sentence what it learned, from how many sides', () => {
    const figure = bellyOf(bellies('Bramble Hollow', [1.08, 1.05, 1.1, 1.02, 1.07, 1.06, 1.09, 1.04, 1.07]));
    expect(figure.says).toMatch(
      /^Belly, sheeted: this farm's run 6 % heavier than published, from 9 sides; likely [+-]?\d to \+\d+ %\.$/,
    );
  });

  it('believes nine sides more than one, and one a little', () => {
    const [one, nine] = [
      bellyOf(bellies('Bramble Hollow', [1.2])),
      bellyOf(bellies('Bramble Hollow', Array(9).fill(1.2))),
    ];
    expect(one.value).toBeGreaterThan(1.05);
    expect(one.value).toBeLessThan(1.15);
    expect(nine.value).toBeGreaterThan(1.17);
    expect(nine.value).toBeLessThan(1.2);
    expect(nine.high - nine.low).toBeLessThan(one.high - one.low);
  });

  it('is moved by no more than 3 % by one wild reading among nine, and says it set it aside', () => {
    const steady = [1.08, 1.05, 1.1, 1.02, 1.07, 1.06, 1.09, 1.04];
    const before = bellyOf(bellies('Bramble Hollow', steady)).value;
    fc.assert(
      fc.property(
        fc.oneof(
          fc.double({ min: 0.05, max: 0.5, noNaN: true }),
          fc.double({ min: 2.5, max: 8, noNaN: true }),
        ),
        (wild) => {
          const after = bellyOf(bellies('Bramble Hollow', [...steady, wild]));
          expect(Math.abs(after.value / before - 1)).toBeLessThan(0.03);
          expect(after.setAside).toBe(1);
          expect(after.says).toMatch(/1 side set aside/);
        },
      ),
    );
  });

  it('hardly believes a single wild reading', () => {
    expect(bellyOf(bellies('Bramble Hollow', [4])).value).toBeLessThan(1.1);
    expect(bellyOf(bellies('Bramble Hollow', [0.2])).value).toBeGreaterThan(0.9);
  });

  it('learns each farm by itself, and lends what they share to a farm it has not seen', () => {
    const sides = [
      ...bellies('Bramble Hollow', Array(6).fill(1.15)),
      ...bellies('Crane Meadow', Array(6).fill(1.05)),
    ];
    const { farms, shop } = learn(sides);
    const values = farms.map(({ belief }) => belief.shares['belly-slab']!);
    expect(values[0]).toBeGreaterThan(1.11);
    expect(values[1]).toBeLessThan(1.07);
    expect(shop.belief.shares['belly-slab']).toBeGreaterThan(1.02);
    expect(shop.belief.shares['belly-slab']).toBeLessThan(1.1);
    expect(shop.figures[0]?.says).toMatch(/this shop's/);
  });

  it('Y6: gives the same figures in whatever order the sides come', () => {
    const sides = [...bellies('Bramble Hollow', [1.1, 0.9, 3, 1.2]), ...bellies('Crane Meadow', [1.4, 1])];
    const sorted = learn(sides).farms.map(({ belief }) => belief.shares['belly-slab']!);
    fc.assert(
      fc.property(fc.shuffledSubarray(sides, { minLength: sides.length }), (shuffled) => {
        learn(shuffled).farms.forEach(({ belief }, turn) => {
          expect(belief.shares['belly-slab']).toBeCloseTo(sorted[turn]!, 9);
        });
      }),
      { numRuns: 30 },
    );
  });

  it('predicts the next animal of the farm with what it learned', () => {
    const { farms } = learn(bellies('Bramble Hollow', Array(9).fill(1.1)));
    const known = { coldGrams: 2 * sideGrams, dressing };
    const belly = predictYields(breakdown, hogYields, known, farms[0]!.belief).partMg.get('belly-slab')!;
    expect(belly.mean / 1000 / bellyGrams).toBeCloseTo(farms[0]!.belief.shares['belly-slab']!, 3);
  });

  it('learns lengths from counted chops, and ribs from counted ribs', () => {
    // Boned centre loin of an 82 kg hog by the species data: 516.6 mm at 103.6 kg, drawn up to 83.56 %.
    const sides = Array.from({ length: 8 }, (_, turn) =>
      side({
        sideId: `s${turn}`,
        known: { coldGrams: 2 * sideGrams, dressing, ribs: 14 },
        slices: [{ stock: 'loin-boned', thicknessUm: 25_400, kerfUm: 0, pieces: 17 }],
      }),
    );
    const [{ belief, figures }] = learn(sides).farms as [ReturnType<typeof learn>['shop']];
    const expectedUm = 516_600 * 0.8356 * (82 / 103.6) ** 0.415;
    const counted = (17.5 * 25_400) / expectedUm;
    expect(belief.lengths).toBeGreaterThan(1 + (counted - 1) / 2);
    expect(belief.lengths).toBeLessThan(counted);
    expect(belief.ribs).toBeGreaterThan(14);
    expect(belief.ribs).toBeLessThan(14.6);
    expect(figures.find(({ kind }) => kind === 'length')?.says).toMatch(
      /longer than published, from 8 sides/,
    );
  });

  it('knows nothing when nothing was measured', () => {
    expect(learn([])).toEqual({
      shop: { farm: null, belief: { shares: {}, lengths: 1 }, figures: [] },
      farms: [],
      refused: [],
    });
  });
});

describe('Y5: a side that does not balance, or contradicts itself', () => {
  const slab = { id: 'belly-slab', grams: 4200 };
  it.each<[string, Partial<MeasuredSide>, string, RegExp]>([
    [
      'gives more than it weighs',
      {
        weighed: [
          { id: 'ham', grams: 22_000 },
          { id: 'middle', grams: 21_000 },
        ],
      },
      'weighed',
      /43\.00 kg of 41\.00 kg is 104\.9 %/,
    ],
    ['gives less than it weighs, all told', { weighed: [slab], restGrams: 30_000 }, 'weighed', /83\.4 %/],
    [
      'has a piece heavier than the part it came from',
      {
        weighed: [
          { id: 'ham', grams: 9000 },
          { id: 'ham-inside', grams: 9900 },
        ],
      },
      'ham-inside',
      /weighs more than ham/,
    ],
    ['is no half of its carcass', { known: { coldGrams: 120_000, dressing } }, 'sideGrams', /34 %/],
    [
      'does not say its dressing',
      { known: { coldGrams: 82_000, dressing: {} } },
      'dressing.skin',
      /say whether/,
    ],
    [
      'hangs lighter hot than cold',
      { known: { coldGrams: 82_000, hotGrams: 80_000, dressing } },
      'hotGrams',
      /below/,
    ],
    [
      'has a piece that no hog has',
      { weighed: [{ id: 'saddle', grams: 4200 }] },
      'weighed.saddle',
      /no saddle/,
    ],
    ['has one piece twice', { weighed: [slab, slab] }, 'weighed.belly-slab', /twice/],
    ['has a piece of no weight', { weighed: [{ id: 'ham', grams: 0 }] }, 'weighed.ham', /above 0/],
    [
      'was cut into half a chop',
      { slices: [{ stock: 'loin-boned', thicknessUm: 25_400, kerfUm: 0, pieces: 16.5 }] },
      'slices[0].pieces',
      /whole/,
    ],
  ])('teaches nothing when it %s', (_, changes, at, says) => {
    const { farms, shop, refused } = learn([side({ sideId: 'wrong', weighed: [slab], ...changes })]);
    expect([farms, shop.figures]).toEqual([[], []]);
    expect(refused[0]?.sideId).toBe('wrong');
    expect(refused[0]?.faults.find((fault) => fault.at === at)?.says).toMatch(says);
  });

  it('teaches once when it comes twice', () => {
    const [one] = bellies('Bramble Hollow', [1.1]) as [MeasuredSide];
    const { refused, farms } = learn([one, one]);
    expect(refused).toHaveLength(1);
    expect(farms[0]?.figures[0]?.sides).toBe(1);
  });

  it('counts a slab once beside the middle it came from, whichever way the middle was cut', () => {
    const weighed = [{ id: 'middle-fillet-in', grams: 19_000 }, slab];
    const { refused } = learn([side({ sideId: 'right', weighed, restGrams: 22_000 })]);
    expect(refused).toEqual([]);
  });

  it('teaches when it balances, pieces counted once beside the part they came from', () => {
    const weighed = [{ id: 'ham', grams: 10_000 }, { id: 'ham-inside', grams: 1600 }, slab];
    const { refused, farms } = learn([side({ sideId: 'right', weighed, restGrams: 26_700 })]);
    expect(refused).toEqual([]);
    expect(farms[0]?.figures.map(({ id }) => id)).toEqual(['belly-slab', 'ham', 'ham-inside']);
  });
});
