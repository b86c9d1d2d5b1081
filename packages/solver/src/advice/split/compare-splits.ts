import {
  type CuttingDay,
  type CuttingPlan,
  comparePlans,
  type Goals,
  goalsOf,
  type Lock,
  type SidePlan,
} from '@flitchbook/plan';
import { isBetter } from '../../columns.ts';
import { compile } from '../../compile.ts';
import type { Problem, UnitClass } from '../../problem.ts';
import { type AdviceOptions, breathe, type Patience, patienceOf, shareOf } from '../patience.ts';
import { sideAlone } from './held-rest.ts';
import { type Tipping, tippingOf, worthOfAll } from './tipping.ts';
import { type Bench, sideIn, type Tried, tryFree, tryHeld } from './try-way.ts';
import { follows, heldBeside, locksOf, type SplitWay, splitWays, wayId, widestPart } from './ways.ts';

export interface SplitQuestion {
  readonly sideId: string;
  /** the part to break; not said: the one of the first cuts that leaves the most ways, a hog's middle */
  readonly part?: string;
  /** held: the other sides, and the choices on the rest of this one, stay as the plan has them. free: the whole day is planned anew for each way, where time allows */
  readonly rest?: 'held' | 'free';
  /** the way that prices are compared with; not said: the best with the bones left in */
  readonly againstWay?: string;
}

/** What one way to break the part comes to. */
export interface SplitOption {
  readonly wayId: string;
  readonly says: string;
  /** as the plan in force has it */
  readonly inForce: boolean;
  readonly boneIn: boolean;
  /** what the rest of the day did for this figure */
  readonly rest: 'held' | 'planned-anew';
  /** no better plan of this way is there while the rest is held */
  readonly proven: boolean;
  /** goals of the whole day */
  readonly goals: Goals;
  /** all goals together less those of the plan in force, minor units */
  readonly gainMinor: number;
  /** lines that get pieces of this side, in the order of the book */
  readonly fills: readonly { readonly lineId: string; readonly pieces: number }[];
  /** lines that get more or less than in the plan in force, pieces or grams */
  readonly gains: readonly SplitChange[];
  readonly losses: readonly SplitChange[];
  /** hands-on minutes of this side */
  readonly minutes: number;
  /** bulk id to grams of this side */
  readonly bulkGrams: Readonly<Record<string, number>>;
  readonly tipping: Tipping | null;
  /** what would be settled to have the day planned so */
  readonly locks: readonly Lock[];
  readonly side: SidePlan;
  readonly plan: CuttingPlan;
}

export interface SplitChange {
  readonly lineId: string;
  readonly before: number;
  readonly after: number;
  readonly says: string;
}

export interface SplitAdvice {
  readonly sideId: string;
  readonly part: string | null;
  /** best first */
  readonly options: readonly SplitOption[];
  /** locks of the day that stand whichever way is chosen */
  readonly otherLocks: readonly Lock[];
  /** ways that no plan was found for in time */
  readonly undecided: readonly { readonly wayId: string; readonly says: string }[];
  /** why there is nothing to choose, or null */
  readonly says: string | null;
}

/** Locks on the part or on what it becomes are what the question is about. */
function withoutLocksBelow(day: CuttingDay, speciesId: string, sideId: string, part: string): CuttingDay {
  const species = day.species[speciesId];
  const below = new Set<string>();
  const visit = (partId: string): void => {
    if (below.has(partId)) return;
    below.add(partId);
    const found = species?.parts[partId];
    if (found?.kind === 'bar') for (const zone of found.zones) below.add(`zone ${zone.id}`);
    if (found?.kind === 'primal')
      for (const output of found.operations.flatMap(({ outputs }) => outputs))
        if (output.to === 'part') visit(output.id);
  };
  visit(part);
  const isBelow = (lock: Lock): boolean =>
    lock.sideId === sideId && below.has(lock.lock === 'operation' ? lock.part : `zone ${lock.zone}`);
  return { ...day, locks: day.locks.filter((lock) => !isBelow(lock)) };
}

function changesOf(day: CuttingDay, before: CuttingPlan, after: CuttingPlan): SplitChange[] {
  const byWeight = new Set(day.lines.flatMap(({ lineId, ask }) => ('grams' in ask ? [lineId] : [])));
  return comparePlans(day, before, after).flatMap(({ kind, id, before: was, after: is, says }) => {
    const change = { lineId: id, before: Number(was), after: Number(is), says };
    // What this side gives and what the others give are each rounded down to a gram.
    const isRounding = byWeight.has(id) && Math.abs(change.after - change.before) <= 1;
    return kind !== 'line' || isRounding ? [] : [change];
  });
}

function fillsOf(day: CuttingDay, side: SidePlan): SplitOption['fills'] {
  const spans = side.bars.flatMap(({ runs }) => runs.flatMap(({ pieces }) => pieces));
  const owners = [...side.items, ...spans].flatMap(({ owner }) =>
    owner && 'lineId' in owner ? [owner.lineId] : [],
  );
  return day.lines.flatMap(({ lineId }) => {
    const pieces = owners.filter((owner) => owner === lineId).length;
    return pieces === 0 ? [] : [{ lineId, pieces }];
  });
}

function optionOf(
  bench: Bench,
  { way, plan, goals, rest, proven }: Tried,
  against: Tried | undefined,
): SplitOption {
  const { day, group } = bench;
  const sideId = group.units[0]?.unitId ?? '';
  const side = sideIn(plan, sideId);
  const changes = changesOf(day, bench.plan, plan);
  const named = (tried: Tried) => ({
    wayId: wayId(tried.way),
    side: sideIn(tried.plan, sideId),
    plan: tried.plan,
  });
  return {
    wayId: wayId(way),
    says: way.says,
    inForce: follows(group, way, sideIn(bench.plan, sideId)),
    boneIn: way.boneIn,
    rest,
    proven,
    goals,
    gainMinor: worthOfAll(goals) - worthOfAll(goalsOf(day, bench.plan)),
    fills: fillsOf(day, side),
    gains: changes.filter(({ before, after }) => after > before),
    losses: changes.filter(({ before, after }) => after < before),
    minutes: side.minutes,
    bulkGrams: Object.fromEntries(
      Object.entries(side.bulkMg).map(([bulk, mg]) => [bulk, Math.round(mg / 1000)]),
    ),
    tipping:
      against === undefined || against.way === way
        ? null
        : tippingOf(day, named({ way, plan, goals, rest, proven }), named(against)),
    locks: locksOf(group, way, side),
    side,
    plan,
  };
}

/** The side, ready to be cut anew; or why there is nothing to choose. */
function layOut(day: CuttingDay, plan: CuttingPlan, { sideId, part }: SplitQuestion): Bench | string {
  const animal = day.animals.find(({ sides }) => sides.some((side) => side.sideId === sideId));
  const planned = plan.sides.find((side) => side.sideId === sideId);
  if (!animal || !planned) return `There is no side "${sideId}" in this plan.`;
  if (planned.shareId !== null) {
    const owner = day.shares.find(({ shareId }) => shareId === planned.shareId)?.owner ?? planned.shareId;
    return `The whole side is for ${owner} and is cut to those instructions.`;
  }
  const groupIn = (problem: Problem): UnitClass =>
    problem.classes.find(({ isSide, units }) => isSide && units[0]?.unitId === sideId) as UnitClass;
  const wanted = part ?? widestPart(groupIn(compile({ ...day, locks: [] }, true)));
  if (wanted === undefined) return 'Nothing of this side is left to choose.';
  const asked = withoutLocksBelow(day, animal.speciesId, sideId, wanted);
  const problem = compile(asked, true);
  const group = groupIn(problem);
  const alone = sideAlone(problem, plan, heldBeside(group, wanted, planned));
  const heldGrams = new Map(
    problem.bulkDemands.map(({ line, grams }, at) => [
      line.lineId,
      Math.floor(grams - (alone.bulkDemands[at]?.grams ?? 0)),
    ]),
  );
  return { day: asked, plan, problem, group, part: wanted, alone, heldGrams };
}

/** The plan in force is one of the ways as it stands, and may be all there is time for. */
function standing({ day, plan, group }: Bench, ways: readonly SplitWay[]): Tried | undefined {
  const side = sideIn(plan, group.units[0]?.unitId ?? '');
  const way = ways.find((each) => follows(group, each, side));
  return way && { way, plan, goals: goalsOf(day, plan), rest: 'held', proven: false };
}

async function tryAll(
  bench: Bench,
  ways: readonly SplitWay[],
  rest: SplitQuestion['rest'],
  patience: Patience,
): Promise<Map<SplitWay, Tried>> {
  const tried = new Map<SplitWay, Tried>();
  const first = standing(bench, ways);
  if (first) tried.set(first.way, first);
  const steps = rest === 'free' ? 2 * ways.length : ways.length;
  let done = 0;
  const look = async (way: SplitWay, work: (own: Patience) => Promise<Tried | undefined>): Promise<void> => {
    await breathe();
    if (patience.isOver()) return;
    const found = await work(shareOf(patience, steps - done));
    const known = tried.get(way);
    if (found && (!known || !isBetter(known.goals, found.goals))) tried.set(way, found);
    done += 1;
    patience.tell({ done, of: steps, says: way.says });
  };
  for (const way of ways) await look(way, (own) => tryHeld(bench, way, own));
  if (rest !== 'free') return tried;
  for (const held of [...tried.values()]) await look(held.way, (own) => tryFree(bench, held, own));
  return tried;
}

/**
 * Every way to break one part of a side, each planned to its best, side by side. What it says of a way holds while the
 * other sides stay as they are, or with the whole day planned anew, as the answer says. Stores and changes nothing.
 * @param plan a plan of the day that passes `checkPlan`
 */
export async function compareSplits(
  day: CuttingDay,
  plan: CuttingPlan,
  question: SplitQuestion,
  options: AdviceOptions,
): Promise<SplitAdvice> {
  const patience = patienceOf(options);
  const { sideId } = question;
  const bench = layOut(day, plan, question);
  if (typeof bench === 'string')
    return { sideId, part: null, options: [], otherLocks: day.locks, undecided: [], says: bench };
  const ways = splitWays(bench.group, bench.part);
  const tried = await tryAll(bench, ways, question.rest, patience);
  const best = [...tried.values()].toSorted(
    (a, b) => Number(isBetter(b.goals, a.goals)) - Number(isBetter(a.goals, b.goals)),
  );
  const against = best.find(({ way }) =>
    question.againstWay === undefined ? way.boneIn : wayId(way) === question.againstWay,
  );
  return {
    sideId,
    part: bench.part,
    options: best.map((each) => optionOf(bench, each, against)),
    otherLocks: bench.day.locks,
    undecided: ways.filter((way) => !tried.has(way)).map((way) => ({ wayId: wayId(way), says: way.says })),
    says: ways.length === 0 ? `There is no "${bench.part}" on this side.` : null,
  };
}
