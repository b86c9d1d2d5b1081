import type { Species } from '@flitchbook/carcass';
import type { CuttingPlan, DemandLine } from '@flitchbook/plan';

/** Loose meat, fat, bone or skin of one kind. Milligrams. */
interface BulkTotal {
  readonly bulkId: string;
  readonly name: string;
  /** of sides the shop keeps */
  readonly shopMg: number;
  /** of it, taken by orders for loose meat */
  readonly orderedMg: number;
  /** of sides that customers own: goes home with them unless they leave it */
  readonly ownersMg: number;
}

/** What nobody has asked for, by stock or item. */
export interface LeftOver {
  readonly id: string;
  readonly name: string;
  readonly kind: 'stretch' | 'item';
  readonly count: number;
  /** length of stretches, 0 for items */
  readonly lengthUm: number;
  readonly massMg: number;
}

export interface Totals {
  readonly bulks: readonly BulkTotal[];
  readonly left: readonly LeftOver[];
  /** ends of bars too thin to sell as a slice */
  readonly offcutMg: number;
  readonly minutes: number;
}

type SpeciesOf = (animalId: string) => Species | undefined;

interface Mutable<T> {
  entry: T;
}

function addLeft(into: Map<string, Mutable<LeftOver>>, more: LeftOver): void {
  const key = `${more.kind}/${more.id}`;
  const before = into.get(key)?.entry;
  const entry = before
    ? {
        ...before,
        count: before.count + more.count,
        lengthUm: before.lengthUm + more.lengthUm,
        massMg: before.massMg + more.massMg,
      }
    : more;
  into.set(key, { entry });
}

/** Ends thinner than this make no slice for the counter (three eighths of an inch: common practice, no source). */
const sliceUm = 9_525;

function collectLeft(plan: CuttingPlan, speciesOf: SpeciesOf): LeftOver[] {
  const left = new Map<string, Mutable<LeftOver>>();
  const addItem = (species: Species | undefined, id: string, massMg: number): void =>
    addLeft(left, { id, name: species?.items[id]?.name ?? id, kind: 'item', count: 1, lengthUm: 0, massMg });
  for (const side of plan.sides) {
    if (side.shareId !== null) continue;
    const species = speciesOf(side.animalId);
    for (const { item, owner, massMg } of side.items) if (owner === null) addItem(species, item, massMg);
    for (const { stock, freeUm, freeMg } of side.bars.flatMap((bar) => bar.runs)) {
      if (freeUm < sliceUm) continue;
      const name = species?.stocks[stock]?.name ?? stock;
      addLeft(left, { id: stock, name, kind: 'stretch', count: 1, lengthUm: freeUm, massMg: freeMg });
    }
  }
  for (const { animalId, item, owner, massMg } of plan.singles) {
    if (owner === null) addItem(speciesOf(animalId), item, massMg);
  }
  return [...left.values()].map(({ entry }) => entry).sort((one, other) => other.massMg - one.massMg);
}

function offcutsOf(plan: CuttingPlan): number {
  const runs = plan.sides
    .filter(({ shareId }) => shareId === null)
    .flatMap(({ bars }) => bars.flatMap((bar) => bar.runs));
  return runs.reduce((sum, { freeUm, freeMg }) => sum + (freeUm < sliceUm ? freeMg : 0), 0);
}

function bulkOfLine(
  line: DemandLine | undefined,
  species: Readonly<Record<string, Species>>,
): string | undefined {
  const sources = line ? species[line.speciesId]?.cuts[line.cut]?.sources : undefined;
  return sources?.find((source) => source.from === 'bulk')?.id;
}

interface TotalsInput {
  readonly plan: CuttingPlan;
  readonly lines: readonly DemandLine[];
  readonly species: Readonly<Record<string, Species>>;
  readonly speciesOf: SpeciesOf;
}

function collectBulks({ plan, lines, species, speciesOf }: TotalsInput): BulkTotal[] {
  const totals = new Map<string, Mutable<BulkTotal>>();
  const add = (bulkId: string, name: string, more: Partial<BulkTotal>): void => {
    const before = totals.get(bulkId)?.entry ?? { bulkId, name, shopMg: 0, orderedMg: 0, ownersMg: 0 };
    const entry = {
      ...before,
      shopMg: before.shopMg + (more.shopMg ?? 0),
      orderedMg: before.orderedMg + (more.orderedMg ?? 0),
      ownersMg: before.ownersMg + (more.ownersMg ?? 0),
    };
    totals.set(bulkId, { entry });
  };
  // In the order of the species' own list, so that leaf fat and hard back fat stand apart on every list.
  for (const side of plan.sides) {
    for (const { id, name } of Object.values(speciesOf(side.animalId)?.bulks ?? {})) {
      const mg = side.bulkMg[id] ?? 0;
      add(id, name, side.shareId === null ? { shopMg: mg } : { ownersMg: mg });
    }
  }
  for (const { lineId, bulkGrams } of plan.lines) {
    const line = lines.find((candidate) => candidate.lineId === lineId);
    const bulkId = bulkOfLine(line, species);
    if (bulkId !== undefined && totals.has(bulkId)) add(bulkId, '', { orderedMg: bulkGrams * 1000 });
  }
  return [...totals.values()]
    .map(({ entry }) => entry)
    .filter(({ shopMg, ownersMg }) => shopMg + ownersMg > 0);
}

/** Trim and fat by kind, what is left for the counter, and the minutes of bench work. */
export function totalsOf(input: TotalsInput): Totals {
  return {
    bulks: collectBulks(input),
    left: collectLeft(input.plan, input.speciesOf),
    offcutMg: offcutsOf(input.plan),
    minutes: Math.round(input.plan.sides.reduce((sum, { minutes }) => sum + minutes, 0)),
  };
}
