export { type DayFault, dayLimits } from './check-day/day-faults.ts';
export { checkDay } from './check-day.ts';
export { type PlanFault, type PlanRule, planRules } from './check-plan/plan-rules.ts';
export { checkPlan } from './check-plan.ts';
export * from './cutting-plan.ts';
export * from './day.ts';
export * from './goals.ts';
export * from './nominal.ts';
