import { describe, expect, it } from 'vitest';
import { checkPlan } from '../check-plan.ts';
import type { CuttingPlan } from '../cutting-plan.ts';
import type { CuttingDay, Lock } from '../day.ts';
import {
  busyDay,
  busyPlan,
  busyWish,
  changed,
  fillOf,
  give,
  itemOf,
  type Mutable,
  runOf,
  sideOf,
} from '../test-days/busy-day.ts';
import { layPlan } from '../test-days/lay-plan.ts';
import { animal, day, share } from '../test-days/test-day.ts';

const rulesOf = (of: CuttingDay, plan: CuttingPlan): string[] =>
  [...new Set(checkPlan(of, plan).map(({ rule }) => rule))].sort();

const broken = (change: (plan: Mutable<CuttingPlan>) => void): string[] =>
  rulesOf(busyDay, changed(busyPlan, change));

const twoHogs = [animal({ animalId: 'a' }), animal({ animalId: 'b' })];

describe('P21, P22, P23: shares', () => {
  const halfSide = (plan: Mutable<CuttingPlan>) => sideOf(plan, 'b-left');
  it.each<[string, (plan: Mutable<CuttingPlan>) => void, string[]]>([
    ['a share left out', (plan) => plan.shares.pop(), ['P21']],
    ['a share twice', (plan) => plan.shares.push(structuredClone(plan.shares[0]!)), ['P21']],
    [
      'a share that does not know its side',
      (plan) => Object.assign(plan.shares[0]!, { sideIds: [], shortfall: fillOf(plan, 'fillets').shortfall }),
      ['P21'],
    ],
    [
      'a share with a side and a reason for having none',
      (plan) => Object.assign(plan.shares[0]!, { shortfall: fillOf(plan, 'fillets').shortfall }),
      ['P21'],
    ],
    [
      'a half with two sides',
      (plan) => Object.assign(plan.shares[0]!, { sideIds: ['b-left', 'b-right'] }),
      ['P21'],
    ],
    ['a share of another day', (plan) => Object.assign(plan.shares[0]!, { shareId: 'ghost' }), ['P21']],
    ['a side that nobody has', (plan) => Object.assign(halfSide(plan), { shareId: null }), ['P21', 'P22']],
    [
      'a chop of the share for the counter',
      (plan) => give(plan, runOf(plan, 'b-left', 'loin-boned').pieces[3]!, null),
      ['P22'],
    ],
    [
      'a fillet of the share for a line',
      (plan) => give(plan, itemOf(plan, 'b-left', 'tenderloin'), { lineId: 'fillets' }),
      ['P22'],
    ],
    [
      'a jowl of another side for the share',
      (plan) => give(plan, itemOf(plan, 'b-right', 'jowl'), { shareId: 'half' }),
      ['P22'],
    ],
    [
      'a tail for half a hog',
      (plan) => give(plan, plan.singles.find(({ item }) => item === 'tail')!, { shareId: 'half' }),
      ['P22'],
    ],
  ])('%s', (_, change, rules) => expect(broken((plan) => void change(plan))).toEqual(rules));

  it('gives a whole animal both sides and its single pieces', () => {
    const of = (wish: Partial<Parameters<typeof share>[0]> = {}) =>
      day({ animals: twoHogs, shares: [share({ shareId: 's', size: 'whole', ...wish })] });
    const singles = Object.fromEntries(
      ['hanging-tender', 'head', 'tail', 'liver', 'caul', 'heart'].map((item) => [
        `a/${item}`,
        { shareId: 's' },
      ]),
    );
    const plan = layPlan(of(), {
      sides: { 'a-left': { shareId: 's' }, 'a-right': { shareId: 's' } },
      singles,
    });
    expect(rulesOf(of(), plan)).toEqual([]);
    expect(rulesOf(of({ onlyAnimal: 'b' }), plan)).toEqual(['P21']);
    expect(rulesOf(of({ speciesId: 'plank' }), plan)).toEqual(['P21']);
    const tailLess = changed(plan, (copy) =>
      Object.assign(copy.singles.find(({ pieceId }) => pieceId === 'a/tail')!, { owner: null }),
    );
    expect(rulesOf(of(), tailLess)).toEqual(['P22']);
    expect(rulesOf(of(), layPlan(of(), { sides: { 'a-left': { shareId: 's' } } }))).toEqual(['P21', 'P22']);
    expect(
      rulesOf(of(), layPlan(of(), { sides: { 'a-left': { shareId: 's' }, 'b-right': { shareId: 's' } } })),
    ).toContain('P21');
  });

  const withInstructions = (
    instructions: Partial<CuttingDay['shares'][number]['instructions']>,
  ): CuttingDay => ({
    ...busyDay,
    shares: busyDay.shares.map((entry) => ({
      ...entry,
      instructions: { ...entry.instructions, ...instructions },
    })),
  });

  it('follows what the customer said about operations and manners of what is there', () => {
    expect(rulesOf(withInstructions({ operations: { butt: 'butt-whole' } }), busyPlan)).toEqual(['P23']);
    expect(
      rulesOf(withInstructions({ operations: { 'middle-fillet-in': 'porchetta-whole' } }), busyPlan),
    ).toEqual([]);
    expect(rulesOf(withInstructions({ manners: { sirloin: 'boned' } }), busyPlan)).toEqual(['P23']);
    expect(rulesOf(withInstructions({ manners: { block: 'across' } }), busyPlan)).toEqual([]);
  });

  it('leaves whole what the customer did not say how to portion', () => {
    expect(rulesOf(withInstructions({ portions: {} }), busyPlan)).toEqual(['P23']);
  });

  it('cuts another portion than was said for nobody', () => {
    expect(
      rulesOf(withInstructions({ portions: { 'loin-boned': { by: 'thickness', um: 31_750 } } }), busyPlan),
    ).toEqual(['P23']);
  });

  it('cuts as many as fit: 15 one-inch chops where 16 go leave more than an inch', () => {
    const fewer = {
      ...busyWish,
      sides: {
        ...busyWish.sides,
        'b-left': {
          ...busyWish.sides?.['b-left'],
          pieces: busyWish.sides?.['b-left']?.pieces?.slice(1) ?? [],
        },
      },
    };
    expect(rulesOf(busyDay, layPlan(busyDay, fewer))).toEqual(['P23']);
  });

  it('asks for no portion that the run cannot give', () => {
    const noSaw = (day: CuttingDay): CuttingDay => ({ ...day, tools: { saw: false, kerfUm: 0 } });
    const said = share({
      shareId: 's',
      size: 'half',
      instructions: {
        operations: {},
        manners: {},
        portions: { 'rib-bone-in': { by: 'thickness', um: 25_400 } },
      },
    });
    const of = noSaw(day({ animals: [twoHogs[0]!], shares: [said] }));
    expect(rulesOf(of, layPlan(of, { sides: { 'a-left': { shareId: 's' } } }))).toEqual([]);
  });
});

describe('P24: locks', () => {
  const locked = (lock: Lock): string[] => rulesOf({ ...busyDay, locks: [lock] }, busyPlan);
  const lostOnLeft = day({ animals: [animal({ animalId: 'a', lostParts: ['middle'] })] });

  it.each<[string, Lock, string[]]>([
    [
      'a chosen operation',
      { lock: 'operation', sideId: 'a-left', part: 'middle-open', operation: 'pull-tenderloin' },
      [],
    ],
    [
      'another operation',
      { lock: 'operation', sideId: 'a-left', part: 'middle-open', operation: 'leave-tenderloin' },
      ['P24'],
    ],
    [
      'an operation of a part that the plan does not make',
      { lock: 'operation', sideId: 'a-left', part: 'middle-fillet-in', operation: 'standard-line' },
      ['P24'],
    ],
    ['a chosen manner', { lock: 'manner', sideId: 'a-left', zone: 'rib', manner: 'bone-in' }, []],
    ['another manner', { lock: 'manner', sideId: 'a-left', zone: 'rib', manner: 'boned' }, ['P24']],
    [
      'a manner of half the zone',
      { lock: 'manner', sideId: 'b-right', zone: 'rib', manner: 'boned' },
      ['P24'],
    ],
    [
      'a manner of a zone on no bar',
      { lock: 'manner', sideId: 'a-left', zone: 'block', manner: 'across' },
      ['P24'],
    ],
  ])('%s', (_, lock, rules) => expect(locked(lock)).toEqual(rules));

  it('asks nothing of what was lost', () => {
    const locks: Lock[] = [
      { lock: 'operation', sideId: 'a-left', part: 'belly-ribbed', operation: 'sheet-ribs' },
      { lock: 'manner', sideId: 'a-left', zone: 'rib', manner: 'boned' },
    ];
    expect(rulesOf({ ...lostOnLeft, locks }, layPlan(lostOnLeft))).toEqual([]);
  });
});
