import type { TrimLot } from '../trim/trim-lot.ts';
import type { KitchenDay, SausageBatch, SausagePlan } from './kitchen-day.ts';
import type { Recipe } from './recipe.ts';
import { lotsFor } from './sausage-model.ts';
import { mayFill, mixFault } from './who-may-mix.ts';

const whole = 1_000_000;

/** No scale in a kitchen shows less: what one batch may be off by rounding. */
const gramMg = 1000;
/** A thousandth of a percent of fat, which no test of meat shows. */
const fatSlackPpm = 10;

export interface SausageFault {
  readonly rule: `K${1 | 2 | 3 | 4 | 5 | 6 | 7}`;
  readonly at: string;
  readonly says: string;
}

type Say = (rule: SausageFault['rule'], at: string, says: string) => void;
interface Drawn {
  readonly lot: TrimLot;
  readonly massMg: number;
}

function checkBatch(
  say: Say,
  recipe: Recipe,
  batch: SausageBatch,
  drawn: readonly Drawn[],
  day: KitchenDay,
): void {
  const at = batch.batchId;
  const meatMg = drawn.reduce((sum, { massMg }) => sum + massMg, 0);
  const fatMg = drawn.reduce((sum, { lot, massMg }) => sum + (massMg * lot.fatPpm) / whole, 0);
  const fatPpm = (fatMg / meatMg) * whole;
  if (fatPpm < recipe.fatLeastPpm - fatSlackPpm || fatPpm > recipe.fatMostPpm + fatSlackPpm)
    say(
      'K2',
      at,
      `has ${Math.round(fatPpm)} millionths of fat, outside ${recipe.fatLeastPpm} to ${recipe.fatMostPpm}`,
    );
  if (meatMg < recipe.batchLeastMg - gramMg || meatMg > recipe.batchMostMg + gramMg)
    say('K3', at, `holds ${meatMg} mg of meat, outside ${recipe.batchLeastMg} to ${recipe.batchMostMg}`);
  for (const { kind, leastPpm = 0, mostPpm = whole } of recipe.meats) {
    const kindMg = drawn.reduce((sum, { lot, massMg }) => sum + (lot.kind === kind ? massMg : 0), 0);
    const least = (meatMg * leastPpm) / whole - gramMg;
    const most = (meatMg * mostPpm) / whole + gramMg;
    if (kindMg < least || kindMg > most) say('K4', at, `holds ${kindMg} mg of ${kind}, outside its share`);
  }
  const mixed = mixFault(
    drawn.map(({ lot }) => lot),
    batch.circle,
  );
  if (mixed) say('K5', at, mixed);
  const usable = lotsFor(
    recipe,
    batch.circle,
    drawn.map(({ lot }) => lot),
    day.date,
  );
  if (!mixed && usable.length < drawn.length)
    say('K7', at, 'holds trim that is too old, or of a kind that the recipe does not take');
  const finished = batch.additions.reduce((sum, { massMg }) => sum + massMg, meatMg);
  const shared = batch.shares.reduce((sum, { massMg }) => sum + massMg, 0);
  if (finished !== batch.finishedMg || meatMg !== batch.meatMg || shared !== finished)
    say('K6', at, 'does not add up: meat, additions and shares make what is finished');
}

/** Sausage that a recipe makes for promises, against what they get; of a pool, owner by owner. */
function checkFills(say: Say, day: KitchenDay, plan: SausagePlan): void {
  const asked = new Map(day.promises.map((promise) => [promise.promiseId, promise]));
  const given = new Map<string, number>();
  const made = new Map<string, number>();
  const add = (sums: Map<string, number>, key: string, mg: number): void =>
    void sums.set(key, (sums.get(key) ?? 0) + mg);
  for (const fill of plan.fills) {
    const promise = asked.get(fill.promiseId);
    if (!promise || fill.filledMg > promise.massMg || fill.filledMg < 0)
      say('K6', fill.promiseId, 'gets more than was promised, or was never promised');
    if (promise) add(given, `${promise.recipeId}/${promise.ownerId}`, fill.filledMg);
  }
  for (const { recipeId, shares } of plan.batches)
    for (const { ownerId, massMg } of shares) add(made, `${recipeId}/${ownerId}`, massMg);
  for (const [key, filledMg] of given)
    if (filledMg > (made.get(key) ?? 0) + gramMg * (plan.batches.length + 1))
      say('K6', key, `gets ${filledMg} mg of ${made.get(key) ?? 0} mg that its own trim made`);
  for (const { batchId, circle, recipeId } of plan.batches)
    if (!day.promises.some((promise) => promise.recipeId === recipeId && mayFill(promise, circle)))
      say('K6', batchId, 'is made for nobody');
}

/**
 * Whether a plan keeps every rule of the kitchen. It knows nothing of the programme that made it.
 * @returns what it breaks; nothing when it stands
 */
export function checkSausagePlan(day: KitchenDay, plan: SausagePlan): SausageFault[] {
  const faults: SausageFault[] = [];
  const say: Say = (rule, at, says) => void faults.push({ rule, at, says });
  const ground = day.offers.filter(({ offerId }) => plan.ground.includes(offerId));
  if (ground.length !== plan.ground.length) say('K1', 'ground', 'names a piece that nobody offered');
  const lots = new Map([...day.lots, ...ground.map(({ gives }) => gives)].map((lot) => [lot.lotId, lot]));
  const drawnMg = new Map<string, number>();
  for (const batch of plan.batches) {
    const recipe = day.recipes.find(({ recipeId }) => recipeId === batch.recipeId);
    const drawn = batch.draws.flatMap(({ lotId, massMg }) => {
      drawnMg.set(lotId, (drawnMg.get(lotId) ?? 0) + massMg);
      const lot = lots.get(lotId);
      return lot ? [{ lot, massMg }] : [];
    });
    if (!recipe || drawn.length < batch.draws.length)
      say('K1', batch.batchId, 'draws on a lot or a recipe that is not there');
    else checkBatch(say, recipe, batch, drawn, day);
  }
  for (const [lotId, massMg] of drawnMg)
    if (massMg > (lots.get(lotId)?.massMg ?? 0)) say('K1', lotId, `gives ${massMg} mg, more than it holds`);
  checkFills(say, day, plan);
  return faults;
}
