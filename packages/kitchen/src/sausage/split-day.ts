import type { KitchenDay } from './kitchen-day.ts';
import { circlesFor } from './who-may-mix.ts';

type Owner = string | null;

/** Owners whose trim may meet in a pool stand together; all others, and the shop, stand alone. */
function groupsOf(day: KitchenDay): Owner[][] {
  const lots = [...day.lots, ...day.offers.map(({ gives }) => gives)];
  let groups: Owner[][] = [...new Set(day.promises.map(({ ownerId }) => ownerId))].map((owner) => [owner]);
  for (const { recipeId } of day.recipes) {
    const promises = day.promises.filter((promise) => promise.recipeId === recipeId);
    for (const circle of circlesFor(promises, lots)) {
      if (circle.of !== 'pool') continue;
      const meets = (group: Owner[]): boolean =>
        group.some((owner) => owner !== null && circle.ownerIds.includes(owner));
      groups = [groups.filter(meets).flat(), ...groups.filter((group) => !meets(group))];
    }
  }
  return groups;
}

/** A day as days that share no meat, which can be planned one by one. */
export function splitDay(day: KitchenDay): KitchenDay[] {
  return groupsOf(day).map((group) => ({
    ...day,
    lots: day.lots.filter(({ ownerId }) => group.includes(ownerId)),
    promises: day.promises.filter(({ ownerId }) => group.includes(ownerId)),
    offers: day.offers.filter(({ gives }) => group.includes(gives.ownerId)),
  }));
}
