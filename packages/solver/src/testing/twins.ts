import { type CuttingDay, checkPlan, type Goals, goalsOf } from '@flitchbook/plan';
import { planDay } from '../index.ts';

const proven = { deadlineSeconds: 20, gap: 0, seed: 1 } as const;

/**
 * What a day comes to by one of the two forms.
 * @throws Error when the plan breaks a rule
 */
export async function goalsBy(method: 'columns' | 'plain', day: CuttingDay): Promise<Goals> {
  const plan = await planDay(day, { ...proven, method });
  const [fault] = checkPlan(day, plan);
  if (fault) throw new Error(`${method}: ${fault.rule} ${fault.at} ${fault.says}`);
  return goalsOf(day, plan);
}

/** Rounding that the last goal may carry: two sums, each rounded by itself, minor units. */
const slackMinor = 2;

/** Whether two engines found plans of one worth. */
export const isSameWorth = (left: Goals, right: Goals): boolean =>
  Math.abs(left.promised - right.promised) < 0.5 &&
  Math.abs(left.wished - right.wished) < 0.5 &&
  Math.abs(left.rest - right.rest) <= slackMinor;
