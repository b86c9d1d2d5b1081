import { describe, expect, it } from 'vitest';
import { hog } from '../hog/hog.ts';
import { checkProfile } from './check-profile.ts';
import { hogYields } from './hog-yields.ts';
import { checkKnown, type KnownCarcass } from './known-carcass.ts';

const pound = 453.59237;
const dressing = { skin: true, head: false, feet: true, 'leaf-fat': true };
const good: KnownCarcass = { coldGrams: Math.round(184 * pound), dressing };
const verdict = (changes: Partial<KnownCarcass>) => checkKnown(hog, hogYields, { ...good, ...changes });

describe('what is known of a hog', () => {
  it('passes a hog of 184 lb without a word', () => {
    expect(
      verdict({ liveGrams: Math.round(250 * pound), lastRibFatMm: 20, leanPercent: 49.4, ribs: 15 }),
    ).toEqual({
      faults: [],
      warnings: [],
    });
  });

  it.each<[string, Partial<KnownCarcass>, string, RegExp]>([
    ['no weight at all', { coldGrams: undefined as never }, 'coldGrams', /a weight is needed/],
    ['3 kg', { coldGrams: 3_000 }, 'coldGrams', /none of a Hog/],
    ['900 kg', { coldGrams: 900_000 }, 'coldGrams', /none of a Hog/],
    ['a weight that is no number', { coldGrams: Number.NaN }, 'coldGrams', /whole number/],
    ['184 lb typed as 408 kg', { coldGrams: 408_000 }, 'coldGrams', /none of a Hog/],
    ['hot below cold', { hotGrams: 82_000 }, 'hotGrams', /below the cold one/],
    ['a cooler that took 12 %', { hotGrams: 95_000 }, 'coldGrams', /12\.\d %/],
    ['a hog that dressed at 92 %', { liveGrams: 91_000 }, 'liveGrams', /91\.7 %/],
    ['dressing not said', { dressing: {} }, 'dressing.skin', /whether the skin hangs/],
    [
      'dressing half said',
      { dressing: { skin: true, head: false, feet: true } },
      'dressing.leaf-fat',
      /leaf fat/,
    ],
    [
      'a dressing it does not know',
      { dressing: { ...dressing, wool: true } },
      'dressing.wool',
      /knows no wool/,
    ],
    ['no fat at all', { lastRibFatMm: 0 }, 'lastRibFatMm', /between 4 and 80/],
    ['lean over 68 %', { leanPercent: 95 }, 'leanPercent', /between/],
    [
      'fat and lean that contradict each other',
      { lastRibFatMm: 50, leanPercent: 60 },
      'leanPercent',
      /contradicts/,
    ],
    ['12 ribs', { ribs: 12 }, 'ribs', /13 to 17/],
    ['15.5 ribs', { ribs: 15.5 }, 'ribs', /whole/],
  ])('refuses %s, and names it', (_, changes, at, says) => {
    const { faults } = verdict(changes);
    expect(faults.map((fault) => fault.at)).toContain(at);
    expect(faults.find((fault) => fault.at === at)?.says).toMatch(says);
  });

  it('asks about 184 typed as kilograms, and about 83 typed as pounds', () => {
    const [tooHeavy] = verdict({ coldGrams: 184_000 }).warnings;
    expect(tooHeavy).toMatchObject({ at: 'coldGrams', value: 184_000 });
    expect(tooHeavy?.says).toMatch(/Were these pounds/);
    expect(verdict({ coldGrams: Math.round(83 * pound) }).warnings[0]?.says).toMatch(/Were these kilograms/);
  });
});

describe('the yield figures of the hog', () => {
  it('Y4: all carry a listed source, and name what the tree has', () => {
    expect(checkProfile(hog, hogYields)).toEqual([]);
  });

  it('fail the check when one has no source, an unknown one, or a wrong name', () => {
    const { source: _, ...bare } = hogYields.lengthCvPercent;
    const spoilt = {
      ...hogYields,
      lengthCvPercent: bare as typeof hogYields.lengthCvPercent,
      chopsCvPercent: { value: 7, source: 'hearsay' },
      dressing: [
        { id: 'wool', name: 'wool', usuallyOn: true, takes: [{ id: 'fleece', share: 1, source: 'memory' }] },
      ],
    };
    expect(new Set(checkProfile(hog, spoilt).map(({ at }) => at))).toEqual(
      new Set(['chopsCvPercent.source', 'lengthCvPercent', 'dressing.wool']),
    );
  });
});
