import { dividedBy, type Ratio, ratio, roundHalfUp, times } from '@flitchbook/carcass';
import type { NewBatchOnWire } from '@flitchbook/contracts';
import {
  batchLabel,
  type Circle,
  cautions,
  checkRecipe,
  checkSausagePlan,
  type KitchenDay,
  reckonCure,
  renderLard,
  type SausageBatch,
  shareOut,
  type TrimLot,
} from '@flitchbook/kitchen';
import { done, type FieldFault, type Outcome, type Refusal, refused } from '../../refusals.ts';

/** What the label of a batch says. */
export interface LabelSaid {
  readonly ingredients: readonly string[];
  readonly allergens: readonly string[];
  readonly notForSale: boolean;
  readonly says: readonly string[];
}

interface Reckoned {
  readonly record: Readonly<Record<string, unknown>> & { readonly label: LabelSaid };
}

export interface DrawnLot {
  readonly lot: TrimLot;
  readonly grams: number;
}

const wrong = (says: string, faults: readonly FieldFault[] = []): Refusal =>
  refused('batch.invalid', says, faults.length > 0 ? { faults } : {});

/** Whose meat it is; undefined where it may not be one batch. */
function circleOf(lots: readonly TrimLot[]): Circle | undefined {
  const owners = [...new Set(lots.map(({ ownerId }) => ownerId))];
  const [first] = owners;
  if (owners.length === 1) return first == null ? { of: 'shop' } : { of: 'owner', ownerId: first };
  const ownerIds = owners.filter((owner) => owner !== null);
  const agreed = lots.every(({ ownerId, mayPool }) => ownerId !== null && mayPool);
  return agreed ? { of: 'pool', ownerIds } : undefined;
}

const mixes = 'The shop’s meat and a customer’s own never meet, and owners pool only where each agreed.';

const partOf = (massMg: number, ppm: number): number =>
  roundHalfUp(dividedBy(times(ratio(massMg), ratio(ppm)), ratio(1_000_000) as Ratio));

function sausage(
  input: Extract<NewBatchOnWire, { kind: 'sausage' }>,
  drawn: readonly DrawnLot[],
  date: string,
): Outcome<Reckoned> {
  const { recipe, name } = input;
  const bad = checkRecipe(recipe);
  if (bad.length > 0) return wrong('The recipe cannot be as it is written; errors says why.', bad);
  const lots = drawn.map(({ lot }) => lot);
  const circle = circleOf(lots);
  if (!circle) return wrong(mixes);
  const meatMg = drawn.reduce((sum, { grams }) => sum + grams * 1000, 0);
  const fatMg = drawn.reduce((sum, { lot, grams }) => sum + grams * 1000 * lot.fatPpm, 0) / 1_000_000;
  const additions = recipe.additions.map(({ name: addition, ppmOfMeat }) => ({
    name: addition,
    massMg: partOf(meatMg, ppmOfMeat),
  }));
  const finishedMg = additions.reduce((sum, { massMg }) => sum + massMg, meatMg);
  const batch: SausageBatch = {
    batchId: name,
    recipeId: recipe.recipeId,
    circle,
    draws: drawn.map(({ lot, grams }) => ({ lotId: lot.lotId, massMg: grams * 1000 })),
    meatMg,
    fatPpm: meatMg === 0 ? 0 : Math.round((fatMg / meatMg) * 1_000_000),
    additions,
    finishedMg,
    minutes: recipe.minutesPerBatch,
    shares: shareOut(
      finishedMg,
      drawn.map(({ lot, grams }) => ({ ownerId: lot.ownerId, massMg: grams * 1000 })),
    ),
  };
  const promises = batch.shares.map(({ ownerId, massMg }) => ({
    promiseId: `${ownerId}`,
    recipeId: recipe.recipeId,
    massMg,
    ownerId,
    priceMinorPerKg: 0,
  }));
  const day: KitchenDay = {
    date,
    recipes: [recipe],
    lots,
    promises,
    offers: [],
    labourMinorPerHour: 0,
    olderFirstMinorPerKgDay: 0,
  };
  const plan = { date, batches: [batch], fills: [], ground: [], left: [], costMinor: 0, proven: false };
  // What a pack holds is the database's to say (K1): it counts other batches of this moment too.
  const faults = checkSausagePlan(day, plan).filter(({ rule }) => rule !== 'K1');
  if (faults.length > 0)
    return wrong(
      'The batch does not fit its recipe; errors says why.',
      faults.map(({ rule, says }) => ({ at: 'draws', value: rule, says })),
    );
  const species = [...new Set(lots.map((lot) => lot.species))];
  const { ingredients, allergens, notForSale, cautions: said } = batchLabel(recipe, batch, species, 'us');
  const label = { ingredients, allergens, notForSale, says: said.map(({ says }) => says) };
  return done({ record: { recipe, batch, label } });
}

function lard(drawn: readonly DrawnLot[]): Outcome<Reckoned> {
  const circle = circleOf(drawn.map(({ lot }) => lot));
  if (!circle) return wrong(mixes);
  const kettle = renderLard(drawn.map(({ lot, grams }) => ({ kind: lot.kind, massMg: grams * 1000 })));
  if ('faults' in kettle) return wrong('That cannot be rendered; errors says why.', kettle.faults);
  const species = [...new Set(drawn.map(({ lot }) => lot.species))];
  const label = {
    ingredients: [`${species.join(', ')} fat`],
    allergens: [],
    notForSale: circle.of !== 'shop',
    says: kettle.cautions.map(({ says }) => says),
  };
  return done({ record: { kettle, label } });
}

function cure(input: Extract<NewBatchOnWire, { kind: 'cure' }>, notForSale: boolean): Outcome<Reckoned> {
  const { request, cureLot } = input;
  const answer = reckonCure(request);
  if ('faults' in answer)
    return wrong(
      'The cure cannot be reckoned; errors says why.',
      answer.faults.map(({ at, ...fault }) => ({ at: `request.${at}`, ...fault })),
    );
  if (answer.outcome === 'refused' || answer.cureMg === null)
    return refused('batch.over-limit', answer.says.join(' '));
  const label = {
    ingredients: ['pork', 'salt', 'sodium nitrite'],
    allergens: [],
    notForSale,
    says: [...answer.cautions.map(({ says }) => says), cautions.readyToEat.says],
  };
  return done({ record: { cureLot, request, answer, label } });
}

/** A batch reckoned and judged, with what its label says; refused where a rule of the kitchen is broken. */
export function reckonBatch(
  input: NewBatchOnWire,
  drawn: readonly DrawnLot[],
  { date, notForSale }: { readonly date: string; readonly notForSale: boolean },
): Outcome<Reckoned> {
  switch (input.kind) {
    case 'sausage':
      return sausage(input, drawn, date);
    case 'lard':
      return lard(drawn);
    case 'cure':
      return cure(input, notForSale);
  }
}
