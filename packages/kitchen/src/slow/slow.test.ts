import { describe, expect, it } from 'vitest';
import { animalsFor, nextTurn, weekBalance } from './balance.ts';
import { type Conversion, rankConversions, slowCuts, weekOf } from './slow-cuts.ts';

const kg = 1_000_000;
const lb = 453_592;

describe('the week in balance', () => {
  it('case 30: 200 pigs a week and restaurants that take 6 of 400 hams: 394 hams, some 12 800 lb, to place', () => {
    const flows = [
      { cutId: 'chop', perAnimal: 40, soldPerWeek: 8000, pieceMg: 256_000 },
      { cutId: 'ham', perAnimal: 2, soldPerWeek: 6, pieceMg: Math.round(32.5 * lb) },
    ];
    const week = weekBalance(200, flows);
    expect(week).toMatchObject({ slowest: 'ham', animalsInBalance: 3 });
    const [chop, ham] = week.cuts;
    expect(chop).toMatchObject({ unsold: 0, waiting: 0 });
    expect(ham!.unsold).toBe(394);
    expect(ham!.unsoldMg / lb).toBeCloseTo(12_805, 0);
  });

  it('case 29: 16 packs of bacon from a hog, and the 17th buyer waits', () => {
    const [bacon] = weekBalance(1, [
      { cutId: 'bacon', perAnimal: 16, soldPerWeek: 17, pieceMg: 450_000 },
    ]).cuts;
    expect(bacon).toMatchObject({ unsold: 0, waiting: 1 });
  });

  it('case 32: 43 hams like last year are 22 pigs', () => expect(animalsFor(43, 2)).toBe(22));

  it('case 35: presa and pluma come two to a pig, and are gathered over animals', () => {
    expect(animalsFor(7, 2)).toBe(4);
    expect(() => animalsFor(1, 0)).toThrow(/perAnimal/);
  });

  it('case 34: the next scarce piece goes to who went longest without, then to who asked first', () => {
    const waiting = [
      { customerId: 'ada', askedAt: '2026-11-01' },
      { customerId: 'bo', askedAt: '2026-11-02' },
      { customerId: 'cy', askedAt: '2026-11-03' },
      { customerId: 'di', askedAt: '2026-11-04' },
    ];
    const had: Record<string, string> = { ada: '2026-10-20', bo: '2026-09-01' };
    const turns: string[] = [];
    for (let day = 25; day < 30; day++) {
      const next = nextTurn(waiting, had)!;
      turns.push(next);
      had[next] = `2026-11-${day}`;
    }
    expect(turns).toEqual(['cy', 'di', 'bo', 'ada', 'cy']);
    expect(nextTurn([], {})).toBeUndefined();
  });
});

describe('case 81: what is left, and what to make of it', () => {
  const conversions: readonly Conversion[] = [
    {
      conversionId: 'schnitzel',
      name: 'Ham to schnitzel',
      from: ['ham'],
      into: [
        { name: 'Schnitzel', ppm: 700_000, minorPerKg: 1500 },
        { name: 'Trim', ppm: 120_000, minorPerKg: 400 },
      ],
      minutesPerKg: 5,
      addedMinorPerKg: 0,
    },
    {
      conversionId: 'sausage',
      name: 'Ham or picnic to sausage',
      from: ['ham', 'picnic'],
      into: [{ name: 'Sausage', ppm: 800_000, minorPerKg: 1200 }],
      minutesPerKg: 4,
      addedMinorPerKg: 60,
    },
    {
      conversionId: 'gold',
      name: 'Ham to gold leaf',
      from: ['ham'],
      into: [{ name: 'Gold', ppm: 10, minorPerKg: 1 }],
      minutesPerKg: 60,
      addedMinorPerKg: 0,
    },
  ];

  it('ranks by gain after labour, worked by hand', () => {
    const ranked = rankConversions('ham', 10 * kg, 500, conversions, 3000);
    // Schnitzel: 10 500 + 480 - 50 min at 50 a minute - 5 000. Sausage: 9 600 - 2 000 - 600 - 5 000.
    expect(ranked.map(({ conversionId, gainMinor, minutes }) => [conversionId, gainMinor, minutes])).toEqual([
      ['schnitzel', 3480, 50],
      ['sausage', 2000, 40],
      ['gold', -35_000, 600],
    ]);
  });

  it('lists what is unsold by animal and week, the oldest first, and leaves out what gains nothing', () => {
    const piece = (pieceId: string, cutId: string, packedOn: string) => ({
      pieceId,
      cutId,
      animalId: 'hog-1',
      massMg: 5 * kg,
      packedOn,
    });
    const pieces = [
      piece('1', 'ham', '2026-11-24'),
      piece('2', 'ham', '2026-11-17'),
      piece('3', 'ham', '2026-11-22'),
      piece('4', 'picnic', '2026-11-25'),
    ];
    const groups = slowCuts(pieces, '2026-11-26', { ham: 500, picnic: 1100 }, conversions, 3000);
    expect(
      groups.map(({ cutId, week, pieces: count, oldestDays }) => [cutId, week, count, oldestDays]),
    ).toEqual([
      ['ham', '2026-11-16', 2, 9],
      ['ham', '2026-11-23', 1, 2],
      ['picnic', '2026-11-23', 1, 1],
    ]);
    expect(groups[0]!.conversions.map(({ conversionId }) => conversionId)).toEqual(['schnitzel', 'sausage']);
    expect(groups[2]!.conversions).toEqual([]);
  });

  it('counts weeks from Monday, across the turn of a year', () => {
    expect([weekOf('2027-01-01'), weekOf('2026-12-28'), weekOf('2023-12-31')]).toEqual([
      '2026-12-28',
      '2026-12-28',
      '2023-12-25',
    ]);
  });
});
