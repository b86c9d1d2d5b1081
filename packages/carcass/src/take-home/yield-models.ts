import { hog } from '../hog/hog.ts';
import type { Species } from '../species.ts';
import { type Breakdown, breakdownOf } from '../yield/breakdown.ts';
import { hogYields } from '../yield/hog-yields.ts';
import type { YieldProfile } from '../yield/yield-profile.ts';
import type { TakeHomeProfile } from './cutting-style.ts';
import { hogTakeHome } from './hog-take-home.ts';

/** Everything that is needed to say what an animal of a species gives. */
export interface YieldModel {
  readonly species: Species;
  readonly breakdown: Breakdown;
  readonly yields: YieldProfile;
  readonly takeHome: TakeHomeProfile;
}

const known: readonly Omit<YieldModel, 'breakdown'>[] = [
  { species: hog, yields: hogYields, takeHome: hogTakeHome },
];

/** Ids of the species that yields are known of. */
export const yieldSpecies: readonly string[] = known.map(({ species }) => species.id);

/** @returns undefined for a species that no yields are known of */
export function yieldModelOf(speciesId: string): YieldModel | undefined {
  const model = known.find(({ species }) => species.id === speciesId);
  return model && { ...model, breakdown: breakdownOf(model.species) };
}
