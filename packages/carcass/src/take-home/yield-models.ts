import { beefFore } from '../beef/beef.ts';
import { goat } from '../goat/goat.ts';
import { hog } from '../hog/hog.ts';
import { lamb } from '../lamb/lamb.ts';
import type { Species } from '../species.ts';
import { type Breakdown, breakdownOf } from '../yield/breakdown.ts';
import { hogYields } from '../yield/hog-yields.ts';
import { beefForeYields, goatYields, lambYields } from '../yield/other-yields.ts';
import type { YieldProfile } from '../yield/yield-profile.ts';
import type { TakeHomeProfile } from './cutting-style.ts';
import { hogTakeHome } from './hog-take-home.ts';
import { beefForeTakeHome, goatTakeHome, lambTakeHome } from './other-take-home.ts';

/** Everything that is needed to say what an animal of a species gives. */
export interface YieldModel {
  readonly species: Species;
  readonly breakdown: Breakdown;
  readonly yields: YieldProfile;
  readonly takeHome: TakeHomeProfile;
}

const known: readonly Omit<YieldModel, 'breakdown'>[] = [
  { species: hog, yields: hogYields, takeHome: hogTakeHome },
  { species: lamb, yields: lambYields, takeHome: lambTakeHome },
  { species: goat, yields: goatYields, takeHome: goatTakeHome },
  { species: beefFore, yields: beefForeYields, takeHome: beefForeTakeHome },
];

/** Ids of the species that yields are known of. */
export const yieldSpecies: readonly string[] = known.map(({ species }) => species.id);

/** @returns undefined for a species that no yields are known of */
export function yieldModelOf(speciesId: string): YieldModel | undefined {
  const model = known.find(({ species }) => species.id === speciesId);
  return model && { ...model, breakdown: breakdownOf(model.species) };
}
