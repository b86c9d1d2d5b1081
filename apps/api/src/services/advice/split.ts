import { knownSpecies, type SplitAdviceOnWire } from '@flitchbook/contracts';
import { loadCuttingDay, loadPlan } from '@flitchbook/db';
import { type CuttingPlan, checkPlan } from '@flitchbook/plan';
import type { SplitAdvice, SplitOption, SplitQuestion } from '@flitchbook/solver';
import { done, type Outcome, refused } from '../../refusals.ts';
import type { TravellingDay } from '../../solve/day-solver.ts';
import type { Ctx } from '../ctx.ts';
import { refuseAnswer } from '../plans/solve-checked.ts';
import { currentPlan } from '../reservations/decide.ts';
import { authorise } from '../roles.ts';
import { dayUnknown, look } from '../transact.ts';

/** Seconds for all ways together: somebody stands at the block and waits. */
const heldSeconds = 3;
const freeSeconds = 20;

interface PlannedDay {
  readonly day: TravellingDay;
  readonly plan: CuttingPlan;
}

/** The day and the plan of this very version of it. */
const readPlanned = (ctx: Ctx, dayId: string): Promise<Outcome<PlannedDay>> =>
  look(ctx.db, async (tx) => {
    const { shopId } = ctx.actor;
    const stored = await loadCuttingDay(tx, shopId, dayId);
    if (!stored) return dayUnknown(dayId);
    const plan = currentPlan(stored, await loadPlan(tx, shopId, dayId));
    if (plan) return done({ day: stored.cuttingDay, plan });
    return refused('plan.missing', 'The day has no plan of how it stands now. Wait a moment, or plan it.');
  });

/** What each option says has passed the check that plans pass before they are stored; one that has not counts as undecided. */
function passed(
  ctx: Ctx,
  day: TravellingDay,
  { options, undecided, ...advice }: SplitAdvice,
): SplitAdviceOnWire {
  const isSound = ({ plan, locks }: SplitOption): boolean => {
    const settled = { ...day, species: knownSpecies, locks: [...advice.otherLocks, ...locks] };
    const faults = checkPlan(settled, plan);
    for (const { rule, at } of faults)
      ctx.log({ level: 'error', event: 'plan-faulty', dayId: day.dayId, rule, at });
    return faults.length === 0;
  };
  const sound = options.filter(isSound);
  const dropped = options.filter((option) => !sound.includes(option));
  return {
    ...advice,
    options: sound.map(({ plan: _, ...option }) => option),
    undecided: [...undecided, ...dropped.map(({ wayId, says }) => ({ wayId, says }))],
  };
}

const isKnownWay = ({ options, undecided }: SplitAdvice, wanted: string): boolean =>
  [...options, ...undecided].some(({ wayId }) => wayId === wanted);

const invalid = (at: string, value: string, says: string) =>
  refused('advice.invalid', 'The question does not fit the day; errors says why.', {
    faults: [{ at, value, says }],
  });

/** Every way to break one part of a side, side by side. Stores nothing. */
export async function adviseSplit(
  ctx: Ctx,
  dayId: string,
  question: SplitQuestion,
): Promise<Outcome<SplitAdviceOnWire>> {
  const refusal = authorise(ctx, 'advice.split');
  if (refusal) return refusal;
  const planned = await readPlanned(ctx, dayId);
  if (!planned.ok) return planned;
  const { day, plan } = planned.value;
  const { sideId } = question;
  if (!plan.sides.some((side) => side.sideId === sideId))
    return invalid('sideId', sideId, 'No side of this day has this id.');
  const limits = { deadlineSeconds: question.rest === 'free' ? freeSeconds : heldSeconds, gap: 0, seed: 1 };
  const answer = await ctx.solver.advise(day, limits, 'split', { plan, question });
  if (!answer.ok) return refuseAnswer(ctx, dayId, answer);
  const { againstWay } = question;
  if (againstWay !== undefined && !isKnownWay(answer.advice, againstWay))
    return invalid('againstWay', againstWay, 'No way to break this part has this id.');
  return done(passed(ctx, day, answer.advice));
}
