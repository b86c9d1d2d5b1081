import type { CuttingPlan, LineFill, Owner, Shortfall } from '../cutting-plan.ts';
import { askedGrams, askedPieces, type CuttingDay, type DayAnimal } from '../day.ts';
import { must, SideLayer, type SideWish } from './lay-side.ts';

export interface PlanWish {
  readonly sides?: Readonly<Record<string, SideWish>>;
  /** "animal/item" to owner */
  readonly singles?: Readonly<Record<string, Owner>>;
  readonly bulkGrams?: Readonly<Record<string, number>>;
}

const scarce: Shortfall = {
  kind: 'scarce',
  says: 'The day has fewer.',
  withLines: [],
  withShares: [],
  withLocks: [],
  mostPossible: 0,
};

function singlesOf(day: CuttingDay, animal: DayAnimal, wish: PlanWish): CuttingPlan['singles'] {
  const species = must(day.species[animal.speciesId], animal.speciesId);
  const facts = animal.sides[0]?.facts ?? [];
  return species.singles
    .filter(
      ({ item, needs }) =>
        !animal.lostItems.includes(item) && (needs ?? []).every((need) => facts.includes(need)),
    )
    .map(({ item, meanGrams }) => ({
      pieceId: `${animal.animalId}/${item}`,
      animalId: animal.animalId,
      item,
      massMg: meanGrams * 1000,
      owner: wish.singles?.[`${animal.animalId}/${item}`] ?? null,
    }));
}

function fillsOf(day: CuttingDay, plan: Pick<CuttingPlan, 'sides' | 'singles'>, wish: PlanWish): LineFill[] {
  const spans = plan.sides.flatMap(({ bars }) =>
    bars.flatMap(({ runs }) => runs.flatMap(({ pieces }) => pieces)),
  );
  const pieces = [...plan.sides.flatMap(({ items }) => items), ...spans, ...plan.singles];
  return day.lines.map((line) => {
    const pieceIds = pieces
      .filter(({ owner }) => owner && 'lineId' in owner && owner.lineId === line.lineId)
      .map(({ pieceId }) => pieceId);
    const asked = askedPieces(line) + askedGrams(line);
    const bulkGrams = wish.bulkGrams?.[line.lineId] ?? 0;
    const filled = pieceIds.length + bulkGrams;
    return {
      lineId: line.lineId,
      asked,
      filled,
      pieceIds,
      bulkGrams,
      shortfall: filled < asked ? scarce : null,
    };
  });
}

/** A plan laid by hand for a test. It keeps every rule as long as the wishes do. */
export function layPlan(day: CuttingDay, wish: PlanWish = {}): CuttingPlan {
  const sides = day.animals.flatMap((animal) =>
    animal.sides.map((side) =>
      new SideLayer(
        day,
        must(day.species[animal.speciesId], animal.speciesId),
        side,
        wish.sides?.[side.sideId] ?? {},
      ).lay(),
    ),
  );
  const singles = day.animals.flatMap((animal) => singlesOf(day, animal, wish));
  const shares = day.shares.map(({ shareId }) => {
    const sideIds = sides.filter((side) => side.shareId === shareId).map(({ sideId }) => sideId);
    return { shareId, sideIds, shortfall: sideIds.length === 0 ? scarce : null };
  });
  return {
    dayId: day.dayId,
    sides,
    singles,
    lines: fillsOf(day, { sides, singles }, wish),
    shares,
    proof: null,
  };
}
