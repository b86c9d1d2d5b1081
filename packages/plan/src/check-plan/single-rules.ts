import type { Species } from '@flitchbook/carcass';
import type { CuttingPlan, SinglePiece } from '../cutting-plan.ts';
import type { DayAnimal } from '../day.ts';
import type { DayIndex } from './day-index.ts';
import { massSlackMg, type Note } from './plan-rules.ts';

/** Pieces that the animal must give. What can be taken apart leaves whole, unless the plan has any of its pieces. */
function singlesOf(
  animal: DayAnimal,
  species: Species,
  planned: readonly SinglePiece[],
): ReadonlyMap<string, number> {
  const facts = new Set(animal.sides.flatMap((side) => side.facts));
  const there = species.singles.filter(
    (single) =>
      !animal.lostItems.includes(single.item) && (single.needs ?? []).every((need) => facts.has(need)),
  );
  const pieces = there.flatMap((single) => {
    const apart = (single.apart ?? []).filter(({ item }) => !animal.lostItems.includes(item));
    return apart.some((part) => planned.some(({ item }) => item === part.item)) ? apart : [single];
  });
  return new Map(pieces.map((single) => [single.item, single.meanGrams * 1000]));
}

function checkAnimal(animal: DayAnimal, species: Species, planned: readonly SinglePiece[], note: Note): void {
  const singles = singlesOf(animal, species, planned);
  const seen = new Set<string>();
  for (const { pieceId, item, massMg } of planned) {
    const at = `singles[${pieceId}]`;
    const expectedMg = singles.get(item);
    if (expectedMg === undefined) note('P12', at, `animal ${animal.animalId} does not give ${item}`);
    else if (Math.abs(massMg - expectedMg) > massSlackMg)
      note('P14', `${at}.massMg`, `is ${massMg} mg, ${expectedMg} mg is expected`);
    if (seen.has(item)) note('P12', at, `${item} of animal ${animal.animalId} is there twice`);
    seen.add(item);
  }
  for (const item of singles.keys())
    if (!seen.has(item)) note('P12', 'singles', `${item} of animal ${animal.animalId} is missing`);
}

/** Head, tongue, tail and the like: once for each animal. */
export function checkSingles(index: DayIndex, plan: CuttingPlan, note: Note): void {
  for (const { pieceId, animalId } of plan.singles) {
    if (!index.animals.has(animalId))
      note('P12', `singles[${pieceId}]`, `animal ${animalId} is not of the day`);
  }
  for (const { animal, species } of index.animals.values()) {
    checkAnimal(
      animal,
      species,
      plan.singles.filter((single) => single.animalId === animal.animalId),
      note,
    );
  }
}
