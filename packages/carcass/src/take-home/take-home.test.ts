import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkSpecies } from '../check-species.ts';
import { believedSpecies } from '../yield/believed-species.ts';
import { checkProfile } from '../yield/check-profile.ts';
import { drawShares } from '../yield/draw-shares.ts';
import { asPublished } from '../yield/expect-shares.ts';
import { checkKnown, type KnownCarcass } from '../yield/known-carcass.ts';
import { predictYields } from '../yield/predict-yields.ts';
import { checkTakeHome } from './check-take-home.ts';
import { StyleWalk } from './kept-share.ts';
import { takeHome } from './take-home.ts';
import { yieldModelOf, yieldSpecies } from './yield-models.ts';

const model = yieldModelOf('hog')!;
const { breakdown, yields } = model;
const pound = 453_592.37;
const dressing = { skin: true, head: false, feet: true, 'leaf-fat': true };
const known: KnownCarcass = { coldGrams: Math.round(184 * 453.59237), dressing };
const prediction = predictYields(breakdown, yields, known);
const styleOf = (id: string) => model.takeHome.styles.find((style) => style.id === id)!;
const homeOf = (id: string) => takeHome(model, prediction, styleOf(id), 1);

function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

describe('what goes home', () => {
  it('adds up to the side with what was declined and what is lost, whatever the hog and the style', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...model.takeHome.styles),
        fc.integer({ min: 20_000, max: 250_000 }),
        fc.double({ min: 4, max: 80, noNaN: true }),
        fc.boolean(),
        (style, coldGrams, lastRibFatMm, skin) => {
          const animal = { coldGrams, lastRibFatMm, dressing: { ...dressing, skin } };
          const home = takeHome(model, predictYields(breakdown, yields, animal), style, 2);
          const all = [...home.lines, ...home.declined, ...home.lost];
          const sum = all.reduce((running, { massMg }) => running + massMg.mean, 0);
          expect(Math.abs(sum - home.hangingMg.mean)).toBeLessThan(all.length + 1);
          expect(home.boxed.low).toBeLessThanOrEqual(home.boxedMg.mean);
          expect(home.boxed.high).toBeLessThanOrEqual(home.hangingMg.mean * 1.001);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('spreads as drawn sides do', () => {
    // Along the usual way, which the draw follows: everything but fat, skin and bone.
    const style = {
      ...styleOf('everything'),
      operations: {},
      declines: ['back-fat', 'leaf-fat', 'skin', 'spareribs'],
    };
    const { mean, sd } = new StyleWalk(breakdown, yields, prediction.shares, style).shareOf(
      ({ id }) => !style.declines.includes(id),
    );
    const random = seeded(11);
    const kept = Array.from({ length: 10_000 }, () => {
      const { outputs } = drawShares(breakdown, yields, prediction.shares, random);
      return (
        1 -
        breakdown.outputs.reduce((sum, output, at) => {
          const gone = output.compartment >= 0 && style.declines.includes(output.id);
          return gone ? sum + (outputs[at] as number) : sum;
        }, 0)
      );
    });
    const drawnMean = kept.reduce((sum, share) => sum + share, 0) / kept.length;
    const drawnSd = Math.sqrt(kept.reduce((sum, share) => sum + (share - drawnMean) ** 2, 0) / kept.length);
    expect(mean).toBeCloseTo(drawnMean, 2);
    expect(sd / drawnSd).toBeGreaterThan(0.95);
    expect(sd / drawnSd).toBeLessThan(1.05);
  });

  it('is less the more bone and fat stay behind, and the declined list says where it went', () => {
    const [everything, boneIn, mixed, boneless] = ['everything', 'bone-in', 'mixed', 'boneless'].map(homeOf);
    expect(everything!.boxedMg.mean).toBeGreaterThan(boneIn!.boxedMg.mean);
    expect(boneIn!.boxedMg.mean).toBeGreaterThan(mixed!.boxedMg.mean);
    expect(mixed!.boxedMg.mean).toBeGreaterThan(boneless!.boxedMg.mean);
    expect(boneless!.declined.map(({ name }) => name)).toContain('Hard back fat');
    expect(everything!.declined).toEqual([]);
  });

  it('lies in the printed 65 to 70 % of a boneless-leaning order (Penn State, quoted by ATTRA)', () => {
    const { percent } = homeOf('boneless');
    expect((percent.low + percent.high) / 2).toBeGreaterThan(65);
    expect((percent.low + percent.high) / 2).toBeLessThan(70);
  });

  it('lies near the printed 76 % of the National Pork Producers Council when sold as chops and grind, within 3 points', () => {
    expect(Math.abs((100 * homeOf('mixed').boxedMg.mean) / homeOf('mixed').hangingMg.mean - 76)).toBeLessThan(
      3,
    );
  });

  it('says that one slab of spareribs is 2 to 4 lb and feeds three or four (National Pork Board: 1.25 servings a pound)', () => {
    const ribs = homeOf('boneless').lines.find(({ id }) => id === 'spareribs')!;
    expect(ribs.massMg.mean / pound).toBeGreaterThan(2);
    expect(ribs.massMg.mean / pound).toBeLessThan(4);
    expect((ribs.massMg.mean / pound) * 1.25).toBeGreaterThan(3);
  });

  it('fits 116.7 lb into the 4.5 cubic feet that it filled (farm page)', () => {
    const heavier = predictYields(
      breakdown,
      yields,
      { ...known, coldGrams: Math.round(167 * 453.59237) },
      asPublished,
    );
    const home = takeHome(model, heavier, styleOf('mixed'), 2);
    expect(home.freezerCubicFeet.low).toBeLessThan(4.5);
    expect(home.freezerCubicFeet.high).toBeGreaterThan(4.5);
  });
});

describe('the figures of each species', () => {
  it.each(yieldSpecies)('Y4: of the %s carry sources and name what it has', (id) => {
    const { species, yields: profile, takeHome: home } = yieldModelOf(id)!;
    expect(checkProfile(species, profile)).toEqual([]);
    expect(checkTakeHome(species, home)).toEqual([]);
  });

  it.each(yieldSpecies)('Y1, Y2: of the %s make a species that is right in itself, at any weight', (id) => {
    const { species, breakdown: tree, yields: profile } = yieldModelOf(id)!;
    const onOrOff = Object.fromEntries(profile.dressing.map((element) => [element.id, fc.boolean()]));
    fc.assert(
      fc.property(fc.integer(species.hangingGrams), fc.record(onOrOff), (coldGrams, mine) => {
        const animal = { coldGrams, dressing: mine };
        expect(checkKnown(species, profile, animal).faults).toEqual([]);
        const { shares } = predictYields(tree, profile, animal);
        expect(shares.compartments.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 10);
        expect(checkSpecies(believedSpecies(tree, shares, asPublished))).toEqual([]);
      }),
      { numRuns: 20 },
    );
  });

  it('are not known of a species that is none', () => {
    expect(yieldModelOf('constructor')).toBeUndefined();
  });
});
