import { describe, expect, it } from 'vitest';
import { comparePlans } from './compare-plans.ts';
import { busyDay, busyPlan, busyWish } from './test-days/busy-day.ts';
import { layPlan, type PlanWish } from './test-days/lay-plan.ts';

const withSide = (sideId: string, wish: NonNullable<PlanWish['sides']>[string]) =>
  layPlan(busyDay, {
    ...busyWish,
    sides: { ...busyWish.sides, [sideId]: { ...busyWish.sides?.[sideId], ...wish } },
  });

const says = (before = busyPlan, after = busyPlan): string[] =>
  comparePlans(busyDay, before, after).map((difference) => difference.says);

describe('differences between plans', () => {
  it('are none between a plan and itself', () => expect(says()).toEqual([]));

  it('say who loses and what changed where', () => {
    const left = withSide('a-right', {
      operations: { 'middle-open': 'pull-tenderloin', ham: 'ham-centre' },
      pieces: [],
      items: { tenderloin: { lineId: 'fillets' } },
    });
    const differences = comparePlans(busyDay, busyPlan, left);
    expect(
      differences
        .filter(({ kind }) => kind === 'line')
        .map((difference) => [difference.id, difference.before, difference.after, difference.says]),
    ).toEqual([
      ['fillets', 2, 3, 'Customer fillets gains 1: Tenderloin, whole (3 instead of 2).'],
      ['t-bones', 2, 0, 'Customer t-bones loses 2: T-bone chop, 1 in (25.4 mm) (0 instead of 2).'],
      ['back-ribs', 1, 0, 'Customer back-ribs loses 1: Back ribs, whole (0 instead of 1).'],
      [
        'roast',
        1,
        0,
        'Customer roast loses 1: Boneless loin roast, 0.90 to 1.40 kg (1.98 to 3.09 lb) (0 instead of 1).',
      ],
      ['belly', 1, 0, 'Customer belly loses 1: Belly roast, ribs in, 2 ribs (0 instead of 1).'],
    ]);
    expect(
      differences.filter(({ kind }) => kind === 'operation').map((difference) => difference.says),
    ).toEqual([
      'Animal a, right side: Middle, cavity cleared is pull-tenderloin instead of leave-tenderloin.',
      'Animal a, right side: Middle, tenderloin in is no longer made (it was standard-line).',
      'Animal a, right side: Middle, tenderloin out is new: standard-line.',
    ]);
  });

  it('say how a zone is cut otherwise, and what that does to the trim', () => {
    const parted = withSide('b-right', { zones: { rib: 'bone-in', lumbar: 'boned' } });
    expect(
      comparePlans(busyDay, busyPlan, parted).map(({ kind, sideId, id, before, after }) => [
        kind,
        sideId,
        id,
        before,
        after,
      ]),
    ).toEqual([
      ['manner', 'b-right', 'loin-out/rib', 'bone-in 0 to 5, boned 5 to 10', 'bone-in'],
      ['bulk', null, 'hog/trim', expect.any(Number), expect.any(Number)],
      ['bulk', null, 'hog/fat-trim', expect.any(Number), expect.any(Number)],
      ['bulk', null, 'hog/bone', expect.any(Number), expect.any(Number)],
    ]);
    expect(says(busyPlan, parted).at(-1)).toMatch(/^Bone: \d\.\d\d kg \(\d\.\d\d lb\) less \(/);
  });

  it('say who has another side', () => {
    const without = withSide('b-left', { shareId: undefined as never });
    expect(says(busyPlan, without)).toContain('Customer half loses b-left.');
    expect(says(without, busyPlan)).toContain('Customer half gains b-left.');
  });

  it('turn round when the plans do', () => {
    const other = withSide('a-right', { pieces: [] });
    const forth = comparePlans(busyDay, busyPlan, other);
    const back = comparePlans(busyDay, other, busyPlan);
    expect(back.map(({ kind, id, before, after }) => [kind, id, after, before])).toEqual(
      forth.map(({ kind, id, before, after }) => [kind, id, before, after]),
    );
  });
});
