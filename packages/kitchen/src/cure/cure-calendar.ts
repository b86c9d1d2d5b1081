import { type Ratio, ratio, times, umPerInch } from '@flitchbook/carcass';
import { type Caution, cautions } from '../cautions.ts';
import { addDays, isDate } from '../dates.ts';
import { FaultList, type KitchenFault } from '../faults.ts';
import type { Standing } from './cure-rules.ts';

/** How long a stage lasts at least: a number of days, or days for each inch of thickness and some to spare. */
export type Duration =
  | { readonly days: number }
  | { readonly daysPerInch: number; readonly spareDays: number; readonly leastDays: number };

export interface CalendarRule {
  readonly id: string;
  readonly name: string;
  readonly stages: readonly { readonly what: string; readonly lasts: Duration }[];
  readonly source: string;
  readonly standing: Standing | 'practice';
  /** eaten without cooking */
  readonly readyToEat?: boolean;
}

const practice = 'Common practice, no published source';
const country = '9 CFR 319.106';
const days = (count: number): Duration => ({ days: count });
const perInch = (daysPerInch: number, spareDays = 0, leastDays = 0): Duration => ({
  daysPerInch,
  spareDays,
  leastDays,
});

/** Where a shop starts; it keeps its own. */
export const usualCalendarRules: readonly CalendarRule[] = [
  {
    id: 'dry-slab',
    name: 'Slab in dry cure',
    stages: [{ what: 'cure', lasts: perInch(7) }],
    source: practice,
    standing: 'practice',
  },
  {
    id: 'equilibrium-bag',
    name: 'Slab in a bag with its measured cure',
    stages: [{ what: 'cure', lasts: perInch(2, 4) }],
    source: `${practice}; half an inch a day was seen as hobby advice (2018)`,
    standing: 'practice',
  },
  {
    id: 'pumped-ham',
    name: 'Pumped ham, bone in',
    stages: [{ what: 'cure', lasts: perInch(1, 0, 3) }],
    source: 'Ham card of a spice seller: a day for each inch to the bone, 3 to 7 days',
    standing: 'second-hand',
  },
  {
    id: 'country-ham',
    name: 'Country ham',
    stages: [
      { what: 'cure and equalise', lasts: days(45) },
      { what: 'dry', lasts: days(25) },
    ],
    source: `${country}: 45 days of cure and equalising, 70 in all`,
    standing: 'quoted',
    readyToEat: true,
  },
  {
    id: 'country-shoulder',
    name: 'Country shoulder',
    stages: [
      { what: 'cure and equalise', lasts: days(25) },
      { what: 'dry', lasts: days(25) },
    ],
    source: `${country}: 25 days of cure and equalising, 50 in all`,
    standing: 'quoted',
    readyToEat: true,
  },
];

export interface CureStage {
  readonly what: string;
  readonly from: string;
  /** the first day on which it may be over */
  readonly until: string;
  readonly days: number;
}

export interface CureCalendar {
  readonly stages: readonly CureStage[];
  /** the first day to look, never a day on which it is known to be done */
  readonly earliestReady: string;
  readonly source: string;
  readonly standing: CalendarRule['standing'];
  readonly cautions: readonly Caution[];
}

/** Whole days, the last one begun counts. */
const wholeDays = ({ over, under }: Ratio): number => Number((over + under - 1n) / under);

function daysOf(lasts: Duration, thicknessUm: number): number {
  if ('days' in lasts) return lasts.days;
  const cured = wholeDays(ratio(lasts.daysPerInch * thicknessUm, umPerInch));
  return Math.max(lasts.leastDays, cured) + lasts.spareDays;
}

/** The stages of a cure from the day it goes in. Thickness in micrometres, at the thickest place. */
export function cureCalendar(
  rule: CalendarRule,
  start: string,
  thicknessUm: number,
): CureCalendar | { readonly faults: readonly KitchenFault[] } {
  const list = new FaultList();
  list.need(isDate(start), 'start', start, 'must be a day that exists, as yyyy-mm-dd');
  list.whole('thicknessUm', thicknessUm, 1_000, 600_000);
  if (list.faults.length > 0) return { faults: list.faults };
  const stages: CureStage[] = [];
  let from = start;
  for (const { what, lasts } of rule.stages) {
    const count = daysOf(lasts, thicknessUm);
    const until = addDays(from, count);
    stages.push({ what, from, until, days: count });
    from = until;
  }
  return {
    stages,
    earliestReady: from,
    source: rule.source,
    standing: rule.standing,
    cautions: rule.readyToEat ? [cautions.cureCalendar, cautions.readyToEat] : [cautions.cureCalendar],
  };
}

/**
 * Time for another thickness than the card's: it grows with the square (common practice, no source).
 * @returns exact days
 */
export function daysForThickness(cardDays: number, cardUm: number, thicknessUm: number): Ratio {
  return times(ratio(cardDays), ratio(BigInt(thicknessUm) ** 2n, BigInt(cardUm) ** 2n));
}

/**
 * The day by which a fresh slab that goes home should be in its cure or its freezer, counted from slaughter. The number
 * of days is the shop's setting; the usual one is the home storage chart's 3 to 5 days for fresh pork.
 */
export function cureBy(
  slaughtered: string,
  keepsDays: number,
): { readonly date: string; readonly says: string } {
  const date = addDays(slaughtered, keepsDays);
  return { date, says: `Cure it, cook it or freeze it by ${date}.` };
}

/** FoodSafety.gov cold storage chart: fresh pork keeps 3 to 5 days in a refrigerator. */
export const freshPorkKeepsDays = 5;
