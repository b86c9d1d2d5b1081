import { lineWorth } from '@flitchbook/plan';
import { type Ppm, partOf } from './money-rules.ts';

/** What a line will cost, before the scale: a range, never a number. */
export interface Estimate {
  readonly fromMinor: number;
  readonly toMinor: number;
}

/** @param swingPpm how far a piece may be off what the plan expects, either way */
export function estimate(expectedGrams: number, priceMinorPerKg: number, swingPpm: Ppm): Estimate {
  const worth = lineWorth(expectedGrams, priceMinorPerKg);
  const swing = partOf(worth, swingPpm);
  return { fromMinor: worth - swing, toMinor: worth + swing };
}
