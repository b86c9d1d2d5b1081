/** Mean and standard deviation of a quantity, in the unit that the field's name ends in; read as log-normal. */
export interface Estimate {
  readonly mean: number;
  readonly sd: number;
}

/** The share of animals for which a cautious promise is kept, unless the shop says otherwise. */
export const usualConfidence = 0.9;

export const certain = (mean: number): Estimate => ({ mean, sd: 0 });

/** Variance over squared mean. */
export const squaredCv = ({ mean, sd }: Estimate): number => (mean === 0 ? 0 : (sd / mean) ** 2);

/** The product of two independent quantities. Exact. */
export function product(left: Estimate, right: Estimate): Estimate {
  const mean = left.mean * right.mean;
  const cv2 = (1 + squaredCv(left)) * (1 + squaredCv(right)) - 1;
  return { mean, sd: mean * Math.sqrt(cv2) };
}

export const scaled = ({ mean, sd }: Estimate, by: number): Estimate => ({ mean: mean * by, sd: sd * by });

export const rounded = ({ mean, sd }: Estimate): Estimate => ({
  mean: Math.round(mean),
  sd: Math.round(sd),
});

function polynomial(coefficients: readonly number[], at: number): number {
  return coefficients.reduce((sum, coefficient) => sum * at + coefficient, 0);
}

const middleOver = [
  -39.69683028665376, 220.9460984245205, -275.9285104469687, 138.357751867269, -30.66479806614716,
  2.506628277459239,
];
const middleUnder = [
  -54.47609879822406, 161.5858368580409, -155.6989798598866, 66.80131188771972, -13.28068155288572, 1,
];
const tailOver = [
  -0.007784894002430293, -0.3223964580411365, -2.400758277161838, -2.549732539343734, 4.374664141464968,
  2.938163982698783,
];
const tailUnder = [0.007784695709041462, 0.3224671290700398, 2.445134137142996, 3.754408661907416, 1];

/**
 * The standard normal quantile, right to 1.2e-9 of its value (the rational approximation of P. J. Acklam, 2003).
 * @param chance above 0 and below 1
 */
function normalQuantile(chance: number): number {
  const edge = 0.02425;
  if (chance > 1 - edge) return -normalQuantile(1 - chance);
  if (chance < edge) {
    const root = Math.sqrt(-2 * Math.log(chance));
    return polynomial(tailOver, root) / polynomial(tailUnder, root);
  }
  const from = chance - 0.5;
  return (from * polynomial(middleOver, from * from)) / polynomial(middleUnder, from * from);
}

/**
 * The value that a share `chance` of animals stays below.
 * @throws RangeError unless the chance lies above 0 and below 1
 */
export function quantileOf(estimate: Estimate, chance: number): number {
  if (!(chance > 0 && chance < 1)) throw new RangeError(`chance must be above 0 and below 1, got ${chance}`);
  const variance = Math.log1p(squaredCv(estimate));
  return estimate.mean * Math.exp(normalQuantile(chance) * Math.sqrt(variance) - variance / 2);
}

/** What all but one in ten animals give (with 0.9): the figure to promise before the scale has spoken. */
export const cautiousLow = (estimate: Estimate, confidence: number = usualConfidence): number =>
  quantileOf(estimate, 1 - confidence);

/** What no more than one in ten animals exceeds (with 0.9). */
export const cautiousHigh = (estimate: Estimate, confidence: number = usualConfidence): number =>
  quantileOf(estimate, confidence);
