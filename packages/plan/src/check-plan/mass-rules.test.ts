import { describe, expect, it } from 'vitest';
import { checkPlan } from '../check-plan.ts';
import type { CuttingPlan } from '../cutting-plan.ts';
import type { CuttingDay } from '../day.ts';
import { busyDay, busyPlan, busyWish, changed, type Mutable, runOf, sideOf } from '../test-days/busy-day.ts';
import { layPlan } from '../test-days/lay-plan.ts';
import { animal, day } from '../test-days/test-day.ts';

const rulesOf = (of: CuttingDay, plan: CuttingPlan): string[] =>
  [...new Set(checkPlan(of, plan).map(({ rule }) => rule))].sort();

const broken = (change: (plan: Mutable<CuttingPlan>) => void): string[] =>
  rulesOf(busyDay, changed(busyPlan, change));

const oneHog = (wish: Partial<Parameters<typeof animal>[0]> = {}): CuttingDay =>
  day({ animals: [animal({ animalId: 'a', ...wish })] });

describe('P11, P12: items and singles', () => {
  it.each<[string, (plan: Mutable<CuttingPlan>) => void, string[]]>([
    [
      'an item listed twice',
      (plan) =>
        void sideOf(plan, 'b-right').items.push({
          ...sideOf(plan, 'b-right').items[0]!,
          pieceId: 'again',
          massMg: 0,
        }),
      ['P11'],
    ],
    [
      'an item from another part',
      (plan) => {
        sideOf(plan, 'b-right').items.find(({ item }) => item === 'coppa' || item === 'jowl')!.from = 'butt';
      },
      ['P11'],
    ],
    [
      'T-bone chops and the whole tenderloin from one side',
      (plan) =>
        void sideOf(plan, 'a-right').items.push({
          pieceId: 'extra',
          item: 'tenderloin',
          from: 'middle-open',
          massMg: 0,
          owner: null,
        }),
      ['P11'],
    ],
    [
      'an item that vanished, books in order',
      (plan) => {
        const side = sideOf(plan, 'b-right');
        const at = side.items.findIndex(({ item }) => item === 'spareribs');
        side.bulkMg['trim']! += side.items.splice(at, 1)[0]!.massMg;
      },
      ['P11', 'P14'],
    ],
    [
      'a head too many',
      (plan) =>
        void plan.singles.push({ ...plan.singles.find(({ item }) => item === 'head')!, pieceId: 'again' }),
      ['P12'],
    ],
    [
      'a head missing',
      (plan) =>
        void plan.singles.splice(
          plan.singles.findIndex(({ item }) => item === 'head'),
          1,
        ),
      ['P12'],
    ],
    [
      'a head of no animal of the day',
      (plan) => {
        plan.singles.find(({ item }) => item === 'head')!.animalId = 'c';
      },
      ['P12'],
    ],
    [
      'a head of another weight',
      (plan) => {
        plan.singles.find(({ item }) => item === 'head')!.massMg += 21;
      },
      ['P14'],
    ],
    [
      'one piece id for two pieces',
      (plan) => {
        plan.singles[0]!.pieceId = plan.singles[1]!.pieceId;
      },
      ['P16'],
    ],
  ])('%s', (_, change, rules) => expect(broken(change)).toEqual(rules));

  it('calls seven boned ribs bone, and eight back ribs (USDA IMPS 400 series, back ribs: at least 8)', () => {
    const of = oneHog();
    const boned = (ribs: number) =>
      layPlan(of, {
        sides: { 'a-left': { zones: { rib: ['bone-in', 9 - ribs, 'boned'], lumbar: 'boned' } } },
      });
    const items = (plan: CuttingPlan) => plan.sides[0]!.items.map(({ item }) => item);
    expect(items(boned(8))).toContain('back-ribs');
    expect(rulesOf(of, boned(8))).toEqual([]);
    expect(items(boned(7))).not.toContain('back-ribs');
    expect(rulesOf(of, boned(7))).toEqual([]);
    // The run is 12 stations long with the loin end, but 7 of them are ribs.
    const called = changed(boned(7), (plan) => {
      const side = sideOf(plan, 'a-left');
      side.items.push({ pieceId: 'ribs', item: 'back-ribs', from: 'loin-out', massMg: 500_000, owner: null });
      side.bulkMg['bone']! -= 500_000;
    });
    expect(rulesOf(of, called)).toEqual(['P11', 'P14']);
  });

  it('has no single piece that is lost or whose fact is missing', () => {
    const noOrgans = oneHog({ facts: ['skin-on', 'head', 'feet'], lostItems: ['tail'] });
    expect(layPlan(noOrgans).singles.map(({ item }) => item)).toEqual(['head']);
    expect(rulesOf(noOrgans, layPlan(noOrgans))).toEqual([]);
    // Its kidneys went with the organs, too.
    expect(rulesOf(noOrgans, layPlan(oneHog()))).toEqual(['P11', 'P12', 'P14']);
  });
});

describe('P13, P14, P25: the books of a side', () => {
  it.each<[string, (plan: Mutable<CuttingPlan>) => void, string[]]>([
    [
      'a milligram lost',
      (plan) => {
        sideOf(plan, 'a-left').bulkMg['trim']! -= 1;
      },
      ['P13'],
    ],
    [
      'a gram lost',
      (plan) => {
        sideOf(plan, 'a-left').bulkMg['trim']! -= 1000;
      },
      ['P13', 'P14'],
    ],
    [
      'bulk of a kind that is not there',
      (plan) => {
        sideOf(plan, 'a-left').bulkMg['trim']! -= 1000;
        sideOf(plan, 'a-left').bulkMg['feathers'] = 1000;
      },
      ['P14'],
    ],
    [
      'saw dust counted as trim',
      (plan) => {
        sideOf(plan, 'a-left').bulkMg['loss']! -= 30_000;
        sideOf(plan, 'a-left').bulkMg['trim']! += 30_000;
      },
      ['P14'],
    ],
    [
      'a chop that took weight from its neighbour',
      (plan) => {
        runOf(plan, 'a-left', 'rib-bone-in').pieces[1]!.massMg -= 500;
        runOf(plan, 'a-left', 'rib-bone-in').pieces[2]!.massMg += 500;
      },
      ['P14'],
    ],
    [
      'a free stretch lighter than its length',
      (plan) => {
        runOf(plan, 'a-left', 'rib-bone-in').freeMg -= 500;
        sideOf(plan, 'a-left').bulkMg['trim']! += 500;
      },
      ['P14'],
    ],
    [
      'leaf fat thrown in with the back fat',
      (plan) => {
        const { bulkMg } = sideOf(plan, 'a-left');
        bulkMg['back-fat']! += bulkMg['leaf-fat']!;
        delete bulkMg['leaf-fat'];
      },
      ['P14'],
    ],
    [
      'no time at all',
      (plan) => {
        sideOf(plan, 'a-left').minutes = 0;
      },
      ['P25'],
    ],
    [
      'time for more than was chosen',
      (plan) => {
        sideOf(plan, 'a-left').minutes = 500;
      },
      ['P25'],
    ],
  ])('%s', (_, change, rules) => expect(broken(change)).toEqual(rules));

  it('needs no wish of a test to add up: every side of the busy day does', () => {
    for (const side of layPlan(busyDay, busyWish).sides) {
      const runs = side.bars.flatMap((bar) => bar.runs);
      const spans = runs.flatMap((run) => [run.freeMg, ...run.pieces.map((piece) => piece.massMg)]);
      const all = [...side.items.map((item) => item.massMg), ...spans, ...Object.values(side.bulkMg)];
      expect(all.reduce((sum, massMg) => sum + massMg, 0)).toBe(side.massMg);
    }
  });
});
