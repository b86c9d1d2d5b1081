import type { Portion, SlaughterFact, Species } from '@flitchbook/carcass';
import { type CarcassShare, type CuttingDay, checkDay, checkPlan, type DemandLine } from '@flitchbook/plan';
import { planDay } from '@flitchbook/solver';

/** One thing asked of an animal: so many pieces of a cut, or grams of it. */
export interface Ask {
  readonly cut: string;
  readonly portion: Portion;
  readonly pieces: number;
  readonly grams?: number;
}

const whole: Portion = { by: 'whole' };
export const ask = (cut: string, pieces = 1, portion: Portion = whole): Ask => ({ cut, portion, pieces });
export const inches = (cut: string, inch: number, pieces: number): Ask =>
  ask(cut, pieces, { by: 'thickness', um: inch * 25_400 });
export const ribs = (cut: string, count: number, pieces = 1): Ask =>
  ask(cut, pieces, { by: 'ribs', ribs: count });
export const grams = (cut: string, fromGrams: number, toGrams: number, pieces = 1): Ask =>
  ask(cut, pieces, { by: 'weight', fromGrams, toGrams });
export const loose = (cut: string, amount: number): Ask => ({
  cut,
  portion: { by: 'bulk' },
  pieces: 0,
  grams: amount,
});

/** The animal that a row of a table is about. One side unless the row is about two. */
export interface Carcass {
  readonly species: Species;
  readonly carcassGrams: number;
  readonly ribs: number;
  readonly facts: readonly SlaughterFact[];
  readonly sides: 1 | 2;
  readonly lostParts?: readonly string[];
}

const hands = ['left', 'right'] as const;

function lineOf({ cut, portion, pieces, grams: amount }: Ask, index: number, speciesId: string): DemandLine {
  return {
    lineId: `${index}`,
    orderId: `order ${index}`,
    owner: `customer ${index}`,
    speciesId,
    cut,
    portion,
    ask: amount === undefined ? { pieces } : { grams: amount },
    rank: 'promised',
    // Far above what the counter brings: all that matters is whether the line can be filled.
    priceMinorPerKg: 1_000_000,
    sameAnimal: false,
    substitutes: [],
  };
}

export function dayOf(
  carcass: Carcass,
  asks: readonly Ask[],
  shares: readonly CarcassShare[] = [],
): CuttingDay {
  const { species, carcassGrams, ribs: count, facts, sides, lostParts = [] } = carcass;
  return {
    dayId: 'one animal',
    date: '2031-03-14',
    species: { [species.id]: species },
    animals: [
      {
        animalId: 'animal',
        name: 'Animal',
        speciesId: species.id,
        lostItems: [],
        sides: hands.slice(0, sides).map((hand) => ({
          sideId: hand,
          animalId: 'animal',
          hand,
          massMg: carcassGrams * 500,
          carcassGrams,
          ribs: count,
          facts,
          lostParts,
        })),
      },
    ],
    lines: asks.map((each, index) => lineOf(each, index, species.id)),
    shares,
    locks: [],
    tools: { saw: true, kerfUm: 2000 },
    counter: {
      itemSteps: [{ pieces: null, worthPercent: 80 }],
      stockSteps: [{ grams: null, worthPercent: 80 }],
      worthMinorPerKg: {},
      labourMinorPerHour: 2000,
    },
  };
}

/** Plans a day as the shop does, with the check of the day before it and of the plan after it. */
export async function planned(day: CuttingDay) {
  const errors = checkDay(day).filter(({ level }) => level === 'error');
  if (errors.length > 0) throw new Error(errors.map(({ at, says }) => `${at}: ${says}`).join('\n'));
  const plan = await planDay(day, { deadlineSeconds: 20, gap: 0.002, seed: 1 });
  const faults = checkPlan(day, plan);
  if (faults.length > 0) throw new Error(faults.map(({ at, says }) => `${at}: ${says}`).join('\n'));
  return plan;
}

/** What is missing of each ask, for those that fall short. */
export async function missing(carcass: Carcass, asks: readonly Ask[]): Promise<string[]> {
  const { lines } = await planned(dayOf(carcass, asks));
  return lines
    .filter(({ filled, asked }) => filled < asked)
    .map(({ lineId, filled, asked }) => `${asks[Number(lineId)]?.cut}: ${filled} of ${asked}`);
}
