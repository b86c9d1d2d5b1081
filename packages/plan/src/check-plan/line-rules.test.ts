import { describe, expect, it } from 'vitest';
import { checkPlan } from '../check-plan.ts';
import type { CuttingPlan } from '../cutting-plan.ts';
import type { CuttingDay, DemandLine } from '../day.ts';
import {
  busyDay,
  busyPlan,
  changed,
  fillOf,
  give,
  itemOf,
  type Mutable,
  runOf,
} from '../test-days/busy-day.ts';
import { layPlan, type PlanWish } from '../test-days/lay-plan.ts';
import type { SideWish } from '../test-days/lay-side.ts';
import { animal, day, line, share } from '../test-days/test-day.ts';

const rulesOf = (of: CuttingDay, plan: CuttingPlan): string[] =>
  [...new Set(checkPlan(of, plan).map(({ rule }) => rule))].sort();

const broken = (change: (plan: Mutable<CuttingPlan>) => void): string[] =>
  rulesOf(busyDay, changed(busyPlan, change));

const whole = { by: 'whole' } as const;
const twoHogs = [animal({ animalId: 'a' }), animal({ animalId: 'b' })];

describe('P26: a crown of two racks', () => {
  const eight = { by: 'ribs', ribs: 8 } as const;
  const of = day({
    animals: twoHogs,
    lines: [line({ lineId: 'crown', cut: 'crown', portion: eight, ask: { pieces: 2 } })],
  });
  const rack: SideWish = {
    zones: { rib: 'bone-in' },
    pieces: [{ stock: 'rib-bone-in', cut: 'crown', portion: eight, owner: { lineId: 'crown' } }],
  };

  it('is of both sides of one animal', () => {
    expect(rulesOf(of, layPlan(of, { sides: { 'a-left': rack, 'a-right': rack } }))).toEqual([]);
    expect(rulesOf(of, layPlan(of, { sides: { 'a-left': rack, 'b-right': rack } }))).toEqual(['P26']);
    expect(rulesOf(of, layPlan(of, { sides: { 'a-left': rack } }))).toEqual(['P26']);
  });
});

describe('P17: a piece for a line that asks for it', () => {
  it.each<[string, (plan: Mutable<CuttingPlan>) => void, string[]]>([
    [
      'a line that is not there',
      (plan) => give(plan, itemOf(plan, 'b-right', 'jowl'), { lineId: 'fillets' }),
      ['P17'],
    ],
    [
      'a chop for the T-bone line',
      (plan) => give(plan, runOf(plan, 'a-left', 'rib-bone-in').pieces[1]!, { lineId: 't-bones' }),
      ['P17', 'P19'],
    ],
    [
      'a fillet for nobody that was ever here',
      (plan) => Object.assign(itemOf(plan, 'b-right', 'tenderloin'), { owner: { lineId: 'ghost' } }),
      ['P17', 'P19'],
    ],
    [
      'a thinner chop than the line asks',
      (plan) => Object.assign(runOf(plan, 'a-left', 'rib-bone-in').pieces[4]!.portion, { um: 19_050 }),
      ['P17', 'P9'],
    ],
  ])('%s', (_, change, rules) => expect(broken(change)).toEqual(rules));

  it('takes a substitute only in the portion the line accepts', () => {
    const substitutes = (fromGrams: number): DemandLine[] =>
      busyDay.lines.map((entry) =>
        entry.lineId === 'belly'
          ? {
              ...entry,
              substitutes: [{ cut: 'fresh-belly', portion: { by: 'weight', fromGrams, toGrams: 1200 } }],
            }
          : entry,
      );
    expect(rulesOf({ ...busyDay, lines: substitutes(900) }, busyPlan)).toEqual([]);
    expect(rulesOf({ ...busyDay, lines: substitutes(950) }, busyPlan)).toEqual(['P17']);
  });

  it('keeps species apart', () => {
    const of = day({
      animals: [animal({ animalId: 'p', speciesId: 'plank' })],
      lines: [line({ lineId: 'knob', cut: 'knob', portion: whole, speciesId: 'plank' })],
    });
    const plan = layPlan(of, { sides: { 'p-left': { items: { knob: { lineId: 'knob' } } } } });
    expect(rulesOf(of, plan)).toEqual([]);
    expect(
      rulesOf({ ...of, lines: of.lines.map((entry) => ({ ...entry, speciesId: 'hog' })) }, plan),
    ).toEqual(['P17']);
  });
});

describe('P18: one animal, a certain animal, a certain side', () => {
  it('keeps a line to one animal', () => {
    const plan = (sideId: string): PlanWish => ({
      sides: {
        'a-left': { items: { tenderloin: { lineId: 'l' } } },
        [sideId]: { items: { tenderloin: { lineId: 'l' } } },
      },
    });
    const of = (wish: Partial<DemandLine>) =>
      day({
        animals: twoHogs,
        lines: [line({ lineId: 'l', cut: 'tenderloin', portion: whole, ask: { pieces: 2 }, ...wish })],
      });
    expect(rulesOf(of({ sameAnimal: true }), layPlan(of({}), plan('a-right')))).toEqual([]);
    expect(rulesOf(of({ sameAnimal: true }), layPlan(of({}), plan('b-right')))).toEqual(['P18']);
    expect(rulesOf(of({ onlyAnimal: 'a' }), layPlan(of({}), plan('b-left')))).toEqual(['P18']);
    expect(rulesOf(of({ onlyHand: 'left' }), layPlan(of({}), plan('b-left')))).toEqual([]);
    expect(rulesOf(of({ onlyHand: 'left' }), layPlan(of({}), plan('b-right')))).toEqual(['P18']);
  });

  it('takes a single piece for a line that wants a side: it belongs to neither', () => {
    const of = day({
      animals: twoHogs,
      lines: [line({ lineId: 'l', cut: 'liver', portion: whole, onlyHand: 'left' })],
    });
    expect(rulesOf(of, layPlan(of, { singles: { 'a/liver': { lineId: 'l' } } }))).toEqual([]);
  });

  it('keeps loose meat of a line to one animal', () => {
    const of = (wish: Partial<DemandLine>) =>
      day({
        animals: twoHogs,
        lines: [
          line({ lineId: 'l', cut: 'ground-pork', portion: { by: 'bulk' }, ask: { grams: 9000 }, ...wish }),
        ],
      });
    const plan = layPlan(of({}), { bulkGrams: { l: 9000 } });
    expect(rulesOf(of({}), plan)).toEqual([]);
    expect(rulesOf(of({ sameAnimal: true }), plan)).toEqual(['P18']);
  });
});

describe('P19: the account of a line', () => {
  const reason = {
    kind: 'scarce',
    says: 'None.',
    withLines: [],
    withShares: [],
    withLocks: [],
    mostPossible: 0,
  } as const;
  it.each<[string, (plan: Mutable<CuttingPlan>) => void, string[]]>([
    ['a line left out', (plan) => plan.lines.splice(0, 1), ['P19']],
    ['a line twice', (plan) => plan.lines.push(structuredClone(plan.lines[0]!)), ['P19']],
    [
      'a line of another day',
      (plan) => plan.lines.push({ ...structuredClone(plan.lines[0]!), lineId: 'ghost' }),
      ['P19'],
    ],
    [
      'one piece listed twice',
      (plan) => fillOf(plan, 'chops').pieceIds.push(fillOf(plan, 'chops').pieceIds[0]!),
      ['P19'],
    ],
    [
      'a piece of another line listed',
      (plan) => fillOf(plan, 'chops').pieceIds.push(fillOf(plan, 'rack').pieceIds[0]!),
      ['P19'],
    ],
    ['a piece not listed', (plan) => fillOf(plan, 'chops').pieceIds.pop(), ['P19']],
    [
      'a count that is not so',
      (plan) => Object.assign(fillOf(plan, 'chops'), { filled: 3, shortfall: reason }),
      ['P19'],
    ],
    [
      'an ask that is not so',
      (plan) => Object.assign(fillOf(plan, 'chops'), { asked: 5, shortfall: reason }),
      ['P19'],
    ],
    [
      'short without a reason',
      (plan) => Object.assign(fillOf(plan, 'fillets'), { shortfall: null }),
      ['P19'],
    ],
    [
      'filled with a reason for being short',
      (plan) => Object.assign(fillOf(plan, 'chops'), { shortfall: reason }),
      ['P19'],
    ],
    [
      'a reason that blames a line of another day',
      (plan) => Object.assign(fillOf(plan, 'fillets').shortfall!, { withLines: ['ghost'] }),
      ['P19'],
    ],
    [
      'a reason that blames a share of another day',
      (plan) => Object.assign(fillOf(plan, 'fillets').shortfall!, { withShares: ['ghost'] }),
      ['P19'],
    ],
    [
      'loose meat for a line of pieces',
      (plan) => Object.assign(fillOf(plan, 'liver'), { bulkGrams: 5 }),
      ['P19', 'P20'],
    ],
    [
      'a piece for a line of loose meat',
      (plan) => give(plan, itemOf(plan, 'b-right', 'jowl'), { lineId: 'mince' }),
      ['P17', 'P19'],
    ],
  ])('%s', (_, change, rules) => expect(broken((plan) => void change(plan))).toEqual(rules));

  it('refuses more than is asked', () => {
    const lines = busyDay.lines.map((entry) =>
      entry.lineId === 'fillets' ? { ...entry, ask: { pieces: 1 } } : entry,
    );
    expect(rulesOf({ ...busyDay, lines }, busyPlan)).toEqual(['P19']);
    const plan = changed(busyPlan, (copy) =>
      Object.assign(fillOf(copy, 'fillets'), { asked: 1, shortfall: null }),
    );
    expect(checkPlan({ ...busyDay, lines }, plan)).toEqual([
      { rule: 'P19', at: 'lines[fillets]', says: 'gets 2 and asks for 1' },
    ]);
  });
});

describe('P20: loose meat is pooled and not sold twice', () => {
  const mince = (lineId: string, grams: number, wish: Partial<DemandLine> = {}): DemandLine =>
    line({ lineId, cut: 'ground-pork', portion: { by: 'bulk' }, ask: { grams }, ...wish });

  it('refuses a gram more than the sides without a share give', () => {
    const of = (grams: number) => day({ animals: twoHogs, lines: [mince('one', 5000), mince('two', grams)] });
    const trimMg = layPlan(of(1)).sides.reduce((sum, side) => sum + side.bulkMg['trim']!, 0);
    const rest = Math.floor(trimMg / 1000) - 5000;
    expect(rulesOf(of(rest), layPlan(of(rest), { bulkGrams: { one: 5000, two: rest } }))).toEqual([]);
    expect(rulesOf(of(rest + 1), layPlan(of(rest + 1), { bulkGrams: { one: 5000, two: rest + 1 } }))).toEqual(
      ['P20'],
    );
  });

  it('does not count the trim of a share', () => {
    const half = share({ shareId: 's', size: 'half' });
    const of = day({ animals: [twoHogs[0]!], lines: [mince('one', 5000)], shares: [half] });
    const trimMg = layPlan(of).sides[1]!.bulkMg['trim']!;
    expect(trimMg).toBeLessThan(5_000_000);
    expect(
      rulesOf(of, layPlan(of, { sides: { 'a-left': { shareId: 's' } }, bulkGrams: { one: 5000 } })),
    ).toEqual(['P20']);
  });

  it('does not take for one animal what another gives', () => {
    const of = day({
      animals: twoHogs,
      lines: [
        mince('one', 6000, { onlyAnimal: 'a' }),
        mince('two', 4000, { onlyAnimal: 'a', onlyHand: 'left' }),
      ],
    });
    const plan = (one: number, two: number) => layPlan(of, { bulkGrams: { one, two } });
    expect(rulesOf(of, plan(4000, 2000))).toEqual([]);
    expect(rulesOf(of, plan(6000, 2000))).toEqual(['P20']);
    expect(rulesOf(of, plan(2000, 4000))).toEqual(['P20']);
  });
});
