import { entryOf } from './check-plan/day-index.ts';
import { listNames, ownerNames } from './cut-list/owners.ts';
import { type CutStep, sideSteps } from './cut-list/side-steps.ts';
import type { CuttingPlan } from './cutting-plan.ts';
import type { CuttingDay, DayAnimal } from './day.ts';
import { type ShownIn, weightText } from './measures.ts';

export interface SideCutList {
  readonly sideId: string;
  readonly hand: 'left' | 'right';
  readonly massMg: number;
  /** who has the whole side, null when it is cut for lines and the counter */
  readonly sharedBy: string | null;
  readonly minutes: number;
  readonly steps: readonly CutStep[];
}

export interface AnimalCutList {
  readonly animalId: string;
  readonly name: string;
  readonly sides: readonly SideCutList[];
  /** head, tongue, tail and the like, when the animal gives any */
  readonly singles: CutStep | null;
}

/** A day's work in the order of the bench, as data: the same for a printed sheet, a screen and a command line. */
export interface CutList {
  readonly dayId: string;
  readonly date: string;
  readonly animals: readonly AnimalCutList[];
}

interface Work {
  readonly day: CuttingDay;
  readonly plan: CuttingPlan;
  readonly shown: ShownIn;
}

function sidesOfAnimal({ day, plan, shown }: Work, animal: DayAnimal): SideCutList[] {
  const species = entryOf(day.species, animal.speciesId);
  const names = ownerNames(day);
  return animal.sides.flatMap((facts) => {
    const side = plan.sides.find(({ sideId }) => sideId === facts.sideId);
    if (!side || !species) return [];
    const steps = sideSteps({ species, facts, plan: side, names, shown });
    return [
      {
        sideId: side.sideId,
        hand: facts.hand,
        massMg: side.massMg,
        sharedBy: names.ofShare(side.shareId),
        minutes: side.minutes,
        steps,
      },
    ];
  });
}

function singlesOfAnimal({ day, plan, shown }: Work, animal: DayAnimal): CutStep | null {
  const names = ownerNames(day);
  const items = entryOf(day.species, animal.speciesId)?.items ?? {};
  const pieces = plan.singles
    .filter(({ animalId }) => animalId === animal.animalId)
    .map(({ pieceId, item, massMg, owner }) => ({
      pieceId,
      name: items[item]?.name ?? item,
      size: `about ${weightText(massMg, shown)}`,
      massMg,
      owner: names.of(owner),
    }));
  if (pieces.length === 0) return null;
  const forCounter = pieces.filter(({ owner }) => owner === null).length;
  const detail = `${pieces.length} pieces that belong to no side, ${forCounter} of them for the counter.`;
  return {
    sideId: null,
    order: 1,
    part: 'animal',
    action: 'Pieces of the animal',
    detail,
    pieces,
    to: listNames(pieces.map(({ owner }) => owner)),
  };
}

/**
 * What to do with every side of a day, step by step, from a plan that has passed `checkPlan`.
 * @param shown units for the texts; both metric and imperial when nothing is said
 */
export function cutList(day: CuttingDay, plan: CuttingPlan, shown: ShownIn = {}): CutList {
  const work = { day, plan, shown };
  return {
    dayId: day.dayId,
    date: day.date,
    animals: day.animals.map((animal) => ({
      animalId: animal.animalId,
      name: animal.name,
      sides: sidesOfAnimal(work, animal),
      singles: singlesOfAnimal(work, animal),
    })),
  };
}
