import type { SlaughterFact } from '@flitchbook/carcass';
import { describe, expect, it } from 'vitest';
import { checkPlan } from '../check-plan.ts';
import type { CuttingPlan } from '../cutting-plan.ts';
import type { CuttingDay } from '../day.ts';
import { busyDay, busyPlan, changed, type Mutable, runOf, sideOf } from '../test-days/busy-day.ts';
import { layPlan } from '../test-days/lay-plan.ts';
import { animal, day } from '../test-days/test-day.ts';

const rulesOf = (of: CuttingDay, plan: CuttingPlan): string[] =>
  [...new Set(checkPlan(of, plan).map(({ rule }) => rule))].sort();

const broken = (change: (plan: Mutable<CuttingPlan>) => void): string[] =>
  rulesOf(busyDay, changed(busyPlan, change));

const oneHog = (wish: Partial<Parameters<typeof animal>[0]> = {}): CuttingDay =>
  day({ animals: [animal({ animalId: 'a', ...wish })] });

it('finds nothing wrong with a busy day that keeps the rules', () => {
  expect(checkPlan(busyDay, busyPlan)).toEqual([]);
});

describe('P1: a plan for its day', () => {
  it.each<[string, (plan: Mutable<CuttingPlan>) => void, string[]]>([
    ['another day', (plan) => void Object.assign(plan, { dayId: 'day-2' }), ['P1']],
    ['a side left out', (plan) => void plan.sides.splice(3, 1), ['P1', 'P19']],
    [
      'a side planned twice',
      (plan) => void plan.sides.push(structuredClone(plan.sides[1]!)),
      ['P1', 'P16', 'P19'],
    ],
    [
      'a side of no animal',
      (plan) => void Object.assign(sideOf(plan, 'b-right'), { sideId: 'c-right' }),
      ['P1'],
    ],
    [
      'a side given to another animal',
      (plan) => void Object.assign(sideOf(plan, 'b-right'), { animalId: 'a' }),
      ['P1'],
    ],
    [
      'a side heavier than it was weighed, books in order',
      (plan) => {
        sideOf(plan, 'b-right').massMg += 5;
        sideOf(plan, 'b-right').bulkMg['trim']! += 5;
      },
      ['P1'],
    ],
  ])('%s', (_, change, rules) => expect(broken(change)).toEqual(rules));
});

describe('P2, P3, P4: operations', () => {
  it.each<[string, (plan: Mutable<CuttingPlan>) => void, string[]]>([
    ['a butt with no operation', (plan) => void delete sideOf(plan, 'a-left').operations['butt'], ['P2']],
    [
      'an operation of another part',
      (plan) => void Object.assign(sideOf(plan, 'a-left').operations, { butt: 'ham-whole' }),
      ['P2'],
    ],
    [
      'an operation named like a built-in',
      (plan) => void Object.assign(sideOf(plan, 'a-left').operations, { butt: 'constructor' }),
      ['P2'],
    ],
    [
      'the middle parted with the tenderloin in and out',
      (plan) =>
        void Object.assign(sideOf(plan, 'a-left').operations, { 'middle-fillet-in': 'standard-line' }),
      ['P2'],
    ],
  ])('%s', (_, change, rules) => expect(broken(change)).toEqual(rules));

  it('refuses a porchetta from a side without its skin', () => {
    const skinned: readonly SlaughterFact[] = ['head', 'feet', 'organs'];
    const plan = layPlan(oneHog(), {
      sides: { 'a-left': { operations: { 'middle-fillet-out': 'porchetta-whole' } } },
    });
    expect(rulesOf(oneHog(), plan)).toEqual([]);
    // There is no skin of the shoulder either.
    expect(rulesOf(oneHog({ facts: skinned }), plan)).toEqual(['P14', 'P3']);
  });

  it('refuses to cut a lost leg, and takes it set aside whole', () => {
    const lostLeg = oneHog({ lostParts: ['leg'] });
    expect(rulesOf(lostLeg, layPlan(lostLeg))).toEqual([]);
    expect(layPlan(lostLeg).sides[0]?.bulkMg['lost']).toBeGreaterThan(9_000_000);
    expect(rulesOf(lostLeg, layPlan(oneHog()))).toEqual(['P11', 'P14', 'P2', 'P25', 'P4']);
  });

  it('refuses to cut a lost bar', () => {
    const lostSlab = oneHog({ lostParts: ['belly-slab'] });
    expect(rulesOf(lostSlab, layPlan(lostSlab))).toEqual([]);
    expect(rulesOf(lostSlab, layPlan(oneHog()))).toContain('P4');
  });
});

describe('P5, P6, P7: bars, zones, runs', () => {
  const loin = (plan: Mutable<CuttingPlan>, sideId: string) =>
    sideOf(plan, sideId).bars.find(({ bar }) => bar.startsWith('loin'))!;
  it.each<[string, (plan: Mutable<CuttingPlan>) => void, string[]]>([
    ['a bar that is not cut', (plan) => void sideOf(plan, 'b-right').bars.pop(), ['P13', 'P5']],
    [
      'a bar cut twice',
      (plan) => void sideOf(plan, 'b-right').bars.push(structuredClone(sideOf(plan, 'b-right').bars[0]!)),
      ['P13', 'P5'],
    ],
    [
      'a bar of another operation',
      (plan) => {
        sideOf(plan, 'a-left').bars[0]!.bar = 'ham-centre';
      },
      ['P5'],
    ],
    ['a zone left out', (plan) => void loin(plan, 'b-right').runs.shift(), ['P13', 'P6']],
    [
      'a zone that is not there',
      (plan) => {
        loin(plan, 'b-right').runs[0]!.stretches[0]!.zone = 'neck';
      },
      ['P6'],
    ],
    [
      'an unknown manner',
      (plan) => {
        loin(plan, 'b-right').runs[0]!.stretches[0]!.manner = 'torn';
      },
      ['P6'],
    ],
    [
      'a station skipped',
      (plan) => {
        runOf(plan, 'b-right', 'loin-boned').stretches[0]!.fromStation = 6;
      },
      ['P6'],
    ],
    [
      'a station cut twice',
      (plan) => {
        runOf(plan, 'b-right', 'loin-boned').stretches[0]!.fromStation = 4;
      },
      ['P6'],
    ],
    [
      'a station too many',
      (plan) => {
        runOf(plan, 'b-right', 'loin-boned').stretches[0]!.toStation += 1;
      },
      ['P6'],
    ],
    ['stretches out of order', (plan) => void loin(plan, 'b-right').runs.reverse(), ['P6']],
    [
      'a zone parted in three',
      (plan) => {
        const run = runOf(plan, 'a-right', 'loin-boned');
        run.stretches.splice(
          0,
          1,
          { zone: 'rib', manner: 'boned', fromStation: 0, toStation: 3 },
          { zone: 'rib', manner: 'bone-in', fromStation: 3, toStation: 6 },
          { zone: 'rib', manner: 'boned', fromStation: 6, toStation: 9 },
        );
      },
      ['P6', 'P7'],
    ],
    [
      'a zone parted that may not be',
      (plan) => {
        const [first] = loin(plan, 'b-right').runs[0]!.stretches;
        loin(plan, 'b-right').runs[0]!.stretches.splice(
          0,
          1,
          { ...first!, toStation: 2 },
          { ...first!, manner: 'boned', fromStation: 2 },
        );
      },
      ['P6', 'P7'],
    ],
    [
      'a run in another stock',
      (plan) => {
        loin(plan, 'b-right').runs[0]!.stock = 'country-ribs';
      },
      ['P7'],
    ],
    [
      'a boned muscle as long as it was on the bone',
      (plan) => {
        runOf(plan, 'b-right', 'loin-boned').usableUm += 50;
      },
      ['P7'],
    ],
    [
      'a run in another place',
      (plan) => {
        runOf(plan, 'b-right', 'loin-boned').fromUm += 50;
      },
      ['P7'],
    ],
    [
      'one boned muscle counted as two runs',
      (plan) => {
        const run = runOf(plan, 'b-left', 'loin-boned');
        const rest = {
          ...structuredClone(run),
          stretches: run.stretches.splice(1),
          pieces: [],
          freeUm: 0,
          freeMg: 0,
        };
        loin(plan, 'b-left').runs.splice(2, 0, rest);
      },
      ['P7'],
    ],
  ])('%s', (_, change, rules) => expect(broken(change)).toEqual(rules));

  it('refuses a boned muscle that stands in two places of the bar', () => {
    const of = oneHog();
    const zones = (rib: 'bone-in' | readonly [string, number, string], lumbar: string) =>
      layPlan(of, { sides: { 'a-left': { zones: { rib, lumbar } } } });
    const ribsBoned = zones(['boned', 4, 'bone-in'], 'bone-in');
    const plan = changed(ribsBoned, (copy) => {
      const donor = structuredClone(zones('bone-in', 'boned')) as Mutable<CuttingPlan>;
      loin(copy, 'a-left').runs.splice(3, 1, runOf(donor, 'a-left', 'loin-boned'));
    });
    expect(rulesOf(of, plan)).toContain('P7');
  });
});
