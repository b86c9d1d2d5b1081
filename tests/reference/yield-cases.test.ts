import {
  asPublished,
  auditSheet,
  believedSpecies,
  cautiousHigh,
  cautiousLow,
  type KnownCarcass,
  learnYields,
  type MeasuredSide,
  predictPieces,
  predictYields,
  shapeSide,
  takeHome,
  yieldModelOf,
} from '@flitchbook/carcass';
import { describe, expect, it } from 'vitest';
import { sheet } from './published-sheets.ts';

// Things that happen in shops, gathered from public pages of farms, processors and households; figures as reported.

const model = yieldModelOf('hog')!;
const { breakdown, yields } = model;
const poundMg = 453_592.37;
const grams = (pounds: number): number => Math.round((pounds * poundMg) / 1000);
const scalded = { skin: true, head: false, feet: true, 'leaf-fat': true };
const predict = (
  known: Omit<KnownCarcass, 'dressing'>,
  dressing: Readonly<Record<string, boolean>> = scalded,
) => predictYields(breakdown, yields, { ...known, dressing });
const styleOf = (id: string) => model.takeHome.styles.find((style) => style.id === id)!;
const boxedPounds = (known: Omit<KnownCarcass, 'dressing'>, style: string, sides: 1 | 2): number =>
  takeHome(model, predict(known), styleOf(style), sides).boxedMg.mean / poundMg;

describe('"a half is how much meat?"', () => {
  it('depends on the hog: halves hang from 48 to 143.5 lb, and give what they weigh', () => {
    const boxed = [48, 75, 100, 127.5, 143.5].map((half) =>
      boxedPounds({ coldGrams: grams(2 * half) }, 'mixed', 1),
    );
    expect([...boxed].sort((left, right) => left - right)).toEqual(boxed);
    expect(boxed.at(-1)! / boxed[0]!).toBeCloseTo(143.5 / 48, 2);
  });

  it('depends on the cutting: 51 to 87 lb of a half of 92 lb as reported, boneless to everything', () => {
    const half = { coldGrams: grams(184) };
    expect(boxedPounds(half, 'boneless', 1)).toBeGreaterThan(51);
    expect(boxedPounds(half, 'everything', 1)).toBeGreaterThan(87);
    expect(boxedPounds(half, 'everything', 1)).toBeLessThan(92.1);
  });
});

describe('"you kept my meat": 300 lb live, 140 lb in the box', () => {
  const prediction = predict({ liveGrams: grams(300) });
  const home = takeHome(model, prediction, styleOf('boneless'), 2);

  it('holds the 140 lb of 300 x 72 % x 65 % in its range', () => {
    expect(home.boxed.low / poundMg).toBeLessThan(140);
    expect(home.boxed.high / poundMg).toBeGreaterThan(140);
  });

  it('names every loss on the way, and everything that was not wanted', () => {
    expect(prediction.chain.map(({ stage }) => stage)).toEqual(['live', 'hot', 'cold', 'side']);
    expect(prediction.chain.slice(1).every(({ loses }) => loses !== '')).toBe(true);
    const declined = home.declined.reduce((sum, { massMg }) => sum + massMg.mean, 0);
    const lost = home.lost.reduce((sum, { massMg }) => sum + massMg.mean, 0);
    expect((home.boxedMg.mean + declined + lost) / home.hangingMg.mean).toBeCloseTo(1, 5);
  });
});

describe('one hog, two dressings: 180 lb scalded with its head, 157.5 lb skinned without it', () => {
  it('is the same meat: bare sides and boxes agree within 3 %', () => {
    const headOn = predict({ coldGrams: grams(180) }, { ...scalded, head: true });
    const skinned = predict(
      { coldGrams: grams(157.5) },
      { ...scalded, skin: false, head: false, feet: false },
    );
    const loins = [headOn, skinned].map(({ partMg }) => partMg.get('loin-in')!.mean);
    expect(Math.abs(loins[0]! / loins[1]! - 1)).toBeLessThan(0.03);
  });
});

describe('bacon of two farms: 49 lb of two hogs one year, 37 lb the next, of another breed', () => {
  const side = (farm: string, turn: number, slabPounds: number): MeasuredSide => ({
    sideId: `${farm}-${turn}`,
    farm,
    known: { coldGrams: grams(184), dressing: scalded },
    sideGrams: grams(92),
    weighed: [{ id: 'belly-slab', grams: grams(slabPounds) }],
    slices: [],
  });
  const sides = [0, 1, 2, 3].flatMap((turn) => [side('First', turn, 49 / 4), side('Second', turn, 37 / 4)]);

  it('is foretold from that farm’s own sides, not from the book’s 38 lb', () => {
    const { farms } = learnYields(breakdown, yields, sides);
    const slabs = farms.map(({ belief }) => {
      const { partMg } = predictYields(
        breakdown,
        yields,
        { coldGrams: grams(184), dressing: scalded },
        belief,
      );
      return (4 * partMg.get('belly-slab')!.mean) / poundMg;
    });
    expect(slabs[0]).toBeGreaterThan(45);
    expect(slabs[0]).toBeLessThan(49);
    expect(slabs[1]).toBeGreaterThan(36.5);
    expect(slabs[1]).toBeLessThan(40);
  });
});

describe('spareribs: 2.0 lb of a half of 75 lb, 3.0 of one of 90, 2.8 of one of 127.5, as reported', () => {
  const range = (half: number): readonly [number, number] => {
    const ribs = predict({ coldGrams: grams(2 * half) }).outputMg.get('belly-ribbed/sheet-ribs/spareribs')!;
    return [cautiousLow(ribs, 0.95) / poundMg, cautiousHigh(ribs, 0.95) / poundMg];
  };

  it('are foretold as one slab of 2 to 4 lb, with the first two in the range', () => {
    expect(range(75)[0]).toBeLessThan(2);
    expect(range(90)[0]).toBeLessThan(3);
    expect(range(90)[1]).toBeGreaterThan(3);
  });

  it('are foretold too heavy for the third, which was cut narrow: a shop that cuts so teaches it', () => {
    expect(range(127.5)[0]).toBeGreaterThan(2.8);
    const sides = Array.from(
      { length: 6 },
      (_, turn): MeasuredSide => ({
        sideId: `${turn}`,
        farm: 'Third',
        known: { coldGrams: grams(255), dressing: scalded },
        sideGrams: grams(127.5),
        weighed: [{ id: 'spareribs', grams: grams(2.8) }],
        slices: [],
      }),
    );
    const [third] = learnYields(breakdown, yields, sides).farms;
    const { outputMg } = predictYields(breakdown, yields, sides[0]!.known, third!.belief);
    expect(outputMg.get('belly-ribbed/sheet-ribs/spareribs')!.mean / poundMg).toBeCloseTo(2.8, 0);
  });
});

describe('a live weight by tape: 276 lb taped, 300 lb weighed, 212 lb carcass', () => {
  it('leaves 212 lb within what is foretold', () => {
    const prediction = predict({ liveGrams: grams(276), liveBy: 'tape' });
    const hot = prediction.chain.find(({ stage }) => stage === 'hot')!;
    expect(cautiousHigh(hot.grams, 0.95)).toBeGreaterThan(grams(212));
  });
});

describe('"how many 1 in chops in a half?": answers from 15 to 32; a side has 15 to 18 centre chops', () => {
  const prediction = predict({ coldGrams: grams(200) });
  const shape = shapeSide(believedSpecies(breakdown, prediction.shares, asPublished), {
    sideId: 's',
    animalId: 'a',
    hand: 'left',
    massMg: prediction.sideMg.mean,
    carcassGrams: grams(200),
    ribs: 15,
    facts: [],
    lostParts: [],
  });
  const chops = (stock: string, um: number) =>
    predictPieces(yields, prediction, shape, {
      stock,
      portion: { by: 'thickness', um },
      tools: { saw: true, kerfUm: 1588 },
    })!;

  it('counts 15 to 18 bone-in centre chops of 1 in, and never 32', () => {
    const centre = chops('rib-bone-in', 25_400).pieces + chops('lumbar-bone-in', 25_400).pieces;
    expect(centre).toBeGreaterThanOrEqual(15);
    expect(centre).toBeLessThanOrEqual(18);
  });

  it('counts about 17 boneless ones, as in 1 235 loins (Journal of Animal Science 94:4903, 2016: 13 to 20)', () => {
    const { pieces, cautiousPieces } = chops('loin-boned', 25_400);
    expect(pieces).toBeGreaterThanOrEqual(15);
    expect(pieces).toBeLessThanOrEqual(18);
    expect(cautiousPieces).toBeGreaterThanOrEqual(13);
  });
});

describe('"asked for lard, got little"', () => {
  it('gives fat as a range so wide that the 1.1 and 1.3 lb of leaf fat reported both lie in it', () => {
    const { outputMg } = predict({ coldGrams: grams(184) });
    const leaf = outputMg.get('middle/clear-cavity/leaf-fat')!;
    expect(cautiousLow(leaf, 0.95) / poundMg).toBeLessThan(0.6);
    expect(cautiousHigh(leaf, 0.95) / poundMg).toBeGreaterThan(1.3);
  });

  it('is more the fatter the hog', () => {
    const fat = (lastRibFatMm: number): number =>
      predict({ coldGrams: grams(184), lastRibFatMm }).outputMg.get('middle/clear-cavity/leaf-fat')!.mean;
    expect(fat(40)).toBeGreaterThan(fat(20));
  });
});

describe('chops that swallow the loin: two hogs of 414 lb together, 70 lb of chops and no roast', () => {
  it('is the whole of four loins: 18.4 % of 414 lb are 76 lb, less the trim', () => {
    const { partMg } = predict({ coldGrams: grams(207) });
    const loins = (4 * partMg.get('loin-in')!.mean) / poundMg;
    expect(loins).toBeCloseTo(76, 0);
    const audited = auditSheet(
      sheet('lb', loins.toFixed(1), [
        ['Chops', '70'],
        ['Trim and dust', (loins - 70).toFixed(1)],
      ]),
    );
    expect(audited.balances).toBe(true);
  });
});
