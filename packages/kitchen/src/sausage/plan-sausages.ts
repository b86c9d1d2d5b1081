import { splitExactly } from '@flitchbook/carcass';
import type { Highs } from 'highs';
import { loadEngine, minimise } from '../engine.ts';
import type { KitchenFault } from '../faults.ts';
import { shareOut, type TrimLot } from '../trim/trim-lot.ts';
import { checkKitchenDay } from './check-kitchen-day.ts';
import { explainShort } from './explain-short.ts';
import {
  circleKey,
  type KitchenDay,
  type PromiseFill,
  type SausageBatch,
  type SausagePlan,
} from './kitchen-day.ts';
import type { Recipe } from './recipe.ts';
import { type Brew, type SausageModel, sausageModel } from './sausage-model.ts';
import { splitDay } from './split-day.ts';

const kg = 1_000_000;

/** Less than this is a rounding of the engine and not meat: a hundredth of a gram. */
const crumbMg = 10;
/** A promise that lacks no more than this is filled: no scale in a kitchen shows less. */
const gramMg = 1000;

/** Missing worth that does not count as missing, minor units. */
const sameWorth = 1e-4;

type Draws = readonly { readonly lot: TrimLot; readonly massMg: number }[];

function batchOf(recipe: Recipe, brew: Brew, index: number, draws: Draws): SausageBatch {
  const meatMg = draws.reduce((sum, { massMg }) => sum + massMg, 0);
  const fatMg = draws.reduce((sum, { lot, massMg }) => sum + massMg * (lot.fatPpm / kg), 0);
  const additions = recipe.additions.map(({ name, ppmOfMeat }) => ({
    name,
    massMg: Math.round((meatMg * ppmOfMeat) / kg),
  }));
  const finishedMg = additions.reduce((sum, { massMg }) => sum + massMg, meatMg);
  return {
    batchId: `${recipe.recipeId}/${circleKey(brew.circle)}/${index + 1}`,
    recipeId: recipe.recipeId,
    circle: brew.circle,
    draws: draws.map(({ lot, massMg }) => ({ lotId: lot.lotId, massMg })),
    meatMg,
    fatPpm: Math.round((fatMg / meatMg) * kg),
    additions,
    finishedMg,
    minutes: recipe.minutesPerBatch,
    shares: shareOut(
      finishedMg,
      draws.map(({ lot, massMg }) => ({ ownerId: lot.ownerId, massMg })),
    ),
  };
}

/** Batches of one mixture, drawn from each lot in equal parts to the milligram. */
function batchesOf(brew: Brew, values: Float64Array): SausageBatch[] {
  const count = Math.round(values[brew.batches] ?? 0);
  if (count === 0) return [];
  const even = Array.from({ length: count }, () => 1);
  const parts = brew.draws.map(({ lot, column }) => {
    const massMg = Math.min(lot.massMg, Math.floor((values[column] ?? 0) * kg));
    return { lot, masses: splitExactly(massMg < crumbMg ? 0 : massMg, even) };
  });
  return even.map((_, index) =>
    batchOf(
      brew.recipe,
      brew,
      index,
      parts
        .map(({ lot, masses }) => ({ lot, massMg: masses[index] ?? 0 }))
        .filter(({ massMg }) => massMg > 0),
    ),
  );
}

function fillsOf(day: KitchenDay, filled: ReadonlyMap<string, number>): PromiseFill[] {
  return day.promises.map((promise) => {
    const found = filled.get(promise.promiseId) ?? 0;
    const filledMg = promise.massMg - found <= gramMg ? promise.massMg : found;
    const recipe = day.recipes.find(({ recipeId }) => recipeId === promise.recipeId);
    const missing = promise.massMg - filledMg;
    const says = missing === 0 || !recipe ? '' : explainShort(promise, recipe, missing, day);
    return { promiseId: promise.promiseId, askedMg: promise.massMg, filledMg, says };
  });
}

function leftOf(
  day: KitchenDay,
  batches: readonly SausageBatch[],
  ground: readonly string[],
): SausagePlan['left'] {
  const lots = [
    ...day.lots,
    ...day.offers.filter(({ offerId }) => ground.includes(offerId)).map(({ gives }) => gives),
  ];
  const drawn = new Map<string, number>();
  for (const { lotId, massMg } of batches.flatMap(({ draws }) => draws))
    drawn.set(lotId, (drawn.get(lotId) ?? 0) + massMg);
  return lots.map(({ lotId, massMg }) => ({ lotId, massMg: massMg - (drawn.get(lotId) ?? 0) }));
}

/** Trim, additions, labour and what was ground; not the nudge that takes the oldest first. */
function costOf(day: KitchenDay, batches: readonly SausageBatch[], ground: readonly string[]): number {
  const lots = new Map([...day.lots, ...day.offers.map(({ gives }) => gives)].map((lot) => [lot.lotId, lot]));
  const offered = day.offers.filter(({ offerId }) => ground.includes(offerId));
  const batchCost = ({ draws, additions, recipeId, minutes }: SausageBatch): number => {
    const recipe = day.recipes.find((entry) => entry.recipeId === recipeId);
    const meat = draws.reduce(
      (sum, { lotId, massMg }) => sum + (massMg / kg) * (lots.get(lotId)?.costMinorPerKg ?? 0),
      0,
    );
    const spice = additions.reduce(
      (sum, { massMg }, index) => sum + (massMg / kg) * (recipe?.additions[index]?.costMinorPerKg ?? 0),
      0,
    );
    return meat + spice + (minutes * day.labourMinorPerHour) / 60;
  };
  const made = batches.reduce((sum, batch) => sum + batchCost(batch), 0);
  return Math.round(offered.reduce((sum, { costMinor }) => sum + costMinor, made));
}

interface Made {
  readonly batches: readonly SausageBatch[];
  readonly filled: ReadonlyMap<string, number>;
  readonly ground: readonly string[];
  readonly proven: boolean;
}

const nothing: Made = { batches: [], filled: new Map(), ground: [], proven: true };

function decode({ brews, offers }: SausageModel, values: Float64Array, proven: boolean): Made {
  const filled = new Map<string, number>();
  for (const { promise, column } of brews.flatMap(({ fills }) => fills))
    filled.set(
      promise.promiseId,
      (filled.get(promise.promiseId) ?? 0) + Math.round((values[column] ?? 0) * kg),
    );
  const ground = offers.filter(({ column }) => (values[column] ?? 0) > 0.5).map(({ offer }) => offer.offerId);
  return { batches: brews.flatMap((brew) => batchesOf(brew, values)), filled, ground, proven };
}

/** One day whose meat may meet: filled as well as can be, then at least cost. */
function solve(highs: Highs, day: KitchenDay, seconds: number): Made {
  const model = sausageModel(day);
  if (model.brews.length === 0) return nothing;
  const { programme, missed, cost } = model;
  const filled = minimise(highs, programme, missed, seconds / 2);
  if (filled.values.length === 0) return { ...nothing, proven: false };
  const keep = missed.flatMap((worth, column) => (worth === 0 ? [] : [[column, worth] as const]));
  programme.row(Number.NEGATIVE_INFINITY, filled.objective + sameWorth, keep);
  const cheapest = minimise(highs, programme, cost, seconds / 2, filled.values);
  const proven = filled.status === 'optimal' && cheapest.status === 'optimal';
  return decode(model, cheapest.values.length > 0 ? cheapest.values : filled.values, proven);
}

/**
 * Which batches of what trim: first as much of what was promised as can be made, by its worth; then at least cost. Trim
 * is mixed only as its owners agreed.
 * @param seconds for all of it; when they are up the plan is the best that was found, and not proven
 * @returns the plan, or what is wrong with the day
 */
export async function planSausages(
  day: KitchenDay,
  seconds = 10,
): Promise<SausagePlan | { readonly faults: readonly KitchenFault[] }> {
  const faults = checkKitchenDay(day);
  if (faults.length > 0) return { faults };
  const highs = await loadEngine();
  const days = splitDay(day);
  const made = days.map((part) => solve(highs, part, seconds / days.length));
  const batches = made.flatMap((part) => part.batches);
  const ground = made.flatMap((part) => part.ground);
  return {
    date: day.date,
    batches,
    fills: fillsOf(day, new Map(made.flatMap((part) => [...part.filled]))),
    ground,
    left: leftOf(day, batches, ground),
    costMinor: costOf(day, batches, ground),
    proven: made.every((part) => part.proven),
  };
}

/** A way to fill what the pool alone can't: what to grind, and what it costs more than the plan without. */
export interface GrindChoice {
  readonly offerIds: readonly string[];
  readonly names: readonly string[];
  /** sausage still missing */
  readonly missingMg: number;
  readonly extraMinor: number;
}

const missingOf = ({ fills }: SausagePlan): number =>
  fills.reduce((sum, { askedMg, filledMg }) => sum + askedMg - filledMg, 0);

/**
 * What could be ground when the pool is short: the cheapest mixture of all offers, and each offer alone that helps. The
 * butcher chooses; nothing is ground by this.
 */
export async function grindChoices(day: KitchenDay, plan: SausagePlan, seconds = 10): Promise<GrindChoice[]> {
  const short = missingOf(plan);
  if (short === 0) return [];
  const sets = [day.offers, ...day.offers.map((offer) => [offer])];
  const choices: GrindChoice[] = [];
  for (const offers of sets) {
    const tried = await planSausages({ ...day, offers }, seconds / sets.length);
    if ('faults' in tried || tried.ground.length === 0 || missingOf(tried) >= short) continue;
    const known = choices.some(({ offerIds }) => offerIds.join() === tried.ground.join());
    if (known) continue;
    choices.push({
      offerIds: tried.ground,
      names: day.offers.filter(({ offerId }) => tried.ground.includes(offerId)).map(({ name }) => name),
      missingMg: missingOf(tried),
      extraMinor: tried.costMinor - plan.costMinor,
    });
  }
  return choices.sort((a, b) => a.missingMg - b.missingMg || a.extraMinor - b.extraMinor);
}
