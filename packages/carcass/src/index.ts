export {
  type AuditEntry,
  type AuditFinding,
  type AuditInput,
  type AuditSheet,
  type AuditVerdict,
  auditSheet,
} from './audit/audit-sheet.ts';
export { beefFore } from './beef/beef.ts';
export { checkSpecies, type SpeciesFault } from './check-species.ts';
export { goat } from './goat/goat.ts';
export { type CutSheet, type HalfSide, sheetOfStyle } from './half/cut-sheet.ts';
export { type HalfQuestion, leftWhole, portionKey, portionOffers } from './half/half-questions.ts';
export {
  type HalfLine,
  type HalfPreview,
  previewHalf,
  type QuestionShown,
} from './half/preview-half.ts';
export { previewShare, type SharePreview, type ShareWish } from './half/preview-share.ts';
export { hog } from './hog/hog.ts';
export { spanishHogNames } from './hog/hog-spanish.ts';
export { lamb } from './lamb/lamb.ts';
export { type FarmFigures, type Learned, type LearnedFigure, learnYields } from './learn/learn-yields.ts';
export { checkMeasured, type MeasuredSide } from './learn/measured-side.ts';
export * from './ratio.ts';
export { readingToGrams, type ScaleReading, type WeightUnit } from './reading.ts';
export { isOutputLost, isPartLost, lostRegions } from './regions.ts';
export * from './runs.ts';
export * from './side-shape.ts';
export { sources } from './sources.ts';
export * from './species.ts';
export { splitExactly } from './split-exactly.ts';
export type { CuttingStyle, TakeHomeProfile } from './take-home/cutting-style.ts';
export { type TakeHome, type TakeHomeLine, takeHome } from './take-home/take-home.ts';
export { type YieldModel, yieldModelOf, yieldSpecies } from './take-home/yield-models.ts';
export * from './units.ts';
export { believedSpecies } from './yield/believed-species.ts';
export { type Breakdown, breakdownOf } from './yield/breakdown.ts';
export type { ChainStep } from './yield/carcass-chain.ts';
export { checkProfile } from './yield/check-profile.ts';
export { drawShares, type Random } from './yield/draw-shares.ts';
export * from './yield/estimate.ts';
export { asPublished, expectShares, type YieldBelief } from './yield/expect-shares.ts';
export { hogYields } from './yield/hog-yields.ts';
export { checkKnown, type KnownCarcass, type KnownFault, type KnownVerdict } from './yield/known-carcass.ts';
export * from './yield/lean.ts';
export { type PieceForecast, predictPieces } from './yield/predict-pieces.ts';
export { predictYields, type YieldPrediction } from './yield/predict-yields.ts';
export type { Settled } from './yield/settle.ts';
export { type UsualRow, usualRows } from './yield/usual-rows.ts';
export { type RibChance, ribChances, type YieldProfile } from './yield/yield-profile.ts';
