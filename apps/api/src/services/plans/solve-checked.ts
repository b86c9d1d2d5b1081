import { knownSpecies } from '@flitchbook/contracts';
import { type CuttingPlan, checkPlan } from '@flitchbook/plan';
import { done, type Outcome, type Refusal, refused } from '../../refusals.ts';
import type { NoAnswer, SolveLimits, TravellingDay } from '../../solve/day-solver.ts';
import type { Services } from '../ctx.ts';

const says: Readonly<Record<'full' | 'late' | 'broken' | 'closed', Refusal>> = {
  full: refused('plan.queue-full', 'Too many days wait to be planned. Try again in a moment.', {
    retryAfterSeconds: 5,
  }),
  late: refused(
    'plan.failed',
    'No plan was found in time and nothing was changed. The fault is ours and is in the log.',
  ),
  broken: refused(
    'plan.failed',
    'Planning failed and nothing was changed. The fault is ours and is in the log.',
  ),
  closed: refused('server.busy', 'The service is stopping. Try again in a moment.', { retryAfterSeconds: 5 }),
};

/** What is said where a thread gave no answer. */
export function refuseAnswer(services: Services, dayId: string, answer: NoAnswer): Refusal {
  if (answer.why === 'late' || answer.why === 'broken') {
    services.log({ level: 'error', event: 'plan-failed', dayId, why: answer.why, says: answer.says });
  }
  return says[answer.why];
}

/** A plan of the day that the independent checker has passed: no other plan may be stored or shown. */
export const solveChecked = (services: Services, day: TravellingDay): Promise<Outcome<CuttingPlan>> =>
  solveWithin(services, day, services.solveLimits);

/** As `solveChecked`, with limits of its own. */
export async function solveWithin(
  services: Services,
  day: TravellingDay,
  limits: SolveLimits,
): Promise<Outcome<CuttingPlan>> {
  const answer = await services.solver.solve(day, limits);
  if (!answer.ok) return refuseAnswer(services, day.dayId, answer);
  const known = { ...day, species: knownSpecies };
  const faults = checkPlan(known, answer.plan);
  if (faults.length === 0) return done(answer.plan);
  const unproven = { ...answer.plan, proof: null };
  // A search that was cut short may have no bound yet: the plan is good, and nothing is said of how good.
  if (checkPlan(known, unproven).length === 0) return done(unproven);
  for (const { rule, at } of faults) {
    services.log({ level: 'error', event: 'plan-faulty', dayId: day.dayId, rule, at });
  }
  const rules = [...new Set(faults.map(({ rule }) => rule))].join(', ');
  return refused(
    'plan.faulty',
    `The plan that was found breaks ${rules}; nothing was changed. The fault is ours and is in the log.`,
  );
}
