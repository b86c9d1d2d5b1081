import { type Caution, cautions } from '../cautions.ts';
import type { TrimLot } from '../trim/trim-lot.ts';
import type { KitchenDay, SausageBatch } from './kitchen-day.ts';
import { allergenNames, type Recipe } from './recipe.ts';

/** What the label of a batch must say, in the order of mass. */
export interface BatchLabel {
  readonly name: string;
  readonly ingredients: readonly string[];
  /** common names, in the order of the law */
  readonly allergens: readonly string[];
  /** meat of several owners, ground together */
  readonly pooled: boolean;
  /** an owner's own meat */
  readonly notForSale: boolean;
  readonly cautions: readonly Caution[];
}

/**
 * @param allergenSet us: the nine; eu: also those that the EU and the UK add
 */
export function batchLabel(
  recipe: Recipe,
  batch: SausageBatch,
  species: readonly string[],
  allergenSet: 'us' | 'eu',
): BatchLabel {
  const masses = [{ name: species.join(', '), massMg: batch.meatMg }, ...batch.additions].sort(
    (a, b) => b.massMg - a.massMg,
  );
  const held = new Set(recipe.additions.flatMap(({ allergens }) => allergens));
  const declared = Object.entries(allergenNames).filter(
    ([id, { us }]) => held.has(id) && (us || allergenSet === 'eu'),
  );
  return {
    name: recipe.name,
    ingredients: masses.map(({ name }) => name),
    allergens: declared.map(([, { name }]) => name),
    pooled: batch.circle.of === 'pool',
    notForSale: batch.circle.of !== 'shop',
    cautions: [cautions.allergens, cautions.groundCooking],
  };
}

/** What was ground, from one cleaning to the next. Only beef makes it a duty: 9 CFR 320.1(b)(4). */
export interface GrindingLog {
  readonly duty: 'required' | 'offered';
  readonly batchId: string;
  readonly groundAt: string;
  readonly cleanedAt: string;
  readonly by: string;
  readonly materials: readonly {
    readonly lotId: string;
    readonly animalId: string;
    readonly species: string;
    readonly massMg: number;
    /** number of the plant it came from, and its lot; required for beef */
    readonly establishment: string;
    readonly supplierLot: string;
  }[];
  readonly cautions: readonly Caution[];
}

interface GrindFacts {
  readonly groundAt: string;
  readonly cleanedAt: string;
  readonly by: string;
  /** by animal */
  readonly suppliers: Readonly<
    Record<string, { readonly establishment: string; readonly supplierLot: string }>
  >;
}

export function logDuty(batch: SausageBatch, lots: readonly TrimLot[]): GrindingLog['duty'] {
  return batch.draws.some(({ lotId }) => lots.some((lot) => lot.lotId === lotId && lot.species === 'beef'))
    ? 'required'
    : 'offered';
}

/**
 * @throws RangeError when a log that the law asks for lacks a field
 */
export function grindingLog(batch: SausageBatch, day: KitchenDay, facts: GrindFacts): GrindingLog {
  const lots = [...day.lots, ...day.offers.map(({ gives }) => gives)];
  const duty = logDuty(batch, lots);
  const materials = batch.draws.flatMap(({ lotId, massMg }) => {
    const lot = lots.find((entry) => entry.lotId === lotId);
    if (!lot) return [];
    const supplier = facts.suppliers[lot.animalId] ?? { establishment: '', supplierLot: '' };
    return [{ lotId, animalId: lot.animalId, species: lot.species, massMg, ...supplier }];
  });
  if (duty === 'required') {
    for (const field of ['groundAt', 'cleanedAt', 'by'] as const)
      if (facts[field].trim() === '')
        throw new RangeError(`${field} must not be empty: there is beef in ${batch.batchId}`);
    const bare = materials.find(
      ({ species, establishment, supplierLot }) =>
        species === 'beef' && (establishment === '' || supplierLot === ''),
    );
    if (bare) throw new RangeError(`suppliers.${bare.animalId} must name its plant and lot: it is beef`);
  }
  const { groundAt, cleanedAt, by } = facts;
  return { duty, batchId: batch.batchId, groundAt, cleanedAt, by, materials, cautions: [cautions.trimApart] };
}
