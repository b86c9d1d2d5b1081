import { ratio } from '@flitchbook/carcass';
import { shareText } from '../quantities.ts';
import type { TrimLot } from '../trim/trim-lot.ts';
import type { Circle, KitchenDay, SausagePromise } from './kitchen-day.ts';
import type { Recipe } from './recipe.ts';
import { lotsFor } from './sausage-model.ts';
import { circlesFor, mayFill } from './who-may-mix.ts';

const fatText = (ppm: number): string => shareText(ratio(ppm, 1_000_000));
const kgText = (mg: number): string => `${(mg / 1_000_000).toFixed(2)} kg`;

function ofKinds(recipe: Recipe, lots: readonly TrimLot[]): TrimLot[] {
  return lots.filter(({ kind, massMg }) => massMg > 0 && recipe.meats.some((meat) => meat.kind === kind));
}

function whyNoLot(recipe: Recipe, promise: SausagePromise, day: KitchenDay): string {
  const fitting = ofKinds(recipe, day.lots);
  if (fitting.length === 0)
    return `There is no ${recipe.meats.map(({ kind }) => kind).join(' or ')} in the pool.`;
  const own = fitting.filter(({ ownerId }) => ownerId === promise.ownerId);
  if (own.length === 0)
    return promise.ownerId === null
      ? 'What the pool holds is customers’ own meat, which never becomes the shop’s.'
      : `The pool holds no trim of ${promise.ownerId}, and no other’s may be used for it.`;
  return `The trim is older than ${recipe.trimDaysMost} days.`;
}

/** Why a promise is not filled whole, in one sentence. */
export function explainShort(
  promise: SausagePromise,
  recipe: Recipe,
  missingMg: number,
  day: KitchenDay,
): string {
  const rivals = day.promises.filter(({ recipeId }) => recipeId === recipe.recipeId);
  const circles: Circle[] = circlesFor(rivals, day.lots).filter((circle) => mayFill(promise, circle));
  const usable = [...new Set(circles.flatMap((circle) => lotsFor(recipe, circle, day.lots, day.date)))];
  if (usable.length === 0) return whyNoLot(recipe, promise, day);
  const fats = usable.map(({ fatPpm }) => fatPpm);
  const [leanest, fattest] = [Math.min(...fats), Math.max(...fats)];
  if (leanest > recipe.fatMostPpm)
    return `The leanest trim that may be used has ${fatText(leanest)} fat, and ${recipe.name} takes at most ${fatText(recipe.fatMostPpm)}.`;
  if (fattest < recipe.fatLeastPpm)
    return `The fattest trim that may be used has ${fatText(fattest)} fat, and ${recipe.name} takes at least ${fatText(recipe.fatLeastPpm)}.`;
  const meatMg = usable.reduce((sum, { massMg }) => sum + massMg, 0);
  if (meatMg < recipe.batchLeastMg)
    return `A batch takes at least ${kgText(recipe.batchLeastMg)} of meat, and ${kgText(meatMg)} may be used for it.`;
  return `The pool is short: ${kgText(missingMg)} of sausage can’t be made within fat, shares and batch sizes once the other promises are met.`;
}
