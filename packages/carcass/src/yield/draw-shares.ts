import type { Breakdown } from './breakdown.ts';
import { type Settled, settle } from './settle.ts';
import { concentrationOf } from './spread-shares.ts';
import type { YieldProfile } from './yield-profile.ts';

/** Numbers from 0 up to but not including 1, handed in so that a draw can be repeated. */
export type Random = () => number;

function drawNormal(random: Random): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/** Marsaglia and Tsang, A simple method for generating gamma variables, ACM TOMS 26:363 (2000). */
function drawGamma(shape: number, random: Random): number {
  if (shape < 1) return drawGamma(shape + 1, random) * (1 - random()) ** (1 / shape);
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const x = drawNormal(random);
    const v = (1 + c * x) ** 3;
    if (v > 0 && Math.log(1 - random()) < (x * x) / 2 + d - d * v + d * Math.log(v)) return d * v;
  }
}

/** Shares of one imagined side: each breakdown of the usual way drawn from its Dirichlet law. They add up to 1. */
export function drawShares(
  breakdown: Breakdown,
  profile: YieldProfile,
  means: Settled,
  random: Random,
): Settled {
  const compartments = new Float64Array(breakdown.compartments.length);
  const fall = (index: number, share: number): void => {
    const part = breakdown.parts[index] as Breakdown['parts'][number];
    const [usual] = part.operations;
    const whole = means.parts[index] as number;
    if (!usual || whole === 0) return;
    const concentration = concentrationOf(profile, part.id);
    const outputs = breakdown.outputs.slice(usual.from, usual.to);
    const drawn = outputs.map((_, turn) => {
      const mean = (means.outputs[usual.from + turn] as number) / whole;
      return mean > 0 ? drawGamma(mean * concentration, random) : 0;
    });
    const sum = drawn.reduce((running, mine) => running + mine, 0);
    for (const [turn, { compartment, makes }] of outputs.entries()) {
      const mine = (share * (drawn[turn] as number)) / sum;
      if (compartment >= 0) compartments[compartment] = mine;
      else fall(makes, mine);
    }
  };
  fall(0, 1);
  return settle(breakdown, compartments);
}
