import { type NewAnimal as AnimalOnWire, valueAt } from '@flitchbook/contracts';
import { listFarms, type NewAnimal, type Tx } from '@flitchbook/db';
import type { DayAnimal } from '@flitchbook/plan';
import { done, type FieldFault, type Outcome, refused } from '../../refusals.ts';
import type { TravellingDay } from '../../solve/day-solver.ts';
import { checkAgainstDay } from '../check-against-day.ts';

/** The animal as the planner sees it. */
const dayAnimal = ({
  animalId,
  name,
  speciesId,
  lostItems,
  ribs,
  hanging,
  facts,
  sides,
}: NewAnimal): DayAnimal => ({
  animalId,
  name,
  speciesId,
  lostItems,
  sides: sides.map(({ sideId, hand, massMg, lostParts }) => ({
    sideId,
    animalId,
    hand,
    massMg,
    carcassGrams: hanging.grams,
    ribs,
    facts,
    lostParts,
  })),
});

const hands = ['left', 'right'] as const;

/** A fault of a side as the day has it, under the field that the request has for it. */
function asWritten(written: AnimalOnWire, { at, value, says }: FieldFault): FieldFault {
  const [, turn, field = '', rest = ''] = /^sides\[([01])\]\.(\w+)(.*)$/.exec(at) ?? [];
  const index = (written.sides ?? []).findIndex(({ hand }) => hand === hands[Number(turn)]);
  const inSide = (name: string): string => (index === -1 ? 'sides' : `sides[${index}].${name}`);
  const weighed = written.sides?.[index]?.weight !== undefined;
  const names: Readonly<Record<string, string>> = {
    carcassGrams: 'hanging',
    ribs: 'ribs',
    facts: `facts${rest}`,
    massMg: weighed ? inSide('weight') : 'hanging',
    lostParts: inSide(`lostParts${rest}`),
  };
  const place = names[field] ?? at;
  return { at: place, value: valueAt(written, place) ?? value, says };
}

/** Refused where the animal, put in its place among the day's, does not hold what `checkDay` asks. */
export function checkAnimal(day: TravellingDay, animal: NewAnimal, written: AnimalOnWire): Outcome<null> {
  const place = day.animals.findIndex(({ animalId }) => animalId === animal.animalId);
  const index = place === -1 ? day.animals.length : place;
  const animals = day.animals.toSpliced(index, 1, dayAnimal(animal));
  const found = checkAgainstDay(day, { ...day, animals }, [{ inDay: `animals[${index}]`, inRequest: '' }]);
  if (found.length === 0) return done(null);
  const faults = new Map(
    found.map((fault) => asWritten(written, fault)).map((fault) => [JSON.stringify(fault), fault]),
  );
  return refused('animal.invalid', 'The animal cannot be as it is written; errors says why.', {
    faults: [...faults.values()],
  });
}

/** Refused where the animal is said to come from a farm that the shop does not have. */
export async function checkFarm(tx: Tx, shopId: string, { farmId }: NewAnimal): Promise<Outcome<null>> {
  if (farmId === null) return done(null);
  const farms = await listFarms(tx, shopId);
  if (farms.some((farm) => farm.farmId === farmId)) return done(null);
  const fault = { at: 'farmId', value: farmId, says: 'The shop has no such farm.' };
  return refused('animal.invalid', 'The shop has no farm with this farmId.', { faults: [fault] });
}
