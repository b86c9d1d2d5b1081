import type { CuttingPlan, SidePlan } from '../cutting-plan.ts';
import type { DemandLine } from '../day.ts';
import { type DayIndex, entryOf } from './day-index.ts';
import type { Note } from './plan-rules.ts';

interface Taken {
  readonly line: DemandLine;
  readonly bulks: readonly string[];
  readonly grams: number;
}

function takenOf(index: DayIndex, plan: CuttingPlan): Taken[] {
  return plan.lines.flatMap((fill) => {
    const line = index.lines.get(fill.lineId);
    const species = line && entryOf(index.day.species, line.speciesId);
    const cut = species && entryOf(species.cuts, line.cut);
    if (!line || fill.bulkGrams === 0) return [];
    return [
      {
        line,
        bulks: (cut?.sources ?? []).filter((source) => source.from === 'bulk').map((source) => source.id),
        grams: fill.bulkGrams,
      },
    ];
  });
}

const bulkOf = (side: SidePlan, bulks: readonly string[]): number =>
  bulks.reduce((sum, bulk) => sum + (Object.hasOwn(side.bulkMg, bulk) ? (side.bulkMg[bulk] ?? 0) : 0), 0);

function mostOfOneAnimal(sides: readonly SidePlan[], bulks: readonly string[]): number {
  const byAnimal = new Map<string, number>();
  for (const side of sides)
    byAnimal.set(side.animalId, (byAnimal.get(side.animalId) ?? 0) + bulkOf(side, bulks));
  return Math.max(0, ...byAnimal.values());
}

/** What is open to a line: sides without a share, of its species, and of the animal or hand it wants. */
function openTo(index: DayIndex, plan: CuttingPlan, line: DemandLine): SidePlan[] {
  return plan.sides.filter((side) => {
    const known = index.sides.get(side.sideId);
    const wished =
      (line.onlyAnimal === undefined || side.animalId === line.onlyAnimal) &&
      (line.onlyHand === undefined || known?.side.hand === line.onlyHand);
    return side.shareId === null && known?.animal.speciesId === line.speciesId && wished;
  });
}

/**
 * Bulk is pooled for the day. Lines that draw on one pool, with the same wish for an animal or side or a narrower one,
 * may not take more together than the sides open to them give.
 */
export function checkPools(index: DayIndex, plan: CuttingPlan, note: Note): void {
  const taken = takenOf(index, plan);
  const pools = new Set<string>();
  for (const { line, bulks, grams } of taken) {
    const at = `lines[${line.lineId}].bulkGrams`;
    const sides = openTo(index, plan, line);
    if (line.sameAnimal && grams * 1000 > mostOfOneAnimal(sides, bulks))
      note('P18', at, `wants one animal and takes more than any one gives`);
    const pool = JSON.stringify([line.speciesId, bulks, line.onlyAnimal, line.onlyHand]);
    if (pools.has(pool)) continue;
    pools.add(pool);
    const sideIds = new Set(sides.map((side) => side.sideId));
    const within = taken.filter(
      (other) =>
        other.line.speciesId === line.speciesId &&
        other.bulks.every((bulk) => bulks.includes(bulk)) &&
        openTo(index, plan, other.line).every((side) => sideIds.has(side.sideId)),
    );
    const together = within.reduce((sum, other) => sum + other.grams, 0);
    const givenMg = sides.reduce((sum, side) => sum + bulkOf(side, bulks), 0);
    if (together * 1000 > givenMg)
      note(
        'P20',
        at,
        `lines take ${together} g of ${bulks.join(' or ')}, the sides open to them give ${Math.floor(givenMg / 1000)} g`,
      );
  }
}
