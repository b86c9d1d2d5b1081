import type { SideFacts, Species } from '@flitchbook/carcass';
import type { CarcassShare, CuttingDay, DayAnimal, DemandLine } from '../day.ts';

export interface DaySide {
  readonly side: SideFacts;
  readonly animal: DayAnimal;
  readonly species: Species;
}

/** A day by its ids. Sides and animals of an unknown species are left out. */
export interface DayIndex {
  readonly day: CuttingDay;
  readonly sides: ReadonlyMap<string, DaySide>;
  readonly animals: ReadonlyMap<string, { readonly animal: DayAnimal; readonly species: Species }>;
  readonly lines: ReadonlyMap<string, DemandLine>;
  readonly shares: ReadonlyMap<string, CarcassShare>;
}

/** An entry of a table by its own key: `constructor` is not one. */
export const entryOf = <T>(table: Readonly<Record<string, T>>, key: string): T | undefined =>
  Object.hasOwn(table, key) ? table[key] : undefined;

export function indexDay(day: CuttingDay): DayIndex {
  const animals = new Map(
    day.animals.flatMap((animal) => {
      const species = entryOf(day.species, animal.speciesId);
      return species ? [[animal.animalId, { animal, species }] as const] : [];
    }),
  );
  const sides = [...animals.values()].flatMap(({ animal, species }) =>
    animal.sides.map((side) => [side.sideId, { side, animal, species }] as const),
  );
  return {
    day,
    animals,
    sides: new Map(sides),
    lines: new Map(day.lines.map((line) => [line.lineId, line])),
    shares: new Map(day.shares.map((share) => [share.shareId, share])),
  };
}
