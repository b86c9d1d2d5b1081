import { describe, expect, it } from 'vitest';
import { checkPlan } from '../check-plan.ts';
import type { CuttingPlan } from '../cutting-plan.ts';
import type { CuttingDay } from '../day.ts';
import { busyDay, busyPlan, changed, inch, type Mutable, runOf } from '../test-days/busy-day.ts';
import { layPlan } from '../test-days/lay-plan.ts';
import { animal, day } from '../test-days/test-day.ts';

const rulesOf = (of: CuttingDay, plan: CuttingPlan): string[] =>
  [...new Set(checkPlan(of, plan).map(({ rule }) => rule))].sort();

const broken = (change: (plan: Mutable<CuttingPlan>) => void): string[] =>
  rulesOf(busyDay, changed(busyPlan, change));

describe('P8, P9, P10, P15: pieces', () => {
  const chop = (plan: Mutable<CuttingPlan>, index: number) =>
    runOf(plan, 'a-left', 'rib-bone-in').pieces[index]!;
  const move = (piece: { fromUm: number; toUm: number }, byUm: number): void => {
    piece.fromUm += byUm;
    piece.toUm += byUm;
  };
  it.each<[string, (plan: Mutable<CuttingPlan>) => void, string[]]>([
    ['two chops that overlap', (plan) => move(chop(plan, 2), -50), ['P8']],
    ['the kerf forgotten', (plan) => move(chop(plan, 2), -2000), ['P8']],
    ['a gap that nobody has', (plan) => move(chop(plan, 4), 50), ['P8']],
    ['a piece over the end of its run', (plan) => move(chop(plan, 4), 200_000), ['P8']],
    ['a piece before its run', (plan) => move(chop(plan, 0), -50_000), ['P8', 'P9']],
    [
      'a piece of no length',
      (plan) => {
        chop(plan, 4).toUm = chop(plan, 4).fromUm;
      },
      ['P14', 'P15', 'P8', 'P9'],
    ],
    ['pieces out of order', (plan) => void runOf(plan, 'a-left', 'rib-bone-in').pieces.reverse(), ['P8']],
    [
      'a chop thinner than ordered',
      (plan) => {
        chop(plan, 4).toUm -= 50;
      },
      ['P14', 'P15', 'P9'],
    ],
    [
      'a rack that starts between two bones',
      (plan) => {
        const run = runOf(plan, 'a-left', 'rib-bone-in');
        const [rack, first] = run.pieces;
        const widthUm = inch + 2000;
        Object.assign(first!, { fromUm: run.fromUm, toUm: run.fromUm + inch });
        move(rack!, widthUm);
        run.pieces.splice(0, 2, first!, rack!);
      },
      ['P9'],
    ],
    [
      'a rack of three called four',
      (plan) => {
        chop(plan, 0).portion = { by: 'ribs', ribs: 4 };
      },
      ['P17', 'P9'],
    ],
    [
      'a roast under its weight',
      (plan) => {
        runOf(plan, 'a-right', 'loin-boned').pieces[0]!.massMg = 899_997;
      },
      ['P13', 'P9'],
    ],
    [
      'ribs counted in a boned loin',
      (plan) => {
        runOf(plan, 'a-right', 'loin-boned').pieces[0]!.portion = { by: 'ribs', ribs: 2 };
      },
      ['P10', 'P17', 'P9'],
    ],
    [
      'a length of loin sold as a whole item',
      (plan) => {
        runOf(plan, 'a-right', 'loin-boned').pieces[0]!.portion = { by: 'whole' };
      },
      ['P10', 'P17', 'P9'],
    ],
    [
      'a cut from the wrong zone',
      (plan) => {
        runOf(plan, 'a-right', 'lumbar-with-fillet').pieces[0]!.cut = 'rib-chop';
      },
      ['P10', 'P17'],
    ],
    [
      'a cut that nobody knows',
      (plan) => {
        runOf(plan, 'a-right', 'ham-centre').pieces[0]!.cut = 'toString';
      },
      ['P10'],
    ],
    [
      'a steak thinner than the cut may be',
      (plan) => {
        runOf(plan, 'a-right', 'ham-centre').pieces[0]!.portion = { by: 'thickness', um: 9000 };
      },
      ['P10', 'P9'],
    ],
    [
      'free length that the pieces took',
      (plan) => {
        runOf(plan, 'a-left', 'rib-bone-in').freeUm += 2000;
      },
      ['P15'],
    ],
  ])('%s', (_, change, rules) => expect(broken(change)).toEqual(rules));

  it('refuses bone-in slices where there is no saw, and takes ribs counted whole', () => {
    const bySaw = day({ animals: [animal({ animalId: 'a' })], tools: { saw: true, kerfUm: 0 } });
    const byKnife = { ...bySaw, tools: { saw: false, kerfUm: 0 } };
    const cutIn = (portion: { by: 'ribs'; ribs: number } | { by: 'thickness'; um: number }) =>
      layPlan(bySaw, {
        sides: { 'a-left': { pieces: [{ stock: 'rib-bone-in', cut: 'rib-chop', portion }] } },
      });
    expect(rulesOf(byKnife, cutIn({ by: 'ribs', ribs: 1 }))).toEqual([]);
    expect(rulesOf(byKnife, cutIn({ by: 'thickness', um: inch }))).toEqual(['P9']);
  });
});
