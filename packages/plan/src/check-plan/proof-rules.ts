import type { CuttingPlan, Goals, Proof } from '../cutting-plan.ts';
import type { CuttingDay } from '../day.ts';
import { goalsOf } from '../goals.ts';
import type { Note } from './plan-rules.ts';

const goalNames: readonly (keyof Goals)[] = ['promised', 'wished', 'rest'];

/** Shares of a plan's worth nearer than this are one share. */
const gapSlack = 1e-9;

/** Largest distance of a goal from its bound, as a share of what the plan is worth all told. */
function gapBetween({ goals, bound }: Proof): number {
  const worth = Math.max(1, goals.promised + goals.wished + Math.max(0, goals.rest));
  return Math.max(...goalNames.map((goal) => Math.max(0, bound[goal] - goals[goal]) / worth));
}

/** What a plan claims to be worth, and how near to the best. Only for a plan that breaks no other rule. */
export function checkProof(day: CuttingDay, plan: CuttingPlan, note: Note): void {
  const { proof } = plan;
  if (proof === null) return;
  const worth = goalsOf(day, plan);
  for (const goal of goalNames) {
    if (proof.goals[goal] !== worth[goal])
      note('P27', `proof.goals.${goal}`, `is ${proof.goals[goal]}, the plan comes to ${worth[goal]}`);
    if (proof.bound[goal] < proof.goals[goal])
      note('P27', `proof.bound.${goal}`, `is ${proof.bound[goal]}, below the ${proof.goals[goal]} reached`);
  }
  const gap = gapBetween(proof);
  if (Math.abs(proof.gap - gap) > gapSlack)
    note('P27', 'proof.gap', `is ${proof.gap}, goals and bounds are ${gap} apart`);
}
