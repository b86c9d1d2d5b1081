import { umPerInch } from '@flitchbook/carcass';
import { describe, expect, it } from 'vitest';
import {
  type CureCalendar,
  cureBy,
  cureCalendar,
  daysForThickness,
  freshPorkKeepsDays,
  usualCalendarRules,
} from './cure-calendar.ts';
import { curedWeight, greenWeightFor, isBaconHeavy, usualCureChains } from './cured-weight.ts';

const rule = (id: string) => usualCalendarRules.find((entry) => entry.id === id)!;
const chain = (id: string) => usualCureChains.find((entry) => entry.id === id)!;
const calendar = (id: string, start: string, inches: number) =>
  cureCalendar(rule(id), start, inches * umPerInch) as CureCalendar;

describe('the calendar of a cure', () => {
  it('T30: a card for 8 in says 40 days, so 6 in takes 22.5 (square of thickness: common practice, no source)', () => {
    const days = daysForThickness(40, 8 * umPerInch, 6 * umPerInch);
    expect(Number(days.over) / Number(days.under)).toBe(22.5);
  });

  it('gives a slab 7 days an inch (common practice, no source), across the end of a year', () => {
    expect(calendar('dry-slab', '2026-12-28', 1.5).earliestReady).toBe('2027-01-08');
  });

  it('gives a country ham 45 days and 70 in all, a shoulder 25 and 50: 9 CFR 319.106', () => {
    expect(calendar('country-ham', '2027-01-01', 6).stages.map(({ until }) => until)).toEqual([
      '2027-02-15',
      '2027-03-12',
    ]);
    expect(calendar('country-shoulder', '2027-01-01', 6).stages.map(({ days }) => days)).toEqual([25, 25]);
  });

  it('never says safe, and a ham that is eaten raw says what that needs', () => {
    const ham = calendar('country-ham', '2027-01-01', 6);
    expect(JSON.stringify(ham)).not.toMatch(/\bsafe\b/i);
    expect(ham.cautions.map(({ id }) => id)).toEqual(['cure-calendar', 'ready-to-eat']);
  });

  it.each([
    ['2027-02-29', 25_400, 'start'],
    ['tomorrow', 25_400, 'start'],
    ['2027-02-28', 0, 'thicknessUm'],
    ['2027-02-28', Number.NaN, 'thicknessUm'],
    ['2027-02-28', 2_000_000, 'thicknessUm'],
  ])('refuses %s and %d', (start, thickness, at) => {
    expect(cureCalendar(rule('dry-slab'), start, thickness)).toMatchObject({ faults: [{ at }] });
  });

  it('case 43: a fresh slab goes home with the day by which it must be in its cure', () => {
    // Slaughtered on a Thursday, taken home on Tuesday, still uncured on Friday, eight days on: too late by three.
    const { date, says } = cureBy('2026-11-26', freshPorkKeepsDays);
    expect(date).toBe('2026-12-01');
    expect(says).toMatch(/by 2026-12-01/);
  });
});

describe('24: the weight of a cure, University of California 1918', () => {
  it.each([
    ['belly-pickled-smoked', 95.04, 95.04],
    ['belly-dry-smoked', 89.18, 90.16],
    ['ham-pickled-smoked', 95.4, 95.4],
  ])('%s', (id, least, most) => {
    const { leastMg, mostMg } = curedWeight(chain(id), 100_000);
    expect([leastMg / 1000, mostMg / 1000]).toEqual([least, most]);
  });

  it('raw bacon is at most its green weight: 9 CFR 319.107, as quoted', () => {
    expect(isBaconHeavy(100_000, 100_000)).toBe(false);
    expect(isBaconHeavy(100_000, 100_001)).toBe(true);
  });

  it('finds the green weight that a cured weight takes', () => {
    const green = greenWeightFor(chain('belly-dry-smoked'), 1_000_000);
    expect(curedWeight(chain('belly-dry-smoked'), green).leastMg).toBeGreaterThanOrEqual(1_000_000);
    expect(curedWeight(chain('belly-dry-smoked'), green - 2).leastMg).toBeLessThan(1_000_000);
  });
});
