export type { AdviceOptions, Progress } from './advice/patience.ts';
export {
  compareSplits,
  type SplitAdvice,
  type SplitChange,
  type SplitOption,
  type SplitQuestion,
} from './advice/split/compare-splits.ts';
export { gapOf } from './columns.ts';
export { planDay, type SolveOptions } from './plan-day.ts';
