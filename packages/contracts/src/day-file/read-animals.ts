import { readingToGrams, type ScaleReading } from '@flitchbook/carcass';
import type { DayAnimal } from '@flitchbook/plan';
import { maybeName } from '../near-name.ts';
import type { AnimalParts } from './day-file-shape.ts';
import type { DayFileNotes } from './day-notes.ts';
import { entryOf, knownSpecies, type WeighedAnimal } from './parsed-day.ts';

const hands = ['left', 'right'] as const;
type Hand = (typeof hands)[number];

interface SideEntry {
  /** path of the side in the file; of the animal when the file does not list the side */
  readonly at: string;
  readonly listed: boolean;
  readonly sideId: string;
  readonly weight: ScaleReading | null;
  readonly lostParts: readonly string[];
}

/** Whole milligrams of a side: as weighed, else the rest of the hanging weight, else half of it. */
function massMg(hangingGrams: number, own: ScaleReading | null, other: ScaleReading | null): number {
  if (own) return readingToGrams(own) * 1000;
  return other ? (hangingGrams - readingToGrams(other)) * 1000 : hangingGrams * 500;
}

function sideEntry(parts: AnimalParts, at: string, animalId: string, hand: Hand): SideEntry {
  const index = (parts.sides ?? []).findIndex((side) => side.hand === hand);
  const side = parts.sides?.[index];
  return {
    at: side ? `${at}.sides[${index}]` : at,
    listed: side !== undefined,
    sideId: side?.id ?? `${animalId}-${hand}`,
    weight: side?.weight ?? null,
    lostParts: side?.lostParts ?? [],
  };
}

function checkSides(notes: DayFileNotes, parts: AnimalParts, at: string, hangingGrams: number): void {
  const sides = parts.sides ?? [];
  for (const [index, { hand, weight }] of sides.entries()) {
    const place = `${at}.sides[${index}]`;
    if (sides.findIndex((side) => side.hand === hand) !== index)
      notes.error(`${place}.hand`, `The ${hand} side is listed already`);
    const alone = weight !== undefined && sides.filter((side) => side.weight).length === 1;
    if (alone && readingToGrams(weight) === hangingGrams) {
      notes.error(
        `${place}.weight`,
        'A side weighs less than its animal: this leaves nothing for the other one',
      );
    }
  }
}

export interface ReadAnimal {
  readonly animal: DayAnimal;
  readonly weighed: WeighedAnimal;
}

/** One animal of the file, with both of its sides. */
export function readAnimal(notes: DayFileNotes, parts: AnimalParts, index: number): ReadAnimal {
  const at = `animals[${index}]`;
  const animalId = parts.id ?? `animal-${index + 1}`;
  const carcassGrams = readingToGrams(parts.hanging);
  const species = entryOf(knownSpecies, parts.species);
  if (!species) {
    const known = Object.keys(knownSpecies);
    notes.error(
      `${at}.species`,
      `No such species is known.${maybeName(parts.species, known) || ` Known: ${known.join(', ')}.`}`,
    );
  }
  checkSides(notes, parts, at, carcassGrams);
  const entries = hands.map((hand) => sideEntry(parts, at, animalId, hand));
  const [left, right] = entries as [SideEntry, SideEntry];
  const sides = hands.map((hand, turn) => {
    const [mine, other] = turn === 0 ? [left, right] : [right, left];
    notes.place(`${at}.sides[${turn}]`, mine.at);
    if (!mine.weight) notes.place(`${at}.sides[${turn}].massMg`, `${at}.hanging`);
    if (!mine.listed) notes.place(`${at}.sides[${turn}].sideId`, `${at}.id`);
    return {
      sideId: mine.sideId,
      animalId,
      hand,
      massMg: massMg(carcassGrams, mine.weight, other.weight),
      carcassGrams,
      ribs: parts.ribs ?? species?.ribs.usual ?? 1,
      facts: parts.facts,
      lostParts: mine.lostParts,
    };
  });
  return {
    animal: { animalId, name: parts.name, speciesId: parts.species, lostItems: parts.lostItems, sides },
    weighed: {
      animalId,
      hanging: parts.hanging,
      hotOrCold: parts.hotOrCold,
      sides: entries.map(({ sideId, weight }) => ({ sideId, weight })),
    },
  };
}

/** The animal that a file means by its id or its name; undefined, and noted, when there is none or more than one. */
export function findAnimal(
  notes: DayFileNotes,
  animals: readonly DayAnimal[],
  wanted: string,
  at: string,
): DayAnimal | undefined {
  const byId = animals.find(({ animalId }) => animalId === wanted);
  if (byId) return byId;
  const byName = animals.filter(({ name }) => name === wanted);
  if (byName.length > 1) notes.error(at, `${byName.length} animals are called that: say which by its id`);
  if (byName.length === 0) {
    const known = animals.flatMap(({ animalId, name }) => [name, animalId]);
    notes.error(at, `No animal of the file has that id or name.${maybeName(wanted, known)}`);
  }
  return byName.length === 1 ? byName[0] : undefined;
}
