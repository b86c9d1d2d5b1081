export { gapOf, planDay, type SolveOptions } from './plan-day.ts';
