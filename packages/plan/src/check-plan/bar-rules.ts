import type { Bar } from '@flitchbook/carcass';
import type { BarPlan, RunPlan, RunStretchPlan, SidePlan } from '../cutting-plan.ts';
import type { DaySide } from './day-index.ts';
import {
  type MeasuredRun,
  type MeasuredStretch,
  type MeasuredZone,
  measureBar,
  measureRuns,
} from './measure-bar.ts';
import type { Note } from './plan-rules.ts';
import type { Expected } from './walk-operations.ts';

/** A run of the plan beside the run that the species data gives for its stretches. */
export interface PairedRun {
  readonly bar: string;
  readonly at: string;
  readonly planned: RunPlan;
  readonly measured: MeasuredRun;
}

interface ZoneCheck {
  readonly measured: MeasuredZone;
  readonly at: string;
  readonly note: Note;
}

function measureStretch(
  check: ZoneCheck,
  stretch: RunStretchPlan,
  nextStation: number,
): MeasuredStretch | undefined {
  const { measured, at, note } = check;
  const { fromStation, toStation } = stretch;
  const manner = measured.zone.manners.find((candidate) => candidate.id === stretch.manner);
  if (!manner) note('P6', at, `zone ${measured.zone.id} can't be cut in the manner "${stretch.manner}"`);
  const fits = fromStation === nextStation && toStation > fromStation && toStation <= measured.stations;
  if (!fits)
    note(
      'P6',
      at,
      `zone ${measured.zone.id}: stations ${fromStation} to ${toStation} do not follow on ${nextStation} within ${measured.stations}`,
    );
  return manner && fits ? { measured, manner, fromStation, toStation } : undefined;
}

/** @returns undefined when the stretches do not cover the zone as they must */
function coverZone(check: ZoneCheck, stretches: readonly RunStretchPlan[]): MeasuredStretch[] | undefined {
  const { measured, at, note } = check;
  const { zone, stations } = measured;
  const most = zone.maySplit ? 2 : 1;
  if (stretches.length > most)
    note('P6', at, `zone ${zone.id} is cut in ${stretches.length} stretches, at most ${most} may be`);
  if (new Set(stretches.map(({ manner }) => manner)).size < stretches.length)
    note('P6', at, `zone ${zone.id} is parted between two stretches of one manner`);
  const covered: MeasuredStretch[] = [];
  let nextStation = 0;
  for (const stretch of stretches) {
    const known = measureStretch(check, stretch, nextStation);
    if (!known) return undefined;
    covered.push(known);
    nextStation = known.toStation;
  }
  if (nextStation === stations) return covered;
  note('P6', at, `zone ${zone.id} is cut up to station ${nextStation} of ${stations}`);
  return undefined;
}

function coverBar(
  zones: readonly MeasuredZone[],
  plan: BarPlan,
  at: string,
  note: Note,
): MeasuredStretch[] | undefined {
  const stretches = plan.runs.flatMap((run) => run.stretches);
  const order = stretches.map(({ zone }) => zones.findIndex((measured) => measured.zone.id === zone));
  if (order.includes(-1)) {
    note('P6', at, `zone "${stretches[order.indexOf(-1)]?.zone}" is not on this bar`);
    return undefined;
  }
  if (order.some((zone, index) => index > 0 && zone < (order[index - 1] as number))) {
    note('P6', at, 'stretches stand out of order: they run from the head end');
    return undefined;
  }
  const covers = zones.map((measured) =>
    coverZone(
      { measured, at, note },
      stretches.filter(({ zone }) => zone === measured.zone.id),
    ),
  );
  return covers.some((cover) => cover === undefined) ? undefined : covers.flatMap((cover) => cover ?? []);
}

const placeOf = (run: RunPlan | MeasuredRun): string =>
  `${run.stock} from ${run.fromUm} to ${run.toUm}, ${run.usableUm} um usable`;

function pairRuns(plan: BarPlan, runs: readonly MeasuredRun[], at: string, note: Note): PairedRun[] {
  const joining = runs.filter((run) => run.joins).map((run) => run.stock);
  const twice = joining.find((stock, index) => joining.indexOf(stock) !== index);
  if (twice) note('P7', at, `${twice} leaves in one piece and can't stand in two places of the bar`);
  if (plan.runs.length !== runs.length) {
    note('P7', at, `has ${plan.runs.length} runs, its stretches make ${runs.length}`);
    return [];
  }
  return plan.runs.flatMap((planned, index) => {
    const measured = runs[index] as MeasuredRun;
    const place = `${at}.runs[${index}]`;
    if (planned.stretches.length === measured.stretches.length && placeOf(planned) === placeOf(measured))
      return [{ bar: plan.bar, at: place, planned, measured }];
    note('P7', place, `is ${placeOf(planned)}; its stretches make ${placeOf(measured)}`);
    return [];
  });
}

function barsOf(planned: SidePlan, expected: Expected, at: string, note: Note): ReadonlyMap<string, BarPlan> {
  const found = new Map<string, BarPlan>();
  for (const bar of planned.bars) {
    const place = `${at}.bars[${bar.bar}]`;
    if (expected.lostParts.has(bar.bar)) note('P4', place, 'is lost and is cut all the same');
    else if (!expected.bars.has(bar.bar)) note('P5', place, 'is cut, but the operations do not give it');
    else if (found.has(bar.bar)) note('P5', place, 'is cut twice');
    else found.set(bar.bar, bar);
  }
  return found;
}

/** Pairs each run of a side with what it must be. Runs that can't be paired are faults and are left out. */
export function checkBars(
  planned: SidePlan,
  known: DaySide,
  expected: Expected,
  at: string,
  note: Note,
): PairedRun[] {
  const found = barsOf(planned, expected, at, note);
  return [...expected.bars].flatMap(([barId, massMg]) => {
    const place = `${at}.bars[${barId}]`;
    const plan = found.get(barId);
    if (!plan) {
      note('P5', place, 'is there and is not cut');
      expected.complete = false;
      return [];
    }
    const zones = measureBar(known, known.species.parts[barId] as Bar, massMg);
    const stretches = coverBar(zones, plan, place, note);
    const paired = stretches ? pairRuns(plan, measureRuns(stretches), place, note) : [];
    if (paired.length !== plan.runs.length || paired.length === 0) expected.complete = false;
    return paired;
  });
}
