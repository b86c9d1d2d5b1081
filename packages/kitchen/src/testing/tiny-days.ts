import type { KitchenDay, SausagePromise } from '../sausage/kitchen-day.ts';
import type { Recipe } from '../sausage/recipe.ts';
import type { TrimLot } from '../trim/trim-lot.ts';

const kg = 1_000_000;

/** Numbers from a seed, the same on every run (mulberry32). */
function seeded(seed: number): (below: number) => number {
  let state = seed >>> 0;
  return (below) => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) % below;
  };
}

export const plainLot: TrimLot = {
  lotId: 'lot',
  kind: 'trim',
  species: 'pork',
  animalId: 'hog-1',
  ownerId: null,
  mayPool: false,
  massMg: 10 * kg,
  fatPpm: 250_000,
  fatFrom: 'book',
  cutOn: '2026-11-24',
  weight: 'scale',
  costMinorPerKg: 380,
};

export const plainRecipe: Recipe = {
  recipeId: 'breakfast',
  name: 'Breakfast sausage',
  meats: [{ kind: 'trim' }, { kind: 'fat-trim' }, { kind: 'back-fat' }],
  fatLeastPpm: 250_000,
  fatMostPpm: 320_000,
  additions: [{ name: 'salt', ppmOfMeat: 16_000, allergens: [], costMinorPerKg: 120 }],
  batchLeastMg: 4 * kg,
  batchMostMg: 12 * kg,
  minutesPerBatch: 30,
  trimDaysMost: 3,
};

export const plainDay: KitchenDay = {
  date: '2026-11-25',
  recipes: [plainRecipe],
  lots: [plainLot],
  promises: [
    { promiseId: 'p1', recipeId: 'breakfast', massMg: 5 * kg, ownerId: null, priceMinorPerKg: 1400 },
  ],
  offers: [],
  labourMinorPerHour: 3000,
  olderFirstMinorPerKgDay: 1,
};

const kinds = [
  { kind: 'trim', fat: 250_000, worth: 380 },
  { kind: 'fat-trim', fat: 600_000, worth: 90 },
  { kind: 'back-fat', fat: 786_000, worth: 220 },
] as const;

function tinyLot(
  random: (below: number) => number,
  index: number,
  owners: readonly (string | null)[],
): TrimLot {
  const { kind, fat, worth } = kinds[index === 0 ? 0 : random(3)] ?? kinds[0];
  return {
    ...plainLot,
    lotId: `lot-${index}`,
    kind,
    animalId: `hog-${index}`,
    ownerId: owners[random(owners.length)] ?? null,
    mayPool: random(4) > 0,
    massMg: (1 + random(5)) * kg,
    fatPpm: fat + random(11) * 10_000 - 50_000,
    cutOn: ['2026-11-25', '2026-11-24', '2026-11-21'][random(5)] ?? '2026-11-24',
    costMinorPerKg: worth + random(50),
  };
}

/** A day so small that every way to make its sausage can be tried. */
export function tinyDay(seed: number): KitchenDay {
  const random = seeded(seed);
  const owners = [[null], [null, 'ada', 'bo'], ['ada', 'bo'], ['ada', 'bo']][random(4)] ?? [null];
  const recipes = Array.from({ length: owners.includes(null) ? 1 + random(2) : 1 }, (_, index): Recipe => {
    const fatLeastPpm = 150_000 + random(20) * 10_000;
    const mostOfFat = random(3) === 0 ? { mostPpm: 300_000 } : {};
    return {
      ...plainRecipe,
      recipeId: `r${index}`,
      meats: [
        { kind: 'trim', ...(random(3) === 0 && { leastPpm: 500_000 }) },
        { kind: 'fat-trim', ...mostOfFat },
        { kind: 'back-fat' },
      ],
      fatLeastPpm,
      fatMostPpm: fatLeastPpm + 20_000 + random(8) * 20_000,
      additions: [{ name: 'salt', ppmOfMeat: random(4) * 10_000, allergens: [], costMinorPerKg: 500 }],
      batchLeastMg: (3 + random(3)) * kg,
      batchMostMg: (6 + random(3)) * kg,
      minutesPerBatch: random(60),
    };
  });
  const lots = Array.from({ length: 2 + random(2) }, (_, index) => tinyLot(random, index, owners));
  const promises = Array.from(
    { length: 1 + random(3) },
    (_, index): SausagePromise => ({
      promiseId: `p${index}`,
      recipeId: `r${random(recipes.length)}`,
      massMg: (1 + random(5)) * kg,
      ownerId: owners[random(owners.length)] ?? null,
      priceMinorPerKg: 900 + random(900),
    }),
  );
  const offers = Array.from({ length: random(3) }, (_, index) => ({
    offerId: `picnic-${index}`,
    name: 'Picnic',
    gives: { ...tinyLot(random, 0, [null]), lotId: `picnic-${index}`, massMg: (2 + random(4)) * kg },
    costMinor: random(3000),
  }));
  return { ...plainDay, recipes, lots, promises, offers };
}
