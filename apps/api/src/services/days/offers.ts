import { setImmediate } from 'node:timers/promises';
import { knownSpecies, type OfferedCut } from '@flitchbook/contracts';
import type { CuttingPlan } from '@flitchbook/plan';
import { type CuttingDay, counterWorth, expectedGrams, nominalsOf } from '@flitchbook/plan';
import type { TravellingDay } from '../../solve/day-solver.ts';
import { laidIn } from '../reservations/decide.ts';

type Species = (typeof knownSpecies)[string];
type Cut = NonNullable<Species>['cuts'][string];

const tables = { item: 'items', stock: 'stocks', bulk: 'bulks' } as const;

/** Loose meat is counted in steps of so many grams. */
const bulkStepGrams = 500;
const stepsMax = 64;

/** The largest count that holds, where a smaller one holds whenever a larger one does. */
function mostThat(holds: (count: number) => boolean): number {
  let low = 0;
  let high = 1;
  while (high <= stepsMax && holds(high)) {
    low = high;
    high *= 2;
  }
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** How many more the plan has room for as it stands: by the very laying-in that a claim is decided by first. */
function moreOf(day: TravellingDay, plan: CuttingPlan, speciesId: string, cut: Cut): number {
  const isBulk = cut.usual.by === 'bulk';
  const step = isBulk ? bulkStepGrams : cut.bothSides ? 2 : 1;
  const fits = (count: number): boolean => {
    const line = {
      lineId: 'one-more',
      orderId: 'one-more',
      owner: '',
      speciesId,
      cut: cut.id,
      portion: cut.usual,
      ask: isBulk ? { grams: count * step } : { pieces: count * step },
      rank: 'promised' as const,
      priceMinorPerKg: 0,
      sameAnimal: cut.bothSides ?? false,
      substitutes: [],
    };
    return laidIn({ ...day, lines: [...day.lines, line] }, plan, { lines: [line] }) !== null;
  };
  return mostThat(fits) * step;
}

/** Every cut of the day's animals with what is free of it. Other requests get their turn between two cuts. */
async function offersOf(day: TravellingDay, plan: CuttingPlan | null): Promise<readonly OfferedCut[]> {
  const known: CuttingDay = { ...day, species: knownSpecies };
  const nominals = nominalsOf(known);
  const offers: OfferedCut[] = [];
  for (const speciesId of new Set(day.animals.map((animal) => animal.speciesId))) {
    for (const cut of Object.values(knownSpecies[speciesId]?.cuts ?? {})) {
      const [source] = cut.sources;
      const { id, name, says, portions, usual, bothSides = false } = cut;
      const wanted = { cut: id, portion: usual };
      await setImmediate();
      offers.push({
        speciesId,
        cut: id,
        name,
        says,
        portions,
        usual,
        bothSides,
        priceMinorPerKg: source ? counterWorth(known, speciesId, tables[source.from], source.id) : 0,
        eachGrams: Math.round(expectedGrams(known, nominals.get(speciesId), speciesId, wanted)),
        more: plan && moreOf(day, plan, speciesId, cut),
      });
    }
  }
  return offers;
}

const daysMax = 100;

/** What is free on a day at one version. Every change of the day raises its version, so an answer holds as long. */
export class KnownOffers {
  readonly #days = new Map<
    string,
    { readonly at: string; readonly offers: Promise<readonly OfferedCut[]> }
  >();

  of(version: number, day: TravellingDay, plan: CuttingPlan | null): Promise<readonly OfferedCut[]> {
    // A day gets its plan without a new version.
    const at = `${version} ${plan === null ? 'unplanned' : 'planned'}`;
    const known = this.#days.get(day.dayId);
    if (known?.at === at) return known.offers;
    const offers = offersOf(day, plan);
    this.#days.delete(day.dayId);
    this.#days.set(day.dayId, { at, offers });
    const [oldest] = this.#days.keys();
    if (this.#days.size > daysMax && oldest !== undefined) this.#days.delete(oldest);
    // Who failed is not remembered: the next one asks anew.
    offers.catch(() => this.#days.delete(day.dayId));
    return offers;
  }
}
