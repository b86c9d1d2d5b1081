import { describe, expect, it } from 'vitest';
import { plainLot } from '../testing/tiny-days.ts';
import {
  poolByKind,
  predictTrim,
  shareOut,
  type TrimmedSide,
  usualTrimKinds,
  weighTrim,
} from './trim-lot.ts';

const kg = 1_000_000;
const worth = { trim: 380, 'fat-trim': 90, 'back-fat': 220, 'leaf-fat': 350 };
const side = (hand: string): TrimmedSide => ({
  sideId: `hog-1-${hand}`,
  animalId: 'hog-1',
  species: 'pork',
  ownerId: null,
  mayPool: false,
  bulkMg: { trim: 4 * kg, 'leaf-fat': 499_000, 'back-fat': 3_311_000, bone: 2 * kg, lost: 0 },
});
const foretold = predictTrim([side('left'), side('right')], usualTrimKinds, '2026-11-26', worth);

describe('the trim pool', () => {
  it('is foretold from a cutting plan, by side and kind; bone is no trim', () => {
    expect(foretold.map(({ lotId }) => lotId)).toEqual([
      'hog-1-left/trim',
      'hog-1-left/back-fat',
      'hog-1-left/leaf-fat',
      'hog-1-right/trim',
      'hog-1-right/back-fat',
      'hog-1-right/leaf-fat',
    ]);
    expect(foretold.every(({ weight, fatFrom }) => weight === 'predicted' && fatFrom === 'book')).toBe(true);
  });

  it('keeps leaf fat apart from hard back fat, and says how old the oldest is', () => {
    const kinds = poolByKind(foretold, '2026-11-29');
    expect(kinds.map(({ kind, massMg, oldestDays }) => [kind, massMg, oldestDays])).toEqual([
      ['trim', 8 * kg, 3],
      ['back-fat', 6_622_000, 3],
      ['leaf-fat', 998_000, 3],
    ]);
  });

  it('becomes what the scale says, and tells by how much it was wrong', () => {
    const weighed = weighTrim(foretold, [
      { lotId: 'hog-1-left/trim', reading: { text: '9.1', unit: 'lb' }, fatPpm: 235_000 },
    ]);
    if ('faults' in weighed) throw new Error(JSON.stringify(weighed.faults));
    // 9.1 lb is 4127.69 g: NIST Handbook 44, appendix C.
    expect(weighed.lots[0]).toMatchObject({
      massMg: 4_128_000,
      weight: 'scale',
      fatPpm: 235_000,
      fatFrom: 'measured',
    });
    expect(weighed.lots.slice(1)).toEqual(foretold.slice(1));
    expect(weighed.differences).toEqual([{ lotId: 'hog-1-left/trim', byMg: 128_000 }]);
  });

  it.each([
    ['an unknown lot', [{ lotId: 'hog-9/trim', reading: { text: '1', unit: 'kg' } }], 'readings[0].lotId'],
    [
      'a negative weight',
      [{ lotId: 'hog-1-left/trim', reading: { text: '-1', unit: 'kg' } }],
      'readings[0].reading',
    ],
    [
      'a fat over 100 %',
      [{ lotId: 'hog-1-left/trim', reading: { text: '1', unit: 'kg' }, fatPpm: 1_000_001 }],
      'readings[0].fatPpm',
    ],
  ] as const)('refuses %s and changes nothing', (_, readings, at) => {
    expect(weighTrim(foretold, readings)).toMatchObject({ faults: [{ at }] });
  });

  it('refuses one lot weighed twice', () => {
    const reading = { lotId: 'hog-1-left/trim', reading: { text: '1', unit: 'kg' } } as const;
    expect(weighTrim(foretold, [reading, reading])).toMatchObject({ faults: [{ at: 'readings[1].lotId' }] });
  });

  it('case 51: shares what was made of a pool by own trim over all trim, to the milligram', () => {
    const given = [
      { ownerId: 'ada', massMg: 9_100 },
      { ownerId: 'bo', massMg: 6_400 },
      { ownerId: 'ada', massMg: 100 },
    ];
    const shares = shareOut(10_001, given);
    expect(shares).toEqual([
      { ownerId: 'ada', massMg: 5_898 },
      { ownerId: 'bo', massMg: 4_103 },
    ]);
  });

  it('starts from a lot as the tests know it', () => {
    expect(poolByKind([plainLot], '2026-11-25')[0]).toMatchObject({
      massMg: 10 * kg,
      fatMg: 2.5 * kg,
      oldestDays: 1,
    });
  });
});
