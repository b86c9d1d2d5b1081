import { daysFromTo } from '../dates.ts';
import { Programme } from '../engine.ts';
import type { TrimLot } from '../trim/trim-lot.ts';
import type { Circle, GrindOffer, KitchenDay, SausagePromise } from './kitchen-day.ts';
import { type Recipe, yieldPpm } from './recipe.ts';
import { circlesFor, mayFill, mayJoin } from './who-may-mix.ts';

const kg = 1_000_000;

/**
 * All batches of one recipe for one circle. They need no columns of their own: batches of one mixture keep every share
 * and every fat range that the whole keeps, so a number of batches and the meat in them say it all.
 */
export interface Brew {
  readonly recipe: Recipe;
  readonly circle: Circle;
  /** column of the number of batches */
  readonly batches: number;
  /** column of the kilograms drawn from each lot */
  readonly draws: readonly { readonly lot: TrimLot; readonly column: number }[];
  /** column of the kilograms of sausage that each promise gets */
  readonly fills: readonly { readonly promise: SausagePromise; readonly column: number }[];
}

export interface SausageModel {
  readonly programme: Programme;
  readonly brews: readonly Brew[];
  readonly offers: readonly { readonly offer: GrindOffer; readonly column: number }[];
  /** what missing sausage is worth, negative for each kilogram filled */
  readonly missed: readonly number[];
  readonly cost: readonly number[];
}

/** Lots of a kind the recipe takes, young enough, and of the circle. */
export function lotsFor(recipe: Recipe, circle: Circle, lots: readonly TrimLot[], date: string): TrimLot[] {
  return lots.filter(({ kind, cutOn, massMg, ...rest }) => {
    const age = daysFromTo(cutOn, date);
    const fits = recipe.meats.some((meat) => meat.kind === kind) && massMg > 0;
    return (
      fits && age >= 0 && age <= recipe.trimDaysMost && mayJoin({ kind, cutOn, massMg, ...rest }, circle)
    );
  });
}

/** Minor units that a kilogram of meat brings with it in additions. */
const additionsPerKg = (recipe: Recipe): number =>
  recipe.additions.reduce((sum, { ppmOfMeat, costMinorPerKg }) => sum + (ppmOfMeat / kg) * costMinorPerKg, 0);

/**
 * No more meat than is asked for is worth its cost, or than one batch takes at least: less of the same mixture keeps
 * every share. Not so for a pool, where one owner's fat may be needed for another's lean.
 */
function meatAtMost(recipe: Recipe, circle: Circle, asked: readonly SausagePromise[]): number {
  if (circle.of === 'pool') return Number.POSITIVE_INFINITY;
  const askedMg = asked.reduce((sum, { massMg }) => sum + massMg, 0);
  return Math.max(recipe.batchLeastMg, Math.ceil((askedMg * kg) / yieldPpm(recipe)));
}

function batchesAtMost(
  recipe: Recipe,
  circle: Circle,
  usable: readonly TrimLot[],
  asked: readonly SausagePromise[],
): number {
  const there = usable.reduce((sum, { massMg }) => sum + massMg, 0);
  const wanted = Math.ceil(meatAtMost(recipe, circle, asked) / recipe.batchMostMg);
  return Math.min(Math.floor(there / recipe.batchLeastMg), wanted);
}

class ModelMaker {
  readonly programme = new Programme();
  readonly missed: number[] = [];
  readonly cost: number[] = [];
  readonly brews: Brew[] = [];

  private readonly day: KitchenDay;

  constructor(day: KitchenDay) {
    this.day = day;
  }

  column(upper: number, missed: number, cost: number, whole = false): number {
    this.missed.push(missed);
    this.cost.push(cost);
    return this.programme.column(0, upper, whole);
  }

  brew(recipe: Recipe, circle: Circle, lots: readonly TrimLot[], promises: readonly SausagePromise[]): void {
    const { day } = this;
    const usable = lotsFor(recipe, circle, lots, day.date);
    const asked = promises.filter((promise) => mayFill(promise, circle));
    const most = batchesAtMost(recipe, circle, usable, asked);
    if (most === 0) return;
    const additions = additionsPerKg(recipe);
    const batches = this.column(most, 0, (recipe.minutesPerBatch * day.labourMinorPerHour) / 60, true);
    const draws = usable.map((lot) => {
      const older = Math.min(
        lot.costMinorPerKg,
        day.olderFirstMinorPerKgDay * daysFromTo(lot.cutOn, day.date),
      );
      return { lot, column: this.column(lot.massMg / kg, 0, lot.costMinorPerKg + additions - older) };
    });
    const fills = asked.map((promise) => ({
      promise,
      column: this.column(promise.massMg / kg, -Math.max(1, promise.priceMinorPerKg), 0),
    }));
    const made: Brew = { recipe, circle, batches, draws, fills };
    this.keepSizes(made);
    this.keepShares(made);
    this.shareOut(made);
    this.brews.push(made);
  }

  private keepSizes({ recipe, circle, batches, draws, fills }: Brew): void {
    const meat = draws.map(({ column }) => [column, 1] as const);
    const most = meatAtMost(
      recipe,
      circle,
      fills.map(({ promise }) => promise),
    );
    this.programme.row(0, Number.POSITIVE_INFINITY, [...meat, [batches, -recipe.batchLeastMg / kg]]);
    this.programme.row(Number.NEGATIVE_INFINITY, 0, [
      ...meat,
      [batches, -Math.min(recipe.batchMostMg, most) / kg],
    ]);
    // Nothing is filled without a batch: implied by the rest, and a much closer bound.
    for (const { promise, column } of fills)
      this.programme.row(Number.NEGATIVE_INFINITY, 0, [
        [column, 1],
        [batches, -promise.massMg / kg],
      ]);
  }

  /** Fat and kinds, as shares of the meat: each row is a weighted sum that must not fall below, or rise above, 0. */
  private keepShares({ recipe, draws }: Brew): void {
    const least = (excess: (lot: TrimLot) => number): void =>
      this.programme.row(
        0,
        Number.POSITIVE_INFINITY,
        draws.map(({ lot, column }) => [column, excess(lot) / kg] as const),
      );
    least(({ fatPpm }) => fatPpm - recipe.fatLeastPpm);
    least(({ fatPpm }) => recipe.fatMostPpm - fatPpm);
    for (const { kind, leastPpm = 0, mostPpm = kg } of recipe.meats) {
      const isKind = (lot: TrimLot): number => (lot.kind === kind ? kg : 0);
      if (leastPpm > 0) least((lot) => isKind(lot) - leastPpm);
      if (mostPpm < kg) least((lot) => mostPpm - isKind(lot));
    }
  }

  /** What is made covers what is promised; of a pool each owner gets what his own trim made. */
  private shareOut({ recipe, circle, draws, fills }: Brew): void {
    const perMeat = yieldPpm(recipe) / kg;
    const owners =
      circle.of === 'pool' ? [...new Set(fills.map(({ promise }) => promise.ownerId))] : [undefined];
    for (const owner of owners) {
      const own = draws.filter(({ lot }) => owner === undefined || lot.ownerId === owner);
      const asked = fills.filter(({ promise }) => owner === undefined || promise.ownerId === owner);
      this.programme.row(0, Number.POSITIVE_INFINITY, [
        ...own.map(({ column }) => [column, perMeat] as const),
        ...asked.map(({ column }) => [column, -1] as const),
      ]);
    }
  }
}

/** The day as a programme: which batches of what trim, and which offers are ground for it. */
export function sausageModel(day: KitchenDay): SausageModel {
  const maker = new ModelMaker(day);
  const lots = [...day.lots, ...day.offers.map(({ gives }) => gives)];
  for (const recipe of day.recipes) {
    const promises = day.promises.filter(({ recipeId }) => recipeId === recipe.recipeId);
    for (const circle of circlesFor(promises, lots)) maker.brew(recipe, circle, lots, promises);
  }
  const { programme, brews } = maker;
  const offers = day.offers.map((offer) => ({ offer, column: maker.column(1, 0, offer.costMinor, true) }));
  for (const lot of lots) {
    const draws = brews.flatMap((brew) => brew.draws.filter((draw) => draw.lot === lot));
    const offered = offers.find(({ offer }) => offer.gives === lot);
    const entries = draws.map(({ column }) => [column, 1] as const);
    if (offered) programme.row(Number.NEGATIVE_INFINITY, 0, [...entries, [offered.column, -lot.massMg / kg]]);
    else programme.row(Number.NEGATIVE_INFINITY, lot.massMg / kg, entries);
  }
  for (const promise of day.promises) {
    const fills = brews.flatMap((brew) => brew.fills.filter((fill) => fill.promise === promise));
    if (fills.length > 1)
      programme.row(
        Number.NEGATIVE_INFINITY,
        promise.massMg / kg,
        fills.map(({ column }) => [column, 1] as const),
      );
  }
  return { programme, brews, offers, missed: maker.missed, cost: maker.cost };
}
