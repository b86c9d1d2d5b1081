import { knownSpecies } from '@flitchbook/contracts';
import type { NewOrder, OrderRecord, StoredDay, StoredPlan } from '@flitchbook/db';
import { type CuttingPlan, checkPlan, layIn, type Shortfall } from '@flitchbook/plan';
import { done, type Instead, type Outcome, refused } from '../../refusals.ts';
import type { TravellingDay } from '../../solve/day-solver.ts';
import type { Services } from '../ctx.ts';
import { solveWithin } from '../plans/solve-checked.ts';
import { answerAsPlan, claimDayOf, type Demand, isAllServed } from './claim-day.ts';

export type Decision =
  /** a plan of the day that serves the claim and everything that was served before */
  | { readonly fits: true; readonly plan: CuttingPlan; readonly how: 'laid-in' | 'planned-anew' }
  /** proven: no plan serves it beside what was promised before */
  | {
      readonly fits: false;
      readonly instead: readonly Instead[];
      readonly says: string;
      readonly why: Shortfall['kind'];
    };

/** Seconds of work for the question "does it fit at all", shorter first: most answers are found at once. */
const patience = [1, 4, 10] as const;

const passes = (day: TravellingDay, plan: CuttingPlan): boolean =>
  checkPlan({ ...day, species: knownSpecies }, plan).length === 0;

/** The plan with these lines laid into what it leaves open, moving nothing; null where they do not fit like that. */
export function laidIn(
  day: TravellingDay,
  plan: CuttingPlan,
  order: { readonly lines: readonly { readonly lineId: string }[] },
): CuttingPlan | null {
  const laid = layIn(
    { ...day, species: knownSpecies },
    plan,
    order.lines.map(({ lineId }) => lineId),
  );
  return laid && passes(day, laid) ? laid : null;
}

export const asDemand = ({
  orderId,
  owner,
  lines,
  shares,
}: NewOrder): Pick<OrderRecord, 'lines' | 'shares'> => ({
  lines: lines.map((line) => ({ ...line, orderId, owner })),
  shares: shares.map((share) => ({ ...share, orderId, owner })),
});

/** The plan of a day's present version; null where it is older or there is none. */
export const currentPlan = ({ day }: StoredDay, stored: StoredPlan | undefined): CuttingPlan | null =>
  stored && day.plannedVersion === day.version ? stored.plan : null;

function refuseClaim(answer: CuttingPlan, claimed: Demand): Decision {
  const fills = answer.lines.filter(({ lineId }) => claimed.lineIds.has(lineId));
  const short = [...fills, ...answer.shares].filter(({ shortfall }) => shortfall !== null);
  const keptIsServed = answer.lines.every(
    ({ lineId, filled, asked }) => claimed.lineIds.has(lineId) || filled === asked,
  );
  const instead = fills.map(({ lineId, asked, filled, shortfall }) => ({
    lineId,
    asked,
    possible: keptIsServed ? filled : 0,
    says: shortfall?.says ?? 'This line alone could be had.',
  }));
  const shortfall = short.find((fill) => fill.shortfall !== null)?.shortfall;
  const says = shortfall?.says ?? 'It cannot be had beside what was promised before.';
  return { fits: false, instead, says, why: shortfall?.kind ?? 'clash' };
}

/**
 * Whether a claim fits a day beside everything that is assured, and beside what the plan gives to other promises now:
 * first laid into what is open, moving nothing; then by planning anew. Runs outside of any transaction.
 * @param day with the claim in it
 * @returns plan.undecided where neither a plan nor a proof that there is none was found in time
 */
export async function decide(
  services: Services,
  day: TravellingDay,
  standing: { readonly plan: CuttingPlan | null; readonly assured: Demand },
  claimed: Demand,
): Promise<Outcome<Decision>> {
  const { plan, assured } = standing;
  if (plan !== null && claimed.shareIds.size === 0) {
    const lines = day.lines.filter(({ lineId }) => claimed.lineIds.has(lineId));
    const laid = laidIn(day, plan, { lines });
    if (laid) return done({ fits: true, plan: laid, how: 'laid-in' });
  }
  const question = claimDayOf(day, plan, assured, claimed);
  for (const deadlineSeconds of patience) {
    const answer = await solveWithin(services, question.day, { deadlineSeconds, gap: 0, seed: 1 });
    if (!answer.ok) return answer;
    if (isAllServed(answer.value)) {
      const whole = answerAsPlan(day, answer.value);
      if (passes(day, whole)) return done({ fits: true, plan: whole, how: 'planned-anew' });
      services.log({ level: 'error', event: 'claim-plan-faulty', dayId: day.dayId });
      break;
    }
    const bound = answer.value.proof?.bound.promised ?? Number.POSITIVE_INFINITY;
    // Two minor units for what rounds: worths are whole, bounds are rounded down.
    if (bound < question.fullWorth - 2) return done(refuseClaim(answer.value, claimed));
  }
  return refused(
    'plan.undecided',
    'It was not found out in time whether this fits. Nothing was changed; ask again or queue.',
    { retryAfterSeconds: 5 },
  );
}

/** The day with one more order in it. */
export const withOrder = (
  day: TravellingDay,
  order: Pick<OrderRecord, 'lines' | 'shares'>,
): TravellingDay => ({
  ...day,
  lines: [...day.lines, ...order.lines],
  shares: [...day.shares, ...order.shares],
});
