import { isDate } from '../dates.ts';
import { FaultList, type KitchenFault } from '../faults.ts';
import { checkLots } from '../trim/trim-lot.ts';
import type { KitchenDay } from './kitchen-day.ts';
import { checkRecipe } from './recipe.ts';

function unique(list: FaultList, at: string, names: readonly string[]): void {
  for (const [index, name] of names.entries())
    list.need(
      name !== '' && !names.slice(0, index).includes(name),
      at.replace('[]', `[${index}]`),
      name,
      'must be the only one of its name',
    );
}

/** What is wrong with a day, field by field; an empty list is a day that can be planned. */
export function checkKitchenDay(day: KitchenDay): KitchenFault[] {
  const list = new FaultList();
  list.need(isDate(day.date), 'date', day.date, 'must be a day that exists, as yyyy-mm-dd');
  list.whole('labourMinorPerHour', day.labourMinorPerHour, 0, 1_000_000_000);
  list.whole('olderFirstMinorPerKgDay', day.olderFirstMinorPerKgDay, 0, 1_000_000);
  unique(
    list,
    'recipes[].recipeId',
    day.recipes.map(({ recipeId }) => recipeId),
  );
  for (const [index, recipe] of day.recipes.entries())
    list.faults.push(...checkRecipe(recipe, `recipes[${index}]`));
  checkLots(list, 'lots', [...day.lots, ...day.offers.map(({ gives }) => gives)]);
  unique(
    list,
    'offers[].offerId',
    day.offers.map(({ offerId }) => offerId),
  );
  for (const [index, { costMinor }] of day.offers.entries())
    list.whole(`offers[${index}].costMinor`, costMinor, 0, 1_000_000_000);
  unique(
    list,
    'promises[].promiseId',
    day.promises.map(({ promiseId }) => promiseId),
  );
  for (const [index, promise] of day.promises.entries()) {
    const at = `promises[${index}]`;
    const known = day.recipes.some(({ recipeId }) => recipeId === promise.recipeId);
    list.need(known, `${at}.recipeId`, promise.recipeId, 'is no recipe of this day');
    list.whole(`${at}.massMg`, promise.massMg, 1, 1_000_000_000);
    list.whole(`${at}.priceMinorPerKg`, promise.priceMinorPerKg, 0, 1_000_000_000);
  }
  return list.faults;
}
