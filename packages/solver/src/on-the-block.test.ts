import { hog, type Portion } from '@flitchbook/carcass';
import {
  type CuttingDay,
  type CuttingPlan,
  checkPlan,
  type DemandLine,
  joinPlans,
  type KnifeWork,
  restOfDay,
  sidesTogether,
} from '@flitchbook/plan';
import { beforeAll, describe, expect, it } from 'vitest';
import { planDay } from './index.ts';

const options = { deadlineSeconds: 4, gap: 0.02, seed: 1 };
const whole: Portion = { by: 'whole' };
const facts = ['skin-on', 'head', 'feet', 'organs'] as const;

const line = (
  lineId: string,
  cut: string,
  portion: Portion,
  ask: DemandLine['ask'],
  more: Partial<DemandLine> = {},
): DemandLine => ({
  lineId,
  orderId: `order ${lineId}`,
  owner: `customer ${lineId}`,
  speciesId: 'hog',
  cut,
  portion,
  ask,
  rank: 'promised',
  priceMinorPerKg: 1200,
  sameAnimal: false,
  substitutes: [],
  ...more,
});

/** Two hogs of 184 lb; racks and whole fillets for several, loose meat, liver, and one half. */
const day: CuttingDay = {
  dayId: 'a day',
  date: '2026-11-26',
  species: { hog },
  animals: ['17', '18'].map((animalId) => ({
    animalId,
    name: `Hog ${animalId}`,
    speciesId: 'hog',
    lostItems: [],
    sides: (['left', 'right'] as const).map((hand) => ({
      sideId: `${animalId} ${hand}`,
      animalId,
      hand,
      massMg: 41_776_000,
      carcassGrams: 83_552,
      ribs: 15,
      facts,
      lostParts: [],
    })),
  })),
  lines: [
    line('racks', 'rib-rack', { by: 'ribs', ribs: 8 }, { pieces: 2 }),
    line('fillets', 'tenderloin', whole, { pieces: 2 }),
    line('mince', 'ground-pork', { by: 'bulk' }, { grams: 6000 }),
    line('liver', 'liver', whole, { pieces: 1 }),
    line('hams', 'whole-ham', whole, { pieces: 2 }, { rank: 'wished' }),
  ],
  shares: [],
  locks: [],
  tools: { saw: true, kerfUm: 1000 },
  counter: {
    itemSteps: [{ pieces: null, worthPercent: 50 }],
    stockSteps: [{ grams: null, worthPercent: 50 }],
    worthMinorPerKg: {},
    labourMinorPerHour: 3000,
  },
};

const fill = (plan: CuttingPlan, lineId: string) => plan.lines.find((each) => each.lineId === lineId);

describe('planning again around what the knife did', () => {
  let plan: CuttingPlan;
  let sideOfRack = '';
  beforeAll(async () => {
    plan = await planDay(day, options);
    const rack = fill(plan, 'racks')?.pieceIds[0];
    sideOfRack =
      plan.sides.find(({ bars }) =>
        bars.some(({ runs }) => runs.some(({ pieces }) => pieces.some(({ pieceId }) => pieceId === rack))),
      )?.sideId ?? '';
  });

  const begin = (sides: readonly string[], gone: readonly string[] = []): KnifeWork => {
    const begunSides = sidesTogether(day, plan, new Set(sides));
    const begunSingles = new Set([...begunSides].map((sideId) => sideId.split(' ')[0] ?? ''));
    return { begunSides, begunSingles, gone: new Set(gone), settled: new Set() };
  };
  const again = async (work: KnifeWork): Promise<CuttingPlan> =>
    joinPlans(day, plan, await planDay(restOfDay(day, plan, work), options), work);

  it('finds another rack for the one that was spoiled, on a side not begun', async () => {
    expect(fill(plan, 'racks')?.filled).toBe(2);
    const spoiled = fill(plan, 'racks')?.pieceIds[0] ?? '';
    const joined = await again(begin([sideOfRack], [spoiled]));
    expect(checkPlan(day, joined)).toEqual([]);
    expect(fill(joined, 'racks')).toMatchObject({ asked: 2, filled: 2, shortfall: null });
    expect(fill(joined, 'racks')?.pieceIds).not.toContain(spoiled);
  });

  it('leaves every begun side as it lies', async () => {
    const joined = await again(begin([sideOfRack]));
    expect(checkPlan(day, joined)).toEqual([]);
    const lies = (of: CuttingPlan) => of.sides.find(({ sideId }) => sideId === sideOfRack);
    expect(lies(joined)).toEqual(lies(plan));
    for (const { lineId, rank } of day.lines)
      if (rank === 'promised') expect(fill(joined, lineId)?.filled).toBe(fill(plan, lineId)?.filled);
  });

  it('says who is short once every side is begun, and changes nothing else', async () => {
    const spoiled = fill(plan, 'racks')?.pieceIds[0] ?? '';
    const work = begin(
      plan.sides.map(({ sideId }) => sideId),
      [spoiled],
    );
    expect(restOfDay(day, plan, work).animals).toEqual([]);
    const nothing = { dayId: day.dayId, sides: [], singles: [], lines: [], shares: [], proof: null };
    const joined = joinPlans(day, plan, nothing, work);
    expect(checkPlan(day, joined)).toEqual([]);
    expect(fill(joined, 'racks')).toMatchObject({ filled: 1, shortfall: { kind: 'lost' } });
    expect(fill(joined, 'mince')?.filled).toBe(fill(plan, 'mince')?.filled);
  });
});
