import { type Coming, type ComingDay, knownSpecies } from '@flitchbook/contracts';
import {
  forShop,
  listDaysOpenToCustomers,
  listFarms,
  loadCuttingDay,
  loadPlan,
  type StoredDay,
} from '@flitchbook/db';
import type { CuttingPlan } from '@flitchbook/plan';
import { done, type Outcome, refused } from '../../refusals.ts';
import type { Services } from '../ctx.ts';
import { currentPlan } from '../reservations/decide.ts';
import { theShop } from '../shops/the-shop.ts';
import { look } from '../transact.ts';

interface Seen {
  readonly stored: StoredDay;
  readonly plan: CuttingPlan | null;
}

function animalsOf({ animals }: StoredDay): ComingDay['animals'] {
  const species = [...new Set(animals.map(({ speciesId }) => speciesId))];
  return species.map((speciesId) => ({
    speciesId,
    name: knownSpecies[speciesId]?.name ?? speciesId,
    count: animals.filter((animal) => animal.speciesId === speciesId).length,
  }));
}

/** What customers may ask for, and what of it is free now. For strangers too: no name of anybody is in it. */
export async function readComing(services: Services): Promise<Outcome<Coming>> {
  const shop = await theShop(services);
  if (!shop.ok) return shop;
  if (!shop.value) return refused('request.not-found', 'There is no shop here yet.');
  const { shopId } = shop.value;
  const seen = await look(forShop(services.db, shopId), async (tx) => {
    const days: Seen[] = [];
    for (const { dayId } of await listDaysOpenToCustomers(tx, shopId)) {
      const stored = await loadCuttingDay(tx, shopId, dayId);
      if (stored) days.push({ stored, plan: currentPlan(stored, await loadPlan(tx, shopId, dayId)) });
    }
    const farms = new Map((await listFarms(tx, shopId)).map(({ farmId, name }) => [farmId, name]));
    return done({ days, farms });
  });
  if (!seen.ok) return seen;
  const days: ComingDay[] = [];
  for (const { stored, plan } of seen.value.days) {
    const { dayId, date, customersUntil, version } = stored.day;
    const farmIds = new Set(stored.animals.flatMap(({ farmId }) => farmId ?? []));
    days.push({
      dayId,
      date,
      customersUntil,
      animals: animalsOf(stored),
      farms: [...farmIds].flatMap((farmId) => seen.value.farms.get(farmId) ?? []),
      offers: await services.promises.offers.of(version, stored.cuttingDay, plan),
    });
  }
  return done({ shop: shop.value, days });
}
