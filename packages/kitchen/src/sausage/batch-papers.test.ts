import { describe, expect, it } from 'vitest';
import { plainDay, plainLot, plainRecipe } from '../testing/tiny-days.ts';
import { batchLabel, grindingLog } from './batch-papers.ts';
import type { KitchenDay, SausageBatch } from './kitchen-day.ts';
import { planSausages } from './plan-sausages.ts';
import { checkRecipe } from './recipe.ts';

const additions = [
  { name: 'rusk', ppmOfMeat: 80_000, allergens: ['wheat', 'gluten'], costMinorPerKg: 150 },
  { name: 'mustard powder', ppmOfMeat: 3_000, allergens: ['mustard'], costMinorPerKg: 900 },
  { name: 'milk powder', ppmOfMeat: 20_000, allergens: ['milk'], costMinorPerKg: 700 },
];
const recipe = { ...plainRecipe, additions };

async function firstBatch(day: KitchenDay): Promise<SausageBatch> {
  const plan = await planSausages(day);
  if ('faults' in plan || !plan.batches[0]) throw new Error('nothing made');
  return plan.batches[0];
}

describe('the papers of a batch', () => {
  it('case 75: an allergen of the recipe reaches the label, ingredients in the order of mass', async () => {
    const batch = await firstBatch({ ...plainDay, recipes: [recipe] });
    const label = batchLabel(recipe, batch, ['pork'], 'us');
    expect(label.ingredients).toEqual(['pork', 'rusk', 'milk powder', 'mustard powder']);
    expect(label.allergens).toEqual(['milk', 'wheat']);
    expect(batchLabel(recipe, batch, ['pork'], 'eu').allergens).toEqual([
      'milk',
      'wheat',
      'cereals with gluten',
      'mustard',
    ]);
    expect(label).toMatchObject({ pooled: false, notForSale: false });
    expect(label.cautions.map(({ id }) => id)).toEqual(['allergens', 'ground-cooking']);
  });

  it('marks an owner’s own meat as not for sale', async () => {
    const day = {
      ...plainDay,
      lots: [{ ...plainLot, ownerId: 'ada' }],
      promises: [{ ...plainDay.promises[0]!, ownerId: 'ada' }],
    };
    expect(batchLabel(plainRecipe, await firstBatch(day), ['pork'], 'us').notForSale).toBe(true);
  });

  const facts = { groundAt: '2026-11-25T09:00', cleanedAt: '2026-11-25T10:00', by: 'Ida', suppliers: {} };
  it('offers a grinding log for pork, and requires it once beef is in: 9 CFR 320.1(b)(4)', async () => {
    const pork = await firstBatch(plainDay);
    expect(grindingLog(pork, plainDay, { ...facts, cleanedAt: '' }).duty).toBe('offered');
    const withBeef = { ...plainDay, lots: [{ ...plainLot, species: 'beef' }] };
    const beef = await firstBatch(withBeef);
    expect(() => grindingLog(beef, withBeef, facts)).toThrow(/suppliers.hog-1 must name its plant/);
    expect(() => grindingLog(beef, withBeef, { ...facts, cleanedAt: '' })).toThrow(
      /cleanedAt must not be empty/,
    );
    const suppliers = { 'hog-1': { establishment: 'M 4711', supplierLot: '26-330' } };
    const log = grindingLog(beef, withBeef, { ...facts, suppliers });
    expect(log).toMatchObject({
      duty: 'required',
      materials: [{ species: 'beef', establishment: 'M 4711' }],
    });
  });

  it('keeps fresh pork sausage to half fat and 3 % of added water: 9 CFR 319.141', () => {
    const fresh = { ...plainRecipe, standard: 'fresh-pork-sausage' } as const;
    const water = (ppmOfMeat: number) => ({
      name: 'water',
      ppmOfMeat,
      allergens: [],
      costMinorPerKg: 0,
      isWater: true,
    });
    expect(checkRecipe(fresh)).toEqual([]);
    expect(checkRecipe({ ...fresh, fatMostPpm: 500_001 })).toMatchObject([{ at: 'recipe.fatMostPpm' }]);
    // 31 000 to a million of meat with 16 000 of salt is 2.96 % of the whole; 32 000 is 3.05 %.
    expect(checkRecipe({ ...fresh, additions: [...fresh.additions, water(31_000)] })).toEqual([]);
    expect(checkRecipe({ ...fresh, additions: [...fresh.additions, water(32_000)] })).toMatchObject([
      { at: 'recipe.additions' },
    ]);
  });
});
