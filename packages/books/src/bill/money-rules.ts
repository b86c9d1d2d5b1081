import type { PriceByWeight } from '@flitchbook/plan';

/** Millionths: 82 500 is 8.25 percent. */
export type Ppm = number;

export interface TaxClass {
  readonly id: string;
  readonly name: string;
  readonly ratePpm: Ppm;
}

/** Work or extras at their own rate, so that bones never cost what meat costs. */
export interface Fee {
  readonly id: string;
  readonly name: string;
  /** one for each, or by the weight that hangs */
  readonly by: 'piece' | 'order' | 'hanging-weight';
  readonly minor: number;
  readonly per: PriceByWeight['per'];
  readonly taxClass: string;
}

/** What happens when the scale says more than the estimate's upper end and the shop's grace. */
export interface Tolerance {
  readonly overPpm: Ppm;
  /** charge: the scale decides; cap: the customer pays no more than the limit; ask: nothing is settled before consent */
  readonly whenOver: 'charge' | 'cap' | 'ask';
}

/** A share of an amount, rounded once, half up; of a negative amount as of its opposite. */
export function partOf(minor: number, ppm: Ppm): number {
  const size = BigInt(Math.abs(minor)) * BigInt(ppm);
  const rounded = Number((size * 2n + 1_000_000n) / 2_000_000n);
  return minor < 0 ? -rounded : rounded;
}
