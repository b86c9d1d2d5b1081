import type { Portion } from '@flitchbook/carcass';
import { describe, expect, it } from 'vitest';
import { inchesText, lengthText, portionText, weightText } from './measures.ts';

describe('lengths', () => {
  // One inch is exactly 25 400 um (NIST Handbook 44, appendix C), so an eighth is 3175 and a sixteenth 1587.5.
  it.each<[number, string]>([
    [0, '0 in'],
    [3175, '1/8 in'],
    [12_700, '1/2 in'],
    [19_050, '3/4 in'],
    [25_400, '1 in'],
    [31_750, '1 1/4 in'],
    [101_600, '4 in'],
    [20_000, '~13/16 in'],
    [1588, '~1/16 in'],
    [25_399, '~1 in'],
    [700, '~0 in'],
  ])('%i um is %s', (um, text) => expect(inchesText(um)).toBe(text));

  it('go to the nearest eighth where a sixteenth is too fine', () => {
    expect(inchesText(135_000, 8)).toBe('~5 3/8 in');
    expect(inchesText(135_000, 16)).toBe('~5 5/16 in');
  });

  it('are shown in the shop’s unit, or in both', () => {
    expect(lengthText(31_750)).toBe('1 1/4 in (31.8 mm)');
    expect(lengthText(31_750, { lengthUnit: 'in' })).toBe('1 1/4 in');
    expect(lengthText(31_750, { lengthUnit: 'mm' })).toBe('31.8 mm');
  });
});

it('weights are shown in the shop’s unit, or in both', () => {
  expect(weightText(453_592.37)).toBe('0.45 kg (1.00 lb)');
  expect(weightText(1_000_000, { weightUnit: 'kg' })).toBe('1.00 kg');
  expect(weightText(1_000_000, { weightUnit: 'lb' })).toBe('2.20 lb');
});

it.each<[Portion, string]>([
  [{ by: 'thickness', um: 25_400 }, '1 in (25.4 mm)'],
  [{ by: 'ribs', ribs: 1 }, '1 rib'],
  [{ by: 'ribs', ribs: 8 }, '8 ribs'],
  [{ by: 'weight', fromGrams: 900, toGrams: 1400 }, '0.90 to 1.40 kg (1.98 to 3.09 lb)'],
  [{ by: 'whole' }, 'whole'],
  [{ by: 'bulk' }, 'by weight'],
])('%o is said as %s', (portion, text) => expect(portionText(portion)).toBe(text));
