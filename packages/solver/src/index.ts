export { gapOf } from './columns.ts';
export { planDay, type SolveOptions } from './plan-day.ts';
