import type { Incumbent } from './improve.ts';
import type { Search } from './price-out.ts';
import type { Decision, Problem, ShareChoice, Unit, UnitClass, UnitDecision } from './problem.ts';
import { shareDecision } from './share-way.ts';

/** Units of each class that nothing has been decided for. */
class FreeUnits {
  readonly #free: Unit[][];

  constructor(problem: Problem) {
    this.#free = problem.classes.map((group) => [...group.units]);
  }

  take(classIndex: number, animalId?: string): Unit {
    const queue = this.#free[classIndex] as Unit[];
    const at = animalId === undefined ? 0 : queue.findIndex((unit) => unit.animalId === animalId);
    const [unit] = queue.splice(at, 1);
    if (!unit) throw new Error(`class ${classIndex} has no unit left`);
    return unit;
  }

  /** First animal that still has every unit the share takes. */
  animalFor({ takes, animalIds }: ShareChoice): string | undefined {
    const has = (animalId: string, classIndex: number): number =>
      (this.#free[classIndex] as Unit[]).filter((unit) => unit.animalId === animalId).length;
    return animalIds.find((animalId) =>
      takes.every((index) => has(animalId, index) >= takes.filter((other) => other === index).length),
    );
  }
}

/** Whole animals first: halves fit in anywhere. */
function placeShares(problem: Problem, counts: readonly number[], free: FreeUnits): UnitDecision[] {
  const order = problem.shares
    .map((_, at) => at)
    .sort(
      (left, right) => (problem.shares[right]?.takes.length ?? 0) - (problem.shares[left]?.takes.length ?? 0),
    );
  return order.flatMap((at) => {
    const choice = problem.shares[at] as ShareChoice;
    return Array.from({ length: counts[at] ?? 0 }).flatMap(() => {
      const animalId = free.animalFor(choice);
      return choice.takes.map((index) =>
        shareDecision(free.take(index, animalId), problem.classes[index] as UnitClass, choice.share),
      );
    });
  });
}

/** Hands the ways in use to the units of their classes, in the order of the day. */
export function readColumns({ problem, master }: Search, incumbent: Incumbent): Decision {
  const free = new FreeUnits(problem);
  const units = placeShares(problem, master.shareCounts(incumbent.values), free);
  incumbent.uses.forEach((count, at) => {
    const column = master.columns[at] as (typeof master.columns)[number];
    for (let nth = 0; nth < count; nth++) {
      const unit = free.take(column.classIndex);
      units.push({
        unit,
        classIndex: column.classIndex,
        share: null,
        choices: column.choices,
        pieces: column.pieces,
        labels: column.labels,
      });
    }
  });
  const order = new Map(
    problem.day.animals
      .flatMap((animal) => [...animal.sides.map((side) => side.sideId), animal.animalId])
      .map((unitId, at) => [unitId, at] as const),
  );
  units.sort((left, right) => (order.get(left.unit.unitId) ?? 0) - (order.get(right.unit.unitId) ?? 0));
  return { units, assignment: master.readMarket(incumbent.values) };
}
