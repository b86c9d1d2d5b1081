import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkSpecies } from '../check-species.ts';
import { hog } from '../hog/hog.ts';
import { shapeSide } from '../side-shape.ts';
import { believedSpecies } from './believed-species.ts';
import { breakdownOf } from './breakdown.ts';
import { drawShares } from './draw-shares.ts';
import { cautiousLow, quantileOf } from './estimate.ts';
import { asPublished, expectShares, type YieldBelief } from './expect-shares.ts';
import { hogYields } from './hog-yields.ts';
import type { KnownCarcass } from './known-carcass.ts';
import { predictPieces } from './predict-pieces.ts';
import { predictYields } from './predict-yields.ts';

const breakdown = breakdownOf(hog);
const usualDressing = { skin: true, head: false, feet: true, 'leaf-fat': true };
const usual: KnownCarcass = { coldGrams: 83_552, dressing: usualDressing };

/** Any hog that `checkKnown` lets pass, and anything a shop might have learned of its farm. */
const anyKnown: fc.Arbitrary<KnownCarcass> = fc.record(
  {
    coldGrams: fc.integer({ min: 20_000, max: 250_000 }),
    lastRibFatMm: fc.double({ min: 4, max: 80, noNaN: true }),
    leanPercent: fc.double({ min: 25, max: 68, noNaN: true }),
    ribs: fc.integer({ min: 13, max: 17 }),
    dressing: fc.record({
      skin: fc.boolean(),
      head: fc.boolean(),
      feet: fc.boolean(),
      'leaf-fat': fc.boolean(),
    }),
  },
  { requiredKeys: ['coldGrams', 'dressing'] },
);
const learnable = [
  'ham',
  'belly-slab',
  'loin-out',
  'butt',
  'tenderloin',
  'back-fat',
  'porchetta',
  'ham-inside',
];
const anyBelief: fc.Arbitrary<YieldBelief> = fc.record({
  shares: fc.dictionary(fc.constantFrom(...learnable), fc.double({ min: 0.5, max: 2, noNaN: true })),
  lengths: fc.double({ min: 0.7, max: 1.4, noNaN: true }),
});

function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

const sum = (values: Iterable<number>): number => [...values].reduce((running, value) => running + value, 0);

describe('shares', () => {
  it('Y1, Y2: are never below 0 and add up, on the usual way and at every operation, for any hog in range: a moved line conserves mass', () => {
    fc.assert(
      fc.property(anyKnown, anyBelief, (known, belief) => {
        const { compartments, outputs, parts } = expectShares(breakdown, hogYields, known, belief);
        expect(sum(compartments)).toBeCloseTo(1, 10);
        expect(compartments.every((share) => share >= 0)).toBe(true);
        breakdown.parts.forEach(({ operations }, index) => {
          for (const { from, to } of operations)
            expect(sum(outputs.slice(from, to))).toBeCloseTo(parts[index] as number, 9);
        });
        expect(outputs.every((share) => share >= 0)).toBe(true);
      }),
    );
  });

  it('leave out nothing but what was dressed off', () => {
    fc.assert(
      fc.property(anyKnown, ({ dressing, ...known }) => {
        const { outputs } = expectShares(breakdown, hogYields, { ...known, dressing });
        const gone = new Set(breakdown.outputs.filter((_, at) => outputs[at] === 0).map(({ id }) => id));
        expect(gone.has('skin')).toBe(!dressing['skin']);
        expect(gone.has('hind-foot')).toBe(!dressing['feet']);
        expect(gone.has('leaf-fat')).toBe(!dressing['leaf-fat']);
        expect(gone.has('tenderloin')).toBe(false);
      }),
    );
  });

  it('make a species that is right in itself, and that a side can be measured out with', () => {
    fc.assert(
      fc.property(anyKnown, anyBelief, (known, belief) => {
        const species = believedSpecies(breakdown, expectShares(breakdown, hogYields, known, belief), belief);
        expect(checkSpecies(species)).toEqual([]);
      }),
      { numRuns: 50 },
    );
  });

  it('move to what was learned, and the others give way alike', () => {
    const before = predictYields(breakdown, hogYields, usual);
    const after = predictYields(breakdown, hogYields, usual, {
      shares: { 'belly-slab': 1.06, ham: 0.97, 'ham-inside': 1.1 },
      lengths: 1,
    });
    const ratio = (id: string): number => after.partMg.get(id)!.mean / before.partMg.get(id)!.mean;
    const key = 'ham/ham-seamed/ham-inside';
    expect(ratio('belly-slab')).toBeCloseTo(1.06, 5);
    expect(ratio('ham')).toBeCloseTo(0.97, 5);
    expect(after.outputMg.get(key)!.mean / before.outputMg.get(key)!.mean).toBeCloseTo(1.1, 5);
    expect(ratio('butt')).toBeCloseTo(ratio('loin-out'), 5);
  });

  it('more fat means less lean, more belly and more back fat', () => {
    const at = (lastRibFatMm: number) => predictYields(breakdown, hogYields, { ...usual, lastRibFatMm });
    fc.assert(
      fc.property(fc.double({ min: 4, max: 75, noNaN: true }), (fat) => {
        const [thin, fatter] = [at(fat), at(fat + 5)];
        expect(fatter.partMg.get('ham')!.mean).toBeLessThan(thin.partMg.get('ham')!.mean);
        expect(fatter.partMg.get('belly-ribbed')!.mean).toBeGreaterThan(
          thin.partMg.get('belly-ribbed')!.mean,
        );
      }),
    );
  });
});

describe('spread', () => {
  it('is that of drawn sides: means and coefficients of variation of every part of the usual way', () => {
    const prediction = predictYields(breakdown, hogYields, usual);
    const random = seeded(7);
    const draws = Array.from({ length: 10_000 }, () =>
      drawShares(breakdown, hogYields, prediction.shares, random),
    );
    breakdown.parts.forEach(({ id, compartments }, index) => {
      if (!compartments || index === 0) return;
      const shares = draws.map(({ parts }) => parts[index] as number);
      const mean = sum(shares) / shares.length;
      const sd = Math.sqrt(sum(shares.map((share) => (share - mean) ** 2)) / shares.length);
      const predicted = prediction.partMg.get(id)!;
      expect(mean / (predicted.mean / prediction.sideMg.mean), id).toBeCloseTo(1, 2);
      expect(Math.abs(sd / mean / (predicted.sd / predicted.mean) - 1), id).toBeLessThan(0.06);
      const kept = shares.filter((share) => share * prediction.sideMg.mean >= cautiousLow(predicted)).length;
      expect(kept / shares.length, id).toBeGreaterThan(0.88);
      expect(kept / shares.length, id).toBeLessThan(0.92);
    });
  });

  it('of drawn sides keeps every operation balanced', () => {
    const { shares } = predictYields(breakdown, hogYields, usual);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2 ** 31 }), (seed) => {
        const drawn = drawShares(breakdown, hogYields, shares, seeded(seed));
        breakdown.parts.forEach(({ operations }, index) => {
          for (const { from, to } of operations)
            expect(sum(drawn.outputs.slice(from, to))).toBeCloseTo(drawn.parts[index] as number, 9);
        });
      }),
    );
  });

  it('grows with what is not known: scale, tape, hot or live weight', () => {
    const cv = (known: Omit<KnownCarcass, 'dressing'>): number => {
      const ham = predictYields(breakdown, hogYields, { ...known, dressing: usualDressing }).partMg.get(
        'ham',
      )!;
      return ham.sd / ham.mean;
    };
    const [cold, hot, live, tape] = [
      cv({ coldGrams: 83_552 }),
      cv({ hotGrams: 85_000 }),
      cv({ liveGrams: 113_400 }),
      cv({ liveGrams: 113_400, liveBy: 'tape' }),
    ] as const;
    expect(cold).toBeLessThan(hot);
    expect(hot).toBeLessThan(live);
    expect(live).toBeLessThan(tape);
  });

  it('reads quantiles off a log-normal law', () => {
    // exp(1.281 551 566) for the 90 % point of the standard log-normal: normal tables.
    const mean = Math.exp(0.5);
    const estimate = { mean, sd: mean * Math.sqrt(Math.E - 1) };
    expect(quantileOf(estimate, 0.9)).toBeCloseTo(Math.exp(1.2815515655446), 7);
    expect(quantileOf(estimate, 0.001)).toBeCloseTo(Math.exp(-3.0902323061678), 8);
    expect(() => quantileOf(estimate, 1)).toThrow(RangeError);
  });
});

describe('lengths and pieces', () => {
  const tools = { saw: true, kerfUm: 1000 };
  function chops(known: KnownCarcass, belief: YieldBelief, um = 25_400, stock = 'loin-boned') {
    const prediction = predictYields(breakdown, hogYields, known, belief);
    const species = believedSpecies(breakdown, prediction.shares, belief);
    const shape = shapeSide(species, {
      sideId: 's',
      animalId: 'a',
      hand: 'left',
      massMg: Math.round(prediction.sideMg.mean),
      carcassGrams: known.coldGrams ?? 0,
      ribs: known.ribs ?? 15,
      facts: [],
      lostParts: [],
    });
    return predictPieces(hogYields, prediction, shape, {
      stock,
      portion: { by: 'thickness', um },
      tools,
    });
  }

  it('Y3: never gives fewer chops from more length', () => {
    fc.assert(
      fc.property(
        anyKnown,
        fc.double({ min: 0.7, max: 1.3, noNaN: true }),
        fc.double({ min: 0, max: 0.3, noNaN: true }),
        fc.integer({ min: 9_525, max: 101_600 }),
        (known, lengths, more, um) => {
          const shorter = chops(known, { shares: {}, lengths }, um)!;
          const longer = chops(known, { shares: {}, lengths: lengths + more }, um)!;
          expect(longer.pieces).toBeGreaterThanOrEqual(shorter.pieces);
          expect(longer.cautiousPieces).toBeGreaterThanOrEqual(shorter.cautiousPieces);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('promises fewer chops before the carcass is seen than it expects', () => {
    const forecast = chops(usual, asPublished)!;
    expect(forecast.cautiousPieces).toBeLessThan(forecast.pieces);
    expect(forecast.cautiousPieces).toBeGreaterThanOrEqual(forecast.pieces - 3);
  });

  it('knows no pieces of a stock that is not there', () => {
    expect(chops(usual, asPublished, 25_400, 'saddle')).toBeUndefined();
  });
});
