import { readingToGrams, type ScaleReading, splitExactly } from '@flitchbook/carcass';
import type { NewAnimal as AnimalOnWire } from '@flitchbook/contracts';
import { entryOf, knownSpecies } from '@flitchbook/contracts';
import type { NewAnimal, NewSide } from '@flitchbook/db';
import { done, type FieldFault, type Outcome, refused } from '../../refusals.ts';

type Hand = 'left' | 'right';
type SidesOnWire = NonNullable<AnimalOnWire['sides']>;

const hands: readonly Hand[] = ['left', 'right'];

interface Weighing {
  readonly hanging: ScaleReading;
  readonly sides: SidesOnWire | undefined;
  /** ids of the sides, made once when the animal is booked */
  readonly sideIds: Readonly<Record<Hand, string>>;
}

const both = <T>(make: (hand: Hand) => T): Record<Hand, T> => ({ left: make('left'), right: make('right') });

/** Whole milligrams of each side: as weighed, and the rest of the hanging weight where one was not. */
function sideMasses(hangingMg: number, weighed: Record<Hand, number | undefined>): Record<Hand, number> {
  const { left, right } = weighed;
  if (left !== undefined && right !== undefined) return { left, right };
  if (left !== undefined) return { left, right: hangingMg - left };
  if (right !== undefined) return { left: hangingMg - right, right };
  const [half = 0, other = 0] = splitExactly(hangingMg, [1, 1]);
  return { left: half, right: other };
}

/**
 * What the scale said, in grams and milligrams. A carcass that was never split has two halves to plan with all the same.
 * Refused where a side is named twice, or weighs as much as the whole animal.
 */
function weighSides({
  hanging,
  sides = [],
  sideIds,
}: Weighing): Outcome<{ grams: number; sides: readonly NewSide[] }> {
  const faults: FieldFault[] = [];
  const grams = readingToGrams(hanging);
  const given = both((hand) => sides.findIndex((side) => side.hand === hand));
  const weighed = both((hand) => {
    const weight = sides[given[hand]]?.weight;
    return weight === undefined ? undefined : readingToGrams(weight) * 1000;
  });
  sides.forEach(({ hand, weight }, index) => {
    if (given[hand] !== index) {
      faults.push({ at: `sides[${index}].hand`, value: hand, says: `the ${hand} side is there already` });
    } else if (weight && readingToGrams(weight) >= grams) {
      const says = `a side weighs less than its animal of ${hanging.text} ${hanging.unit}`;
      faults.push({ at: `sides[${index}].weight`, value: weight, says });
    }
  });
  if (faults.length > 0)
    return refused('animal.invalid', 'The sides do not fit the animal; errors says how.', { faults });
  const masses = sideMasses(grams * 1000, weighed);
  return done({
    grams,
    sides: hands.map((hand) => {
      const side = sides[given[hand]];
      const { lostParts = [], weight = null } = side ?? {};
      return { sideId: sideIds[hand], hand, massMg: masses[hand], weight, lostParts };
    }),
  });
}

/** The animal as it will be stored, with what was left out filled in. */
export function animalToStore(
  input: AnimalOnWire,
  ids: { readonly animalId: string; readonly sideIds: Readonly<Record<Hand, string>> },
): Outcome<NewAnimal> {
  const {
    name,
    speciesId,
    farmId = null,
    hanging,
    hotOrCold,
    legalMode = 'for-sale',
    facts,
    lostItems,
    sides,
  } = input;
  const weighed = weighSides({ hanging, sides, sideIds: ids.sideIds });
  if (!weighed.ok) return weighed;
  return done({
    animalId: ids.animalId,
    name,
    speciesId,
    farmId,
    // An unknown species is refused with the rest of the day.
    ribs: input.ribs ?? entryOf(knownSpecies, speciesId)?.ribs.usual ?? 1,
    hanging: { ...hanging, grams: weighed.value.grams },
    hotOrCold,
    legalMode,
    facts,
    lostItems,
    sides: weighed.value.sides,
  });
}
