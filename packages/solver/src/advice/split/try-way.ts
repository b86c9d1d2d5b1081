import { type CuttingDay, type CuttingPlan, type Goals, goalsOf, type SidePlan } from '@flitchbook/plan';
import { isBetter } from '../../columns.ts';
import { decode } from '../../decode.ts';
import { dropEngine, engine } from '../../engine.ts';
import { buildExplicit } from '../../explicit.ts';
import { solveGoalByGoal } from '../../goal-by-goal.ts';
import { planDay } from '../../plan-day.ts';
import type { Problem, UnitClass } from '../../problem.ts';
import { handOut } from '../../read-whole.ts';
import { goalOrder, sameWorth } from '../../sparse-model.ts';
import type { Patience } from '../patience.ts';
import { mergeSide } from './merge-side.ts';
import { follows, locksOf, restrictedTo, type SplitWay } from './ways.ts';

/** One side on the bench, with everything that it takes to cut it anew while the rest stays. */
export interface Bench {
  readonly day: CuttingDay;
  readonly plan: CuttingPlan;
  readonly problem: Problem;
  readonly group: UnitClass;
  readonly part: string;
  readonly alone: Problem;
  readonly heldGrams: ReadonlyMap<string, number>;
}

export interface Tried {
  readonly way: SplitWay;
  readonly plan: CuttingPlan;
  readonly goals: Goals;
  /** what the rest of the day did for it */
  readonly rest: 'held' | 'planned-anew';
  /** no better plan of this way is there while the rest is held */
  readonly proven: boolean;
}

export const sideIn = (plan: CuttingPlan, sideId: string): SidePlan =>
  plan.sides.find((side) => side.sideId === sideId) as SidePlan;

/** The best that a way can do with the rest held. @returns undefined when none was found in time, or the engine failed */
export async function tryHeld(bench: Bench, way: SplitWay, patience: Patience): Promise<Tried | undefined> {
  try {
    return await cutAlone(bench, way, patience);
  } catch {
    // What the engine broke must not spoil the ways after it.
    dropEngine();
    return undefined;
  }
}

async function cutAlone(bench: Bench, way: SplitWay, patience: Patience): Promise<Tried | undefined> {
  const { day, plan, problem, part, alone, heldGrams } = bench;
  const narrow = { ...alone, classes: alone.classes.map((group) => restrictedTo(group, part, way)) };
  const { model, read } = buildExplicit(narrow, true);
  const form = { model, read: (values: ArrayLike<number>) => handOut(narrow, read(values)) };
  const { decision, goals: reached, bound } = solveGoalByGoal(await engine(), form, patience, 0);
  if (!decision) return undefined;
  const made = decode(narrow, decision);
  const bulkGrams = new Map(made.lines.map((line) => [line.lineId, line.bulkGrams]));
  const [side] = made.sides;
  if (!side) return undefined;
  const merged = mergeSide(
    problem,
    plan,
    { side, bulkGrams },
    heldGrams,
    `Not with this side broken so: ${way.says}.`,
  );
  const proven = goalOrder.every((goal) => bound[goal] - reached[goal] <= sameWorth);
  return { way, plan: merged, goals: goalsOf(day, merged), rest: 'held', proven };
}

/** The day planned anew around a way, where that keeps to it. */
export async function tryFree(bench: Bench, held: Tried, patience: Patience): Promise<Tried> {
  const { day, group } = bench;
  const { sideId } = group.units[0]?.side ?? { sideId: '' };
  const locks = [...day.locks, ...locksOf(group, held.way, sideIn(held.plan, sideId))];
  const free = await planDay(
    { ...day, locks },
    { deadlineSeconds: patience.secondsLeft(), gap: 0, seed: patience.seed },
  );
  const side = sideIn(free, sideId);
  if (side.shareId !== null || !follows(group, held.way, side)) return held;
  const goals = goalsOf(day, free);
  return isBetter(goals, held.goals)
    ? { ...held, plan: { ...free, proof: null }, goals, rest: 'planned-anew' }
    : held;
}
