import { decimalRatio, plus, type Ratio, ratio } from '@flitchbook/carcass';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fatOf, fillUp, squareOfTwo, toReach } from './blend.ts';

const of = (text: string): Ratio => decimalRatio(text);
const percent = (text: string): Ratio => ({ ...ratio(of(text).over, of(text).under * 100n) });
const number = ({ over, under }: Ratio): number => Number(over) / Number(under);

/** The answer, or a failure of the test. */
function taken<T extends object>(answer: T): Exclude<T, { readonly faults: unknown }> {
  if ('faults' in answer) throw new Error(JSON.stringify(answer.faults));
  return answer as Exclude<T, { readonly faults: unknown }>;
}
const pound = (mass: string, fat: string, target: string, added = '100') =>
  number(taken(toReach({ mass: of(mass), fat: percent(fat) }, percent(added), percent(target))).mass);

describe('lean and fat (figures of sausage-making forums, blogs and a training video)', () => {
  it('P1: belly of 30 % and beef of 12 % make 20 % in 8 parts to 10', () => {
    const parts = taken(squareOfTwo(percent('30'), percent('12'), percent('20')));
    expect([number(parts.first) * 100, number(parts.second) * 100]).toEqual([8, 10]);
    expect(
      number(
        fatOf([
          { mass: ratio(8), fat: percent('30') },
          { mass: ratio(10), fat: percent('12') },
        ]),
      ),
    ).toBe(0.2);
  });

  it('P2: 10 lb of lean at 0 % takes 4.2857 lb of pure fat to 30 % (printed 4.29); 3 lb would make 23.08 %', () => {
    expect(pound('10', '0', '30')).toBeCloseTo(4.2857, 4);
    const naive = fatOf([
      { mass: ratio(10), fat: ratio(0) },
      { mass: ratio(3), fat: ratio(1) },
    ]);
    expect(number(naive) * 100).toBeCloseTo(23.08, 2);
  });

  it('P3: 14 lb of lean to 40 % takes 9.3333 lb', () =>
    expect(pound('14', '0', '40')).toBeCloseTo(9.3333, 4));
  it('P4: 16 lb of lean to 30 % takes 6.857 lb (printed 6.9)', () =>
    expect(pound('16', '0', '30')).toBeCloseTo(6.857, 3));

  it.each([
    ['P5', '8.8', 26.25],
    ['P6', '28.0', 40.65],
  ])('%s: 1.5 lb of pork at %s %% with half a pound of back fat at 78.6 %% is %d %%', (_, lean, expected) => {
    const fat = fatOf([
      { mass: of('1.5'), fat: percent(lean) },
      { mass: of('0.5'), fat: percent('78.6') },
    ]);
    expect(number(fat) * 100).toBeCloseTo(expected, 2);
  });

  it('P7: 25 lb, half at 0 % and half at 30 %, hold 3.75 lb of fat: 15 %', () => {
    const fat = fatOf([
      { mass: of('12.5'), fat: ratio(0) },
      { mass: of('12.5'), fat: percent('30') },
    ]);
    expect([number(fat), number(fat) * 25]).toEqual([0.15, 3.75]);
  });

  it('P8: 16 lb at 20 % to 30 % takes 2.2857 lb of pure fat (constructed)', () => {
    expect(pound('16', '20', '30')).toBeCloseTo(2.2857, 4);
  });

  it('P9: 6 lb at 28 % that must be used, filled up with 8 % and 85 % to 20 lb at 25 %: 11.1429 and 2.8571 (constructed)', () => {
    const settled = [{ mass: ratio(6), fat: percent('28') }];
    const { first, second } = taken(fillUp(settled, percent('8'), percent('85'), ratio(20), percent('25')));
    expect(number(first)).toBeCloseTo(11.1429, 4);
    expect(number(second)).toBeCloseTo(2.8571, 4);
  });

  it.each([['10'], ['31'], ['100']])('P10: a target of %s %% from 12 %% and 30 %% is refused', (target) => {
    const refused = { faults: [{ at: 'target' }] };
    expect(squareOfTwo(percent('30'), percent('12'), percent(target))).toMatchObject(refused);
    expect(toReach({ mass: ratio(4), fat: percent('12') }, percent('30'), percent(target))).toMatchObject(
      refused,
    );
    expect(fillUp([], percent('30'), percent('12'), ratio(4), percent(target))).toMatchObject(refused);
  });

  it('refuses to reach the fat of what is added while lean is in it, and a percentage where a fraction is due', () => {
    expect(toReach({ mass: ratio(4), fat: percent('12') }, percent('30'), percent('30'))).toMatchObject({
      faults: [{ at: 'target' }],
    });
    expect(() => fatOf([{ mass: ratio(1), fat: ratio(30) }])).toThrow(/fat must be a fraction/);
    expect(
      fillUp([{ mass: ratio(9), fat: ratio(0) }], ratio(0), ratio(1), ratio(9), percent('5')),
    ).toMatchObject({ faults: [{ at: 'total' }] });
  });

  it('the square is exact: its parts make the target', () => {
    const share = fc.integer({ min: 0, max: 1_000_000 }).map((ppm) => ratio(ppm, 1_000_000));
    fc.assert(
      fc.property(share, share, share, (first, second, target) => {
        const parts = squareOfTwo(first, second, target);
        if ('faults' in parts) {
          const [low, high] = [first, second].map(number).sort((a, b) => a - b);
          expect(number(target) < low! || number(target) > high!).toBe(true);
          return;
        }
        expect(plus(parts.first, parts.second).over > 0n).toBe(true);
        const made = fatOf([
          { mass: parts.first, fat: first },
          { mass: parts.second, fat: second },
        ]);
        expect(made).toEqual(target);
      }),
    );
  });
});
