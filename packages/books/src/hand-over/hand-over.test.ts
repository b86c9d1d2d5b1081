import { describe, expect, it } from 'vitest';
import { ageing, freeToSell } from './ageing.ts';
import { checkLeaving, checklist, type LineToGive, type PackToGive } from './checklist.ts';
import { depositAfterRelease, noShowSteps } from './no-show.ts';
import { addDays, daysBetween, localDateAt, spanOf, windowsFrom } from './windows.ts';

// Changes of the clocks: IANA time zone database, America/New_York 2026-03-08 and 2026-11-01.
const newYork = 'America/New_York';
const hoursOf = (window: { date: string; from: string; to: string }): number | null => {
  const span = spanOf(window, newYork);
  return span.ok ? (Date.parse(span.value.endsAt) - Date.parse(span.value.startsAt)) / 3_600_000 : null;
};

describe('a pick-up window', () => {
  it('is in the shop’s own clock, on the days that the clocks change too', () => {
    expect(spanOf({ date: '2026-11-26', from: '15:00', to: '18:30' }, newYork)).toEqual({
      ok: true,
      value: { startsAt: '2026-11-26T20:00:00Z', endsAt: '2026-11-26T23:30:00Z' },
    });
    expect(hoursOf({ date: '2026-03-08', from: '01:00', to: '04:00' })).toBe(2);
    expect(hoursOf({ date: '2026-11-01', from: '00:30', to: '03:30' })).toBe(4);
    // 01:30 comes twice that night: the window opens the first time and closes the last.
    expect(hoursOf({ date: '2026-11-01', from: '01:00', to: '01:30' })).toBe(1.5);
  });

  it.each([
    ['a time that the clocks skip', { date: '2026-03-08', from: '02:30', to: '04:00' }, 'from'],
    ['a day that does not exist', { date: '2026-02-30', from: '10:00', to: '11:00' }, 'date'],
    ['an end before its start', { date: '2026-03-09', from: '11:00', to: '10:00' }, 'to'],
    ['a time that is none', { date: '2026-03-09', from: '25:00', to: '26:00' }, 'from'],
  ])('refuses %s', (_, window, at) => {
    expect(spanOf(window, newYork)).toMatchObject({ ok: false, slips: [{ at }] });
  });

  it('comes from the shop’s week', () => {
    const weekly = [{ weekday: 4, from: '15:00', to: '18:00', most: 12 }];
    expect(
      windowsFrom(weekly, { date: '2026-11-23', days: 14, timeZone: newYork }).map(({ date }) => date),
    ).toEqual(['2026-11-26', '2026-12-03']);
    expect(localDateAt('2026-11-27T03:00:00Z', newYork)).toBe('2026-11-26');
    expect(daysBetween(addDays('2026-02-27', -1), '2026-03-01')).toBe(3);
  });
});

const line = (change: Partial<LineToGive> = {}): LineToGive => ({
  lineId: 'chops',
  asked: 4,
  filled: 4,
  unpacked: 0,
  readyOn: null,
  ...change,
});
const pack = (change: Partial<PackToGive> = {}): PackToGive => ({
  packId: 'p1',
  serial: 1,
  orderId: 'o',
  lineId: 'chops',
  holds: 4,
  isGone: false,
  ...change,
});
const state = (lines: LineToGive, packs: PackToGive[]) => checklist([lines], packs, '2026-11-26')[0]?.state;

describe('the checklist', () => {
  it('says line by line what is ready, what comes later, and what there is too little of', () => {
    expect(state(line({ unpacked: 1 }), [])).toBe('waiting');
    expect(state(line({ unpacked: 1 }), [pack({ holds: 2 })])).toBe('partly');
    // 970 g for a kilogram of mince: there is nothing else to come.
    expect(state(line({ asked: 1000, filled: 1000 }), [pack({ holds: 970, isGone: true })])).toBe('gone');
    expect(state(line(), [pack()])).toBe('ready');
    expect(state(line({ filled: 2 }), [pack({ holds: 2 })])).toBe('short');
    expect(state(line({ filled: 0 }), [])).toBe('short');
    expect(state(line(), [pack({ isGone: true })])).toBe('gone');
    expect(state(line({ readyOn: '2026-12-20', unpacked: 1 }), [])).toBe('later');
    expect(state(line({ readyOn: '2026-11-26' }), [pack()])).toBe('ready');
  });

  it('lets a part go and keeps the rest', () => {
    const packs = [pack({ holds: 2, isGone: true }), pack({ packId: 'p2', serial: 2, holds: 2 })];
    expect(checklist([line()], packs, '2026-11-26')[0]).toMatchObject({
      packed: 4,
      given: 2,
      state: 'ready',
    });
  });

  it.each([
    ['a pack of another shop', ['elsewhere'], 'not a pack of this shop'],
    ['one scanned twice', ['p1', 'p1'], 'scanned twice'],
    ['one of another order', ['p3'], 'for another order'],
    ['one of the counter', ['p4'], 'for the counter'],
    ['one that is gone', ['p5'], 'handed over already'],
  ])('stops %s', (_, packIds, says) => {
    const known = [
      pack(),
      pack({ packId: 'p3', orderId: 'x' }),
      pack({ packId: 'p4', orderId: null }),
      pack({ packId: 'p5', isGone: true }),
    ];
    const leaving = checkLeaving('o', packIds, known);
    expect(JSON.stringify(leaving)).toContain(says);
    expect(leaving.ok).toBe(false);
  });
});

describe('when nobody comes', () => {
  const policy = { remindAfterHours: 2, freezeAfterDays: 2, releaseAfterDays: 10, keepDepositPpm: 500_000 };
  const missed = { endsAt: '2026-10-31T22:00:00Z', timeZone: newYork, done: [] };

  it('steps fall due in order, by days of the calendar', () => {
    const steps = noShowSteps(policy, { ...missed, now: '2026-11-02T22:59:00Z' });
    // Two days on, at the same time of the clock: 49 hours, for the clocks went back between.
    expect(steps).toMatchObject([
      { step: 'remind', isDue: true },
      { step: 'freeze', dueAt: '2026-11-02T23:00:00Z', isDue: false },
      { step: 'release', isDue: false },
    ]);
    expect(
      noShowSteps(policy, { ...missed, now: '2026-11-20T00:00:00Z', done: ['remind', 'freeze'] }),
    ).toMatchObject([{ step: 'release', isDue: true }]);
  });

  it('the deposit is split to the cent', () => {
    expect(depositAfterRelease(policy, 2501)).toEqual({ keepMinor: 1251, backMinor: 1250 });
  });
});

it('what waits for somebody is never free, however old', () => {
  const packs = [
    { packId: 'a', orderId: null, packedOn: '2026-11-20' },
    { packId: 'b', orderId: 'o', packedOn: '2026-11-01' },
  ];
  expect(ageing(packs, '2026-11-26', 7)).toMatchObject([
    { packId: 'b', days: 25, isOld: true },
    { packId: 'a', days: 6, isOld: false },
  ]);
  expect(freeToSell(packs).map(({ packId }) => packId)).toEqual(['a']);
});
