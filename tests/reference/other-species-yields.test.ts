import { checkKnown, predictYields, takeHome, type YieldModel, yieldModelOf } from '@flitchbook/carcass';
import { describe, expect, it } from 'vitest';

const pound = 453.59237;
const modelOf = (id: string): YieldModel => yieldModelOf(id)!;

function boxedPounds(
  id: string,
  coldPounds: number,
  dressing: Readonly<Record<string, boolean>> = {},
): number {
  const model = modelOf(id);
  const known = { coldGrams: Math.round(coldPounds * pound), dressing };
  expect(checkKnown(model.species, model.yields, known).faults).toEqual([]);
  const prediction = predictYields(model.breakdown, model.yields, known);
  return takeHome(model, prediction, model.takeHome.styles[0]!, 2).boxedMg.mean / 1000 / pound;
}

describe('goat', () => {
  it('gives 31.0 lb of cuts of a kid of 39.5 lb, 78.5 %, printed 78.4 (Cornell, market kid retail cuts 2009)', () => {
    expect(Math.abs(boxedPounds('goat', 39.5) - 31)).toBeLessThan(0.1);
    expect((100 * boxedPounds('goat', 39.5)) / 39.5).toBeCloseTo(78.5, 1);
  });

  it('hangs 33.6 lb of 70 live at 48 %, 31.9 after a cooler that takes 5 % (University of Tennessee: 33.5 and 31.8)', () => {
    const { breakdown, yields } = modelOf('goat');
    const [, hot, cold] = predictYields(breakdown, yields, {
      liveGrams: Math.round(70 * pound),
      dressing: {},
    }).chain;
    expect(hot!.grams.mean / pound).toBeCloseTo(33.6, 1);
    expect(cold!.grams.mean / pound).toBeCloseTo(31.9, 1);
  });
});

describe('lamb', () => {
  it('dresses at 50 to 53 % (University of Kentucky ASC-179, shorn sheep)', () => {
    const { breakdown, yields } = modelOf('lamb');
    const [live, hot] = predictYields(breakdown, yields, {
      liveGrams: 54_431,
      dressing: { head: false },
    }).chain;
    expect(hot!.grams.mean / live!.grams.mean).toBeGreaterThan(0.5);
    expect(hot!.grams.mean / live!.grams.mean).toBeLessThan(0.53);
  });

  it('gives legs of 32 lb and shoulders of 23 a 100 lb carcass (National Live Stock and Meat Board for the US Army)', () => {
    const { breakdown, yields } = modelOf('lamb');
    const { partMg } = predictYields(breakdown, yields, { coldGrams: 45_359, dressing: { head: false } });
    expect((2 * partMg.get('leg')!.mean) / 1000 / pound).toBeCloseTo(32, 1);
    expect((2 * partMg.get('shoulder')!.mean) / 1000 / pound).toBeCloseTo(23, 1);
  });
});

describe('beef fore quarter', () => {
  it('gives 97 lb of 140 (Washington State Department of Agriculture, processing percentage charts)', () => {
    expect(Math.abs(boxedPounds('beef-fore', 280) / 2 - 97)).toBeLessThan(0.1);
  });
});
