import type { SlaughterFact } from '@flitchbook/carcass';
import type { Ask } from './one-side.ts';

/** What holds on one side (or animal) where each ask alone can be met. */
export interface Conflict {
  readonly id: string;
  readonly says: string;
  /** each list can be met whole */
  readonly can: readonly (readonly Ask[])[];
  /** each list cannot */
  readonly cannot: readonly (readonly Ask[])[];
  /** not to be had from such an animal at all */
  readonly never?: readonly Ask[];
  readonly facts?: readonly SlaughterFact[];
  readonly sides?: 2;
  readonly lostParts?: readonly string[];
}
