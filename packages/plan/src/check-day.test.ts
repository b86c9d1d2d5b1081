import { describe, expect, it } from 'vitest';
import { checkDay } from './check-day.ts';
import type { CuttingDay, DayAnimal, Lock } from './day.ts';
import { busyDay } from './test-days/busy-day.ts';
import { animal, day, line } from './test-days/test-day.ts';

const hogs = [animal({ animalId: 'a' }), animal({ animalId: 'b' })];
const withLocks = (...locks: readonly Lock[]): CuttingDay => day({ animals: hogs, locks });
const withSide = (wish: Partial<DayAnimal['sides'][number]>): CuttingDay => {
  const [first] = hogs as [DayAnimal];
  const [left] = first.sides;
  return day({ animals: [{ ...first, sides: [{ ...left!, ...wish }] }] });
};
const brief = (of: CuttingDay): string[] => checkDay(of).map(({ level, at }) => `${level} ${at}`);

it.each<[string, CuttingDay]>([
  ['an empty day', day({})],
  ['a busy day', busyDay],
  ['a day of two species', day({ animals: [...hogs, animal({ animalId: 'p', speciesId: 'plank' })] })],
])('takes %s', (_, of) => expect(checkDay(of)).toEqual([]));

describe('animals', () => {
  it.each<[string, CuttingDay, string[]]>([
    [
      'a carcass of 3 kg',
      withSide({ carcassGrams: 3000, massMg: 1_500_000 }),
      ['error animals[0].sides[0].carcassGrams', 'error animals[0].sides[0].massMg'],
    ],
    ['a carcass of 900 kg', withSide({ carcassGrams: 900_000 }), ['error animals[0].sides[0].carcassGrams']],
    [
      'a carcass that is no number',
      withSide({ carcassGrams: Number.NaN }),
      ['error animals[0].sides[0].carcassGrams'],
    ],
    [
      'a side heavier than its carcass',
      withSide({ massMg: 92_000_000 }),
      ['error animals[0].sides[0].massMg'],
    ],
    [
      'a side of part of a milligram',
      withSide({ massMg: 40_000_000.5 }),
      ['error animals[0].sides[0].massMg'],
    ],
    ['12 ribs', withSide({ ribs: 12 }), ['error animals[0].sides[0].ribs']],
    ['18 ribs', withSide({ ribs: 18 }), ['error animals[0].sides[0].ribs']],
    ['a side of another animal', withSide({ animalId: 'b' }), ['error animals[0].sides[0].animalId']],
    ['an unknown fact', withSide({ facts: ['shaved' as never] }), ['error animals[0].sides[0].facts[0]']],
    ['an unknown lost part', withSide({ lostParts: ['wing'] }), ['error animals[0].sides[0].lostParts[0]']],
    [
      'an unknown lost item',
      day({ animals: [animal({ animalId: 'a', lostItems: ['wing'] })] }),
      ['error animals[0].lostItems[0]'],
    ],
    [
      'an unknown species',
      day({ animals: [{ ...hogs[0]!, speciesId: 'ox' }] }),
      ['error animals[0].speciesId'],
    ],
    ['no sides', day({ animals: [{ ...hogs[0]!, sides: [] }] }), ['error animals[0].sides']],
  ])('%s', (_, of, faults) => expect(brief(of)).toEqual(faults));

  const pair = (left: object, right: object): CuttingDay => {
    const [first] = hogs as [DayAnimal];
    return day({
      animals: [
        {
          ...first,
          sides: [
            { ...first.sides[0]!, ...left },
            { ...first.sides[1]!, ...right },
          ],
        },
      ],
    });
  };

  it('compares the two sides with each other and with the carcass', () => {
    const half = (share: number) => ({
      massMg: Math.floor((hogs[0]!.sides[0]!.carcassGrams * 1000 * share) / 2),
    });
    expect(brief(pair(half(1.05), half(1.05)))).toEqual([]);
    expect(brief(pair(half(1.05), half(1.06)))).toEqual(['error animals[0].sides']);
    expect(brief(pair(half(0.84), half(0.84)))).toEqual(['warning animals[0].sides']);
    expect(brief(pair({}, { hand: 'left' }))).toEqual(['error animals[0].sides[1].hand']);
    expect(brief(pair({}, { carcassGrams: 84_000 }))).toEqual(['error animals[0].sides[1].carcassGrams']);
    expect(brief(pair({}, { facts: ['skin-on', 'feet', 'head'] }))).toEqual([
      'error animals[0].sides[1].facts',
    ]);
    expect(brief(pair({}, { facts: ['head', 'organs'] }))).toEqual([]);
  });

  it('suspects pounds behind a side that outweighs its carcass', () => {
    expect(checkDay(withSide({ massMg: 92_000_000 }))[0]?.says).toBe(
      'The side weighs 92 kg, its whole carcass 83.5 kg. Maybe pounds were keyed as kilograms.',
    );
    expect(checkDay(withSide({ carcassGrams: 184 }))[0]?.says).toMatch(
      /Maybe kilograms were keyed as grams\.$/,
    );
    expect(checkDay(withSide({ carcassGrams: 900_000 }))[0]?.says).toMatch(
      /Maybe the decimal point slipped\.$/,
    );
  });
});

describe('locks', () => {
  const operation = (part: string, id: string): Lock => ({
    lock: 'operation',
    sideId: 'a-left',
    part,
    operation: id,
  });
  const manner = (zone: string, id: string): Lock => ({ lock: 'manner', sideId: 'a-left', zone, manner: id });
  it.each<[string, readonly Lock[], string[]]>([
    [
      'a side of another day',
      [{ ...operation('butt', 'butt-whole'), sideId: 'c-left' }],
      ['error locks[0].sideId'],
    ],
    ['an unknown operation', [operation('butt', 'ham-whole')], ['error locks[0].operation']],
    ['an unknown zone', [manner('wing', 'boned')], ['error locks[0].zone']],
    [
      'two answers for one part',
      [operation('butt', 'butt-whole'), operation('butt', 'butt-coppa')],
      ['error locks[1]'],
    ],
    [
      'one answer twice',
      [operation('butt', 'butt-whole'), operation('butt', 'butt-whole')],
      ['warning locks[1]'],
    ],
    [
      'left and right apart',
      [operation('butt', 'butt-whole'), { ...operation('butt', 'butt-coppa'), sideId: 'a-right' }],
      [],
    ],
    [
      'a whole split of the middle',
      [
        operation('middle-open', 'pull-tenderloin'),
        operation('middle-fillet-out', 'standard-line'),
        manner('rib', 'boned'),
        manner('belly', 'across'),
      ],
      [],
    ],
    [
      'the tenderloin left in, and chops without it',
      [operation('middle-open', 'leave-tenderloin'), operation('middle-fillet-out', 'standard-line')],
      ['error locks[1]'],
    ],
    [
      'porchetta of the whole middle, and boned ribs',
      [operation('middle-fillet-out', 'porchetta-whole'), manner('rib', 'boned')],
      ['error locks[1]'],
    ],
    [
      'porchetta of the front, and a boned loin end',
      [operation('middle-fillet-out', 'porchetta-front'), manner('lumbar', 'boned')],
      [],
    ],
  ])('%s', (_, locks, faults) => expect(brief(withLocks(...locks))).toEqual(faults));

  it('refuses a porchetta of a skinned side', () => {
    const skinned = day({
      animals: [animal({ animalId: 'a', facts: ['head', 'organs'] })],
      locks: [operation('middle-fillet-out', 'porchetta-whole')],
    });
    expect(brief(skinned)).toEqual(['error locks[0].operation']);
  });

  it('lets a settled choice about a lost part stand', () => {
    const lost = day({
      animals: [animal({ animalId: 'a', lostParts: ['middle'] })],
      locks: [operation('belly-ribbed', 'sheet-ribs'), manner('rib', 'boned')],
    });
    expect(brief(lost)).toEqual([]);
  });
});

describe('the shop', () => {
  const open = { pieces: null, worthPercent: 50 };
  const counter = (wish: Partial<CuttingDay['counter']>): Partial<CuttingDay> => ({
    counter: { ...day({}).counter, ...wish },
  });
  it.each<[string, Partial<CuttingDay>, string[]]>([
    ['a day that does not exist', { date: '2031-02-29' }, ['error date']],
    ['a leap day', { date: '2032-02-29' }, []],
    ['a date the other way round', { date: '14-03-2031' }, ['error date']],
    ['a thirteenth month', { date: '2031-13-01' }, ['error date']],
    ['a day without a name', { dayId: '' }, ['error dayId']],
    ['a kerf of 5 mm', { tools: { saw: true, kerfUm: 5000 } }, []],
    ['a kerf of 6 mm', { tools: { saw: true, kerfUm: 6000 } }, ['error tools.kerfUm']],
    ['a kerf of less than nothing', { tools: { saw: true, kerfUm: -1 } }, ['error tools.kerfUm']],
    ['a kerf that is no number', { tools: { saw: true, kerfUm: Number.NaN } }, ['error tools.kerfUm']],
    ['no counter steps', counter({ itemSteps: [] }), ['error counter.itemSteps']],
    [
      'steps that end',
      counter({ itemSteps: [{ pieces: 2, worthPercent: 50 }] }),
      ['error counter.itemSteps'],
    ],
    [
      'an endless step before the last',
      counter({ itemSteps: [open, open] }),
      ['error counter.itemSteps[0].pieces'],
    ],
    [
      'a step of no pieces',
      counter({ itemSteps: [{ pieces: 0, worthPercent: 50 }, open] }),
      ['error counter.itemSteps[0].pieces'],
    ],
    [
      'a worth of 101 percent',
      counter({ stockSteps: [{ grams: null, worthPercent: 101 }] }),
      ['error counter.stockSteps[0].worthPercent'],
    ],
    [
      'a worth below nothing',
      counter({ stockSteps: [{ grams: null, worthPercent: -1 }] }),
      ['error counter.stockSteps[0].worthPercent'],
    ],
    [
      'a second piece worth more than the first',
      counter({ itemSteps: [{ pieces: 1, worthPercent: 40 }, open] }),
      ['error counter.itemSteps[1].worthPercent'],
    ],
    [
      'a price for what nobody sells',
      counter({ worthMinorPerKg: { wing: 5 } }),
      ['error counter.worthMinorPerKg.wing'],
    ],
    [
      'a price that is no number',
      counter({ worthMinorPerKg: { trim: Number.NaN } }),
      ['error counter.worthMinorPerKg.trim'],
    ],
    ['labour that pays', counter({ labourMinorPerHour: -5 }), ['error counter.labourMinorPerHour']],
  ])('%s', (_, wish, faults) => expect(brief(day(wish))).toEqual(faults));

  it('refuses more lines than a day can have', () => {
    const chop = line({ lineId: 'l', cut: 'rib-chop', portion: { by: 'thickness', um: 25_400 } });
    const lines = Array.from({ length: 10_001 }, (_, index) => ({
      ...chop,
      lineId: `l${index}`,
      orderId: `o${index}`,
    }));
    expect(brief(day({ animals: hogs, lines }))).toEqual(['error lines']);
  });
});
