import { describe, expect, it } from 'vitest';
import { renderLard, stockFrom } from './render.ts';

const lb = 453_592;

describe('lard and stock', () => {
  it('7 lb of leaf fat gave 94 oz (home record), which lies in what is foretold', () => {
    const lard = renderLard([{ kind: 'leaf-fat', massMg: 7 * lb }]);
    expect(lard).toMatchObject({ name: 'Leaf lard' });
    if ('faults' in lard) throw new Error('refused');
    const ounces = 94 * 28_349.523125;
    expect(lard.leastMg).toBeLessThanOrEqual(ounces + 1000);
    expect(lard.mostMg).toBeGreaterThan(ounces);
    expect(lard.cautions.map(({ id }) => id)).toEqual(['lard']);
  });

  it('10 lb of trimmings gave about 5 lb (forum)', () => {
    expect(renderLard([{ kind: 'fat-trim', massMg: 10 * lb }])).toMatchObject({
      leastMg: 5 * lb,
      name: 'Lard',
    });
  });

  it('case 56: a half of 127.5 lb gives 1.1 lb of leaf fat and so about a pound of leaf lard, not the bucket that was hoped for', () => {
    const lard = renderLard([{ kind: 'leaf-fat', massMg: Math.round(1.1 * lb) }]);
    if ('faults' in lard) throw new Error('refused');
    expect(lard.leastMg / lb).toBeCloseTo(0.923, 2);
    expect(lard.mostMg / lb).toBeCloseTo(1.045, 2);
  });

  it('is leaf lard only of leaf fat alone: 9 CFR 319.702', () => {
    const mixed = renderLard([
      { kind: 'leaf-fat', massMg: lb },
      { kind: 'back-fat', massMg: lb },
    ]);
    expect(mixed).toMatchObject({ name: 'Lard', fatMg: 2 * lb });
  });

  it.each([
    ['nothing', [], 'fats'],
    ['a negative weight', [{ kind: 'leaf-fat', massMg: -1 }], 'fats[0].massMg'],
    ['bone', [{ kind: 'bone', massMg: 1 }], 'fats[0].kind'],
  ])('refuses %s by name', (_, fats, at) => {
    expect(renderLard(fats)).toMatchObject({ faults: [{ at }] });
  });

  it('8 lb of bones make a gallon of stock, and 0.96 kg a litre (ratio guide of a culinary school)', () => {
    expect(stockFrom(8 * lb)).toBe(3785);
    expect(stockFrom(958_611)).toBe(1000);
    expect(() => stockFrom(-1)).toThrow(/bonesMg/);
  });
});
