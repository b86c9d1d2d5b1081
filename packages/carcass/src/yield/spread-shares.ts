import type { Breakdown, BreakdownOperation } from './breakdown.ts';
import type { Settled } from './settle.ts';
import type { YieldProfile } from './yield-profile.ts';

/** Concentration of the Dirichlet law by which a part falls into its outputs. */
export const concentrationOf = ({ concentration }: YieldProfile, partId: string): number =>
  (concentration.of[partId] ?? concentration.otherwise).value;

/** Squared coefficient of variation of a share `mean` of a Dirichlet law: exact. */
const squaredCvOf = (mean: number, concentration: number): number =>
  mean >= 1 ? 0 : (1 - mean) / (mean * (concentration + 1));

/**
 * Squared coefficients of variation of all shares. Each breakdown of the usual way follows a Dirichlet law of its own,
 * and they are independent: so shares stay above 0 and add up, and the moments of their products are exact. A part that
 * several operations make has the spread that the usual way gives it.
 */
export function spreadShares(breakdown: Breakdown, profile: YieldProfile, means: Settled): Settled {
  const outputs = new Float64Array(means.outputs.length);
  const parts = new Float64Array(means.parts.length).fill(-1);
  parts[0] = 0;
  const concentrations = breakdown.parts.map(({ id }) => concentrationOf(profile, id));
  const spread = (index: number, operation: BreakdownOperation): void => {
    const whole = means.parts[index] as number;
    const concentration = concentrations[index] as number;
    for (let at = operation.from; at < operation.to; at++) {
      const mean = (means.outputs[at] as number) / whole;
      if (!(mean > 0)) continue;
      const makes = breakdown.outputs[at]?.makes ?? -1;
      const before = Math.max(0, parts[index] as number);
      const cv2 = (1 + before) * (1 + squaredCvOf(mean, concentration)) - 1;
      if (makes >= 0 && (parts[makes] as number) < 0) parts[makes] = cv2;
      outputs[at] = makes >= 0 ? (parts[makes] as number) : cv2;
    }
  };
  for (const usual of [true, false]) {
    breakdown.parts.forEach((part, index) => {
      for (const operation of part.operations)
        if ((operation.usual && part.compartments !== undefined) === usual) spread(index, operation);
    });
  }
  return { outputs, parts: parts.map((cv2) => Math.max(0, cv2)) };
}
