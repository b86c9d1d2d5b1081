import { FaultList, type KitchenFault } from '../faults.ts';

const whole = 1_000_000;

/** Allergens that a label declares: the nine of the United States, and those that the EU and the UK add. */
export const allergenNames: Readonly<Record<string, { readonly name: string; readonly us: boolean }>> = {
  milk: { name: 'milk', us: true },
  egg: { name: 'egg', us: true },
  fish: { name: 'fish', us: true },
  crustaceans: { name: 'crustacean shellfish', us: true },
  'tree-nuts': { name: 'tree nuts', us: true },
  peanuts: { name: 'peanuts', us: true },
  wheat: { name: 'wheat', us: true },
  soy: { name: 'soy', us: true },
  sesame: { name: 'sesame', us: true },
  gluten: { name: 'cereals with gluten', us: false },
  celery: { name: 'celery', us: false },
  mustard: { name: 'mustard', us: false },
  sulphites: { name: 'sulphites', us: false },
  lupin: { name: 'lupin', us: false },
  molluscs: { name: 'molluscs', us: false },
};

/** Trim that may go in, and how much of the meat it makes up, in millionths. */
export interface MeatSource {
  readonly kind: string;
  readonly leastPpm?: number;
  readonly mostPpm?: number;
}

export interface Addition {
  /** common name, as the label prints it */
  readonly name: string;
  /** millionths of the meat */
  readonly ppmOfMeat: number;
  readonly allergens: readonly string[];
  readonly costMinorPerKg: number;
  readonly isWater?: boolean;
}

/** A sausage as data. Masses are of meat, before anything is added. */
export interface Recipe {
  readonly recipeId: string;
  readonly name: string;
  readonly meats: readonly MeatSource[];
  readonly fatLeastPpm: number;
  readonly fatMostPpm: number;
  readonly additions: readonly Addition[];
  readonly batchLeastMg: number;
  readonly batchMostMg: number;
  /** hands-on, with cleaning, for one batch */
  readonly minutesPerBatch: number;
  /** trim older than this is not ground into it */
  readonly trimDaysMost: number;
  /** the name it is sold under has a standard */
  readonly standard?: 'fresh-pork-sausage';
}

/** Fresh pork sausage: at most half fat, at most 3 % of the ingredients added water. 9 CFR 319.141, as quoted; settings. */
const freshPorkSausage = {
  fatMostPpm: 500_000,
  waterMostPpm: 30_000,
  source: '9 CFR 319.141, as quoted',
} as const;

/** Sausage from a mass of meat, millionths: meat and all that is added. */
export const yieldPpm = (recipe: Recipe): number =>
  whole + recipe.additions.reduce((sum, { ppmOfMeat }) => sum + ppmOfMeat, 0);

function checkMeats(list: FaultList, at: string, { meats }: Recipe): void {
  list.need(meats.length > 0, `${at}.meats`, meats, 'must name what may go in');
  let least = 0;
  let most = 0;
  for (const [index, meat] of meats.entries()) {
    const place = `${at}.meats[${index}]`;
    const from = meat.leastPpm ?? 0;
    const to = meat.mostPpm ?? whole;
    list.whole(`${place}.leastPpm`, from, 0, whole);
    list.whole(`${place}.mostPpm`, to, from, whole);
    list.need(
      !meats.slice(0, index).some(({ kind }) => kind === meat.kind),
      `${place}.kind`,
      meat.kind,
      'stands there twice',
    );
    least += from;
    most += to;
  }
  if (meats.length > 0)
    list.need(
      least <= whole && most >= whole,
      `${at}.meats`,
      meats,
      'can never make up the whole: least shares over 100 %, or most shares under it',
    );
}

function checkAdditions(list: FaultList, at: string, { additions }: Recipe): void {
  for (const [index, { name, ppmOfMeat, allergens, costMinorPerKg }] of additions.entries()) {
    const place = `${at}.additions[${index}]`;
    list.need(name.trim() !== '', `${place}.name`, name, 'must not be empty');
    list.whole(`${place}.ppmOfMeat`, ppmOfMeat, 0, whole);
    list.whole(`${place}.costMinorPerKg`, costMinorPerKg, 0, 1_000_000_000);
    for (const allergen of allergens)
      list.need(
        Object.hasOwn(allergenNames, allergen),
        `${place}.allergens`,
        allergen,
        `must be one of ${Object.keys(allergenNames).join(', ')}`,
      );
  }
}

function checkStandard(list: FaultList, at: string, recipe: Recipe): void {
  if (recipe.standard !== 'fresh-pork-sausage') return;
  const { fatMostPpm, waterMostPpm, source } = freshPorkSausage;
  list.need(
    recipe.fatMostPpm <= fatMostPpm,
    `${at}.fatMostPpm`,
    recipe.fatMostPpm,
    `must be at most ${fatMostPpm} for a fresh pork sausage (${source})`,
  );
  const water = recipe.additions.reduce((sum, { isWater, ppmOfMeat }) => sum + (isWater ? ppmOfMeat : 0), 0);
  const share = (water * whole) / yieldPpm(recipe);
  list.need(
    share <= waterMostPpm,
    `${at}.additions`,
    water,
    `may bring at most ${waterMostPpm} millionths of water to a fresh pork sausage (${source})`,
  );
}

/** What is wrong with a recipe, field by field. */
export function checkRecipe(recipe: Recipe, at = 'recipe'): KitchenFault[] {
  const list = new FaultList();
  list.need(recipe.recipeId !== '', `${at}.recipeId`, recipe.recipeId, 'must not be empty');
  list.whole(`${at}.fatLeastPpm`, recipe.fatLeastPpm, 0, whole);
  list.whole(`${at}.fatMostPpm`, recipe.fatMostPpm, recipe.fatLeastPpm, whole);
  list.whole(`${at}.batchLeastMg`, recipe.batchLeastMg, 1, 1_000_000_000);
  list.whole(`${at}.batchMostMg`, recipe.batchMostMg, recipe.batchLeastMg, 1_000_000_000);
  list.whole(`${at}.minutesPerBatch`, recipe.minutesPerBatch, 0, 10_000);
  list.whole(`${at}.trimDaysMost`, recipe.trimDaysMost, 0, 3650);
  checkMeats(list, at, recipe);
  checkAdditions(list, at, recipe);
  checkStandard(list, at, recipe);
  return list.faults;
}
