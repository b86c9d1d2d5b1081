import type { KitchenDay } from '../sausage/kitchen-day.ts';
import type { Recipe } from '../sausage/recipe.ts';
import type { TrimLot } from '../trim/trim-lot.ts';
import { leastOf } from './dense-simplex.ts';

const kg = 1_000_000;

/** A batch on its own: its recipe, and whose meat it is of. */
interface Slot {
  readonly recipe: Recipe;
  readonly owners: readonly (string | null)[];
}

/** One owner, or all who want the sausage and agreed. */
function ownersOf(day: KitchenDay, recipe: Recipe, lots: readonly TrimLot[]): (readonly (string | null)[])[] {
  const wanting = [
    ...new Set(
      day.promises.filter(({ recipeId }) => recipeId === recipe.recipeId).map(({ ownerId }) => ownerId),
    ),
  ];
  const agreed = wanting.filter(
    (owner) => owner !== null && lots.some(({ ownerId, mayPool }) => ownerId === owner && mayPool),
  );
  return [...wanting.map((owner) => [owner]), ...(agreed.length > 1 ? [agreed] : [])];
}

export interface BruteAnswer {
  /** worth of the sausage that is filled, minor units */
  readonly worth: number;
  readonly costMinor: number;
}

function subsets<T>(items: readonly T[]): T[][] {
  const [first, ...rest] = items;
  if (first === undefined) return [[]];
  return subsets(rest).flatMap((set) => [set, [first, ...set]]);
}

/** Every list of batches, each kind at most as often as the pool could fill it. */
function slotLists(kinds: readonly (Slot & { readonly most: number })[]): Slot[][] {
  return kinds.reduce<Slot[][]>(
    (lists, { most, ...slot }) =>
      lists.flatMap((list) =>
        Array.from({ length: most + 1 }, (_, count) => [
          ...list,
          ...Array.from({ length: count }, () => slot),
        ]),
      ),
    [[]],
  );
}

const age = (lot: TrimLot, date: string): number => (Date.parse(date) - Date.parse(lot.cutOn)) / 86_400_000;

function usable(slot: Slot, lot: TrimLot, date: string): boolean {
  const whose = slot.owners.includes(lot.ownerId) && (slot.owners.length === 1 || lot.mayPool);
  const kind = slot.recipe.meats.some((meat) => meat.kind === lot.kind);
  return whose && kind && age(lot, date) >= 0 && age(lot, date) <= slot.recipe.trimDaysMost;
}

/** Every batch has meat columns and promise columns of its own: nothing is added up that a bench would not add up. */
class BatchProgramme {
  readonly rows: { of: number[]; most: number }[] = [];
  readonly meat: { slot: number; lot: TrimLot; column: number }[] = [];
  readonly fill: { slot: number; promise: number; column: number }[] = [];
  columns = 0;

  constructor(day: KitchenDay, slots: readonly Slot[], lots: readonly TrimLot[]) {
    for (const [slot, entry] of slots.entries()) {
      for (const lot of lots)
        if (usable(entry, lot, day.date)) this.meat.push({ slot, lot, column: this.columns++ });
      for (const [promise, { recipeId, ownerId }] of day.promises.entries())
        if (recipeId === entry.recipe.recipeId && entry.owners.includes(ownerId))
          this.fill.push({ slot, promise, column: this.columns++ });
    }
    for (const lot of lots)
      this.atMost(lot.massMg / kg, (column) =>
        this.meat.some((entry) => entry.column === column && entry.lot === lot) ? 1 : 0,
      );
    for (const [promise, { massMg }] of day.promises.entries())
      this.atMost(massMg / kg, (column) =>
        this.fill.some((entry) => entry.column === column && entry.promise === promise) ? 1 : 0,
      );
    for (const [slot, entry] of slots.entries()) this.batch(day, slot, entry);
  }

  private atMost(most: number, of: (column: number) => number): void {
    this.rows.push({ of: Array.from({ length: this.columns }, (_, column) => of(column)), most });
  }

  private batch(day: KitchenDay, slot: number, { recipe, owners }: Slot): void {
    const inIt = new Map(
      this.meat.filter((entry) => entry.slot === slot).map(({ column, lot }) => [column, lot]),
    );
    const weigh = (most: number, value: (lot: TrimLot) => number): void =>
      this.atMost(most, (column) => {
        const lot = inIt.get(column);
        return lot ? value(lot) : 0;
      });
    weigh(recipe.batchMostMg / kg, () => 1);
    weigh(-recipe.batchLeastMg / kg, () => -1);
    weigh(0, ({ fatPpm }) => (fatPpm - recipe.fatMostPpm) / kg);
    weigh(0, ({ fatPpm }) => (recipe.fatLeastPpm - fatPpm) / kg);
    for (const { kind, leastPpm = 0, mostPpm = kg } of recipe.meats) {
      weigh(0, (lot) => leastPpm / kg - (lot.kind === kind ? 1 : 0));
      weigh(0, (lot) => (lot.kind === kind ? 1 : 0) - mostPpm / kg);
    }
    const perMeat = 1 + recipe.additions.reduce((sum, { ppmOfMeat }) => sum + ppmOfMeat / kg, 0);
    for (const owner of owners)
      this.atMost(0, (column) => {
        const lot = inIt.get(column);
        if (lot) return lot.ownerId === owner ? -perMeat : 0;
        const fill = this.fill.find((entry) => entry.column === column && entry.slot === slot);
        return fill && day.promises[fill.promise]?.ownerId === owner ? 1 : 0;
      });
  }

  /** Worth filled, negative, so that less is better. */
  worth(day: KitchenDay): number[] {
    return this.of((_, promise) =>
      promise === undefined ? 0 : -Math.max(1, day.promises[promise]?.priceMinorPerKg ?? 0),
    );
  }

  cost(day: KitchenDay, slots: readonly Slot[]): number[] {
    return this.of((meat) => {
      if (!meat) return 0;
      const additions = slots[meat.slot]?.recipe.additions ?? [];
      const spice = additions.reduce(
        (sum, { ppmOfMeat, costMinorPerKg }) => sum + (ppmOfMeat * costMinorPerKg) / kg,
        0,
      );
      return meat.lot.costMinorPerKg + spice - day.olderFirstMinorPerKgDay * age(meat.lot, day.date);
    });
  }

  private of(
    value: (meat: { slot: number; lot: TrimLot } | undefined, promise: number | undefined) => number,
  ): number[] {
    return Array.from({ length: this.columns }, (_, column) =>
      value(
        this.meat.find((entry) => entry.column === column),
        this.fill.find((entry) => entry.column === column)?.promise,
      ),
    );
  }
}

/** Every set of offers ground, every list of batches, and for each the best that can be made of it. For tiny days only. */
export function bruteForce(day: KitchenDay): BruteAnswer {
  const tried = subsets(day.offers).flatMap((ground) => {
    const lots = [...day.lots, ...ground.map(({ gives }) => gives)];
    const kinds = day.recipes.flatMap((recipe) =>
      ownersOf(day, recipe, lots).map((owners) => {
        const massMg = lots.reduce(
          (sum, lot) => sum + (usable({ recipe, owners }, lot, day.date) ? lot.massMg : 0),
          0,
        );
        return { recipe, owners, most: Math.floor(massMg / recipe.batchLeastMg) };
      }),
    );
    const fixed = ground.reduce((sum, { costMinor }) => sum + costMinor, 0);
    return slotLists(kinds).flatMap((slots) => {
      const programme = new BatchProgramme(day, slots, lots);
      const best = leastOf({ cost: programme.worth(day), rows: programme.rows });
      const labour = slots.reduce(
        (sum, { recipe }) => sum + (recipe.minutesPerBatch * day.labourMinorPerHour) / 60,
        0,
      );
      return best ? [{ programme, slots, worth: -best.value, fixed: fixed + labour }] : [];
    });
  });
  const worth = Math.max(...tried.map((entry) => entry.worth));
  const costs = tried
    .filter((entry) => entry.worth >= worth - 1e-6)
    .map(({ programme, slots, fixed }) => {
      const keep = { of: programme.worth(day), most: -worth + 1e-6 };
      const best = leastOf({ cost: programme.cost(day, slots), rows: [...programme.rows, keep] });
      return fixed + (best?.value ?? Number.POSITIVE_INFINITY);
    });
  return { worth, costMinor: Math.min(...costs) };
}
