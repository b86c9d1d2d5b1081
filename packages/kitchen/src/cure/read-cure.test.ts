import { decimalRatio, ratio } from '@flitchbook/carcass';
import { describe, expect, it } from 'vitest';
import type { CureRequest } from './cure-request.ts';
import { cureBase, ingoing } from './cure-sums.ts';
import { reckonCure } from './reckon-cure.ts';

const number1 = { nitrite: '6.25 %' };
const us = (product: string, method: string) =>
  ({ jurisdiction: 'us', product, method, skin: 'off' }) as const;

/** What is wrong with an entry, as field and sentence. */
function faultsOf(request: object): Record<string, string> {
  const answer = reckonCure(request as CureRequest);
  if (!('faults' in answer)) throw new Error(`taken: ${answer.outcome}`);
  return Object.fromEntries(answer.faults.map(({ at, says }) => [at, says]));
}

describe('T15, the percentage that was a fraction (handbook p. 15; public warning of 2006)', () => {
  it('refuses 6.25 where a fraction is due', () => {
    const base = cureBase('mixed-in', ratio(1000), ratio(1000), null, null);
    expect(() => ingoing(base, ratio(2), decimalRatio('6.25'))).toThrow(
      /strength must be a fraction from 0 to 1, got 6.25/,
    );
    expect(() =>
      cureBase('pumped', ratio(1), ratio(1), { weight: ratio(1), holdsCure: true }, ratio(10)),
    ).toThrow(/uptake/);
  });

  const dose = { ...us('ground', 'mixed-in'), meat: '1 kg', cure: '2.5 g' };
  it.each([['6.25'], ['0.0625'], ['0.0625 %'], ['625 %'], ['0 %'], ['unknown'], ['']])(
    'refuses a strength of "%s"',
    (nitrite) => {
      expect(faultsOf({ ...dose, bag: { nitrite } })).toHaveProperty(['bag.nitrite']);
    },
  );
  it('says what was probably meant', () => {
    expect(faultsOf({ ...dose, bag: { nitrite: '0.0625' } })['bag.nitrite']).toMatch(/6\.25 %/);
    expect(faultsOf({ ...dose, bag: {} })['bag.nitrite']).toMatch(/unknown strength/);
  });
  it('refuses a pump of 0.10 %', () => {
    const pumped = {
      ...us('ham-and-cuts', 'pumped'),
      meat: '1 kg',
      bag: number1,
      cure: '2 g',
      pickle: '1 kg',
      uptake: '0.10 %',
    };
    expect(faultsOf(pumped)).toHaveProperty('uptake');
  });
});

describe('an entry that cannot be', () => {
  const good = { ...us('bacon', 'dry-rub'), meat: '5 kg', bag: number1, cure: '10 g' };
  it.each([
    ['an unknown jurisdiction', { jurisdiction: 'atlantis' }, 'jurisdiction'],
    ['an unknown product', { product: 'bacn' }, 'product'],
    ['an unknown method', { method: 'spooned' }, 'method'],
    ['a method without a limit', { product: 'ground', method: 'pumped' }, 'method'],
    ['a negative weight', { meat: '-5 kg' }, 'meat'],
    ['no meat', { meat: '0 kg' }, 'meat'],
    ['a weight without a unit', { meat: '5' }, 'meat'],
    ['a weight that is no text', { meat: 5 }, 'meat'],
    ['a volume of cure', { cure: '2 tsp' }, 'cure'],
    ['more cure than meat', { cure: '6 kg' }, 'cure'],
    ['neither dose nor target', { cure: undefined }, 'cure'],
    ['both', { target: '120 ppm' }, 'cure'],
    ['a target as a percentage', { cure: undefined, target: '120 %' }, 'target'],
    ['a pickle where there is none', { pickle: '1 kg' }, 'pickle'],
    ['a skin that is neither on nor off', { skin: 'some' }, 'skin'],
    ['a skin of unknown weight', { skin: 'on' }, 'skinShare'],
    ['a skin of half the weight', { skin: 'on', skinShare: '50 %' }, 'skinShare'],
    ['a salt over 100 %', { salt: '200 %' }, 'salt'],
    ['a bag of more than it holds', { bag: { nitrite: '60 %', nitrate: '60 %' } }, 'bag'],
    [
      'a nitrite that is a nitrate',
      { bag: { nitrite: '6 %', nitriteAs: 'sodium-nitrate' } },
      'bag.nitriteAs',
    ],
    ['an unknown field', { salts: '2 %' }, 'salts'],
    ['a pickle of a gallon', { method: 'long-soak', pickle: '1 gal' }, 'pickle'],
    ['a pickle without its weight', { method: 'long-soak' }, 'pickle'],
    ['a pump without its share', { method: 'pumped', pickle: '1 kg' }, 'uptake'],
    ['an uptake in a long soak', { method: 'long-soak', pickle: '1 kg', uptake: '10 %' }, 'uptake'],
    [
      'a target beyond the pickle',
      { cure: undefined, target: '100000 ppm', method: 'pumped', pickle: '1 kg', uptake: '1 %' },
      'target',
    ],
  ])('%s is refused by name', (_, change, field) => {
    expect(faultsOf({ ...good, ...change })).toHaveProperty([field]);
  });
});
