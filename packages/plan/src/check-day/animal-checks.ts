import type { SideFacts, Species } from '@flitchbook/carcass';
import { entryOf } from '../check-plan/day-index.ts';
import type { CuttingDay, DayAnimal } from '../day.ts';
import { type DayNotes, dayLimits } from './day-faults.ts';
import { weightSlip } from './slips.ts';

const facts = ['skin-on', 'head', 'feet', 'organs', 'unsplit'];

/** Facts of the animal rather than of a side: its sides can't differ in them. */
const animalFacts = ['head', 'organs', 'unsplit'] as const;

/** Two sides may outweigh the carcass by this much: scales differ, water drips. */
const mostOverCarcass = 1.05;
const leastOfCarcass = 0.85;

/** How far from half of a plausible carcass one side may be. */
const sideSpread = { least: 0.8, most: 1.2 } as const;

const kg = (grams: number): string => `${Math.round(grams / 100) / 10} kg`;

function checkCarcass(
  notes: DayNotes,
  at: string,
  side: SideFacts,
  { name, hangingGrams, ribs }: Species,
): void {
  const { min, max } = hangingGrams;
  const plausible = (grams: number): boolean => grams >= min && grams <= max;
  const { carcassGrams } = side;
  if (!Number.isSafeInteger(carcassGrams) || !plausible(carcassGrams)) {
    const says = `A carcass of ${name.toLowerCase()} weighs ${kg(min)} to ${kg(max)} in whole grams, got ${carcassGrams} g.`;
    notes.error(`${at}.carcassGrams`, carcassGrams, says, weightSlip(carcassGrams, plausible));
  }
  notes.whole(`${at}.ribs`, side.ribs, ribs.min, ribs.max);
}

function checkMass(notes: DayNotes, at: string, side: SideFacts, species: Species): void {
  const sideGrams = side.massMg / 1000;
  const least = (species.hangingGrams.min / 2) * sideSpread.least;
  const most = (species.hangingGrams.max / 2) * sideSpread.most;
  const plausible = (grams: number): boolean => grams >= least && grams <= most;
  const half = (grams: number): boolean => Math.abs(grams - side.carcassGrams / 2) < side.carcassGrams * 0.05;
  if (!Number.isSafeInteger(side.massMg) || !plausible(sideGrams)) {
    const says = `A side of ${species.name.toLowerCase()} weighs ${kg(least)} to ${kg(most)} in whole milligrams, got ${side.massMg} mg.`;
    notes.error(`${at}.massMg`, side.massMg, says, weightSlip(sideGrams, plausible));
  } else if (sideGrams > side.carcassGrams) {
    const says = `The side weighs ${kg(sideGrams)}, its whole carcass ${kg(side.carcassGrams)}.`;
    notes.error(`${at}.massMg`, side.massMg, says, weightSlip(sideGrams, half));
  }
}

function checkSide(
  notes: DayNotes,
  at: string,
  side: SideFacts,
  animal: DayAnimal,
  species: Species | undefined,
): void {
  notes.text(`${at}.sideId`, side.sideId);
  notes.oneOf(`${at}.hand`, side.hand, ['left', 'right']);
  if (side.animalId !== animal.animalId)
    notes.error(`${at}.animalId`, side.animalId, `The side stands with animal "${animal.animalId}".`);
  for (const [index, fact] of side.facts.entries()) notes.oneOf(`${at}.facts[${index}]`, fact, facts);
  if (!species) return;
  checkCarcass(notes, at, side, species);
  checkMass(notes, at, side, species);
  for (const [index, part] of side.lostParts.entries())
    notes.known(
      `${at}.lostParts[${index}]`,
      part,
      { ...species.regions, ...species.parts },
      `part or region of the ${species.name.toLowerCase()}`,
    );
}

/** What two sides of one animal have in common. */
function checkTogether(notes: DayNotes, at: string, { sides }: DayAnimal): void {
  const [first, second] = sides;
  if (!first || !second) return;
  if (first.hand === second.hand)
    notes.error(`${at}.sides[1].hand`, second.hand, `Both sides are called ${second.hand}.`);
  if (first.carcassGrams !== second.carcassGrams)
    notes.error(
      `${at}.sides[1].carcassGrams`,
      second.carcassGrams,
      `The other side says that the carcass weighs ${first.carcassGrams} g.`,
    );
  for (const fact of animalFacts) {
    if (first.facts.includes(fact) !== second.facts.includes(fact))
      notes.error(
        `${at}.sides[1].facts`,
        second.facts,
        `One side says "${fact}" and the other does not; it is true of both or of neither.`,
      );
  }
  const together = (first.massMg + second.massMg) / 1000;
  const share = together / first.carcassGrams;
  const says = `The sides weigh ${kg(together)} together, the carcass ${kg(first.carcassGrams)}.`;
  const fits = (grams: number): boolean => Math.abs(grams / first.carcassGrams - 1) < 0.05;
  if (share > mostOverCarcass) notes.error(`${at}.sides`, together, says, weightSlip(together, fits));
  else if (share < leastOfCarcass)
    notes.warn(
      `${at}.sides`,
      together,
      says,
      weightSlip(together, fits) ?? 'something was cut off before weighing.',
    );
}

function checkAnimal(notes: DayNotes, at: string, animal: DayAnimal, day: CuttingDay): void {
  notes.text(`${at}.animalId`, animal.animalId);
  notes.text(`${at}.name`, animal.name);
  notes.known(`${at}.speciesId`, animal.speciesId, day.species, 'species');
  const species = entryOf(day.species, animal.speciesId);
  if (animal.sides.length < 1 || animal.sides.length > 2)
    notes.error(
      `${at}.sides`,
      animal.sides.length,
      `An animal has one or two sides, got ${animal.sides.length}.`,
    );
  for (const [index, side] of animal.sides.entries())
    checkSide(notes, `${at}.sides[${index}]`, side, animal, species);
  checkTogether(notes, at, animal);
  if (!species) return;
  for (const [index, item] of animal.lostItems.entries())
    notes.known(
      `${at}.lostItems[${index}]`,
      item,
      species.items,
      `item of the ${species.name.toLowerCase()}`,
    );
}

/** Animals and their sides: who they are, what they weigh, what is known of them. */
export function checkAnimals(notes: DayNotes, day: CuttingDay): void {
  notes.atMost('animals', day.animals, dayLimits.animals);
  for (const [index, animal] of day.animals.entries()) checkAnimal(notes, `animals[${index}]`, animal, day);
  notes.unique(
    day.animals.map(({ animalId }, index) => ({ at: `animals[${index}].animalId`, id: animalId })),
    'animal',
  );
  const sides = day.animals.flatMap((animal, at) =>
    animal.sides.map(({ sideId }, index) => ({ at: `animals[${at}].sides[${index}].sideId`, id: sideId })),
  );
  notes.unique(sides, 'side');
}
