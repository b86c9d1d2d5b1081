import { describe, expect, it } from 'vitest';
import { daysFromTo } from '../dates.ts';
import { bruteForce } from '../testing/brute-force.ts';
import { plainDay, plainLot, plainRecipe, tinyDay } from '../testing/tiny-days.ts';
import { checkSausagePlan } from './check-sausage-plan.ts';
import type { KitchenDay, SausagePlan } from './kitchen-day.ts';
import { grindChoices, planSausages } from './plan-sausages.ts';

const kg = 1_000_000;

async function plan(day: KitchenDay): Promise<SausagePlan> {
  const made = await planSausages(day);
  if ('faults' in made) throw new Error(JSON.stringify(made.faults));
  expect(checkSausagePlan(day, made)).toEqual([]);
  expect(made.proven).toBe(true);
  return made;
}

const worthOf = (day: KitchenDay, { fills }: SausagePlan): number =>
  fills.reduce((sum, { promiseId, filledMg }) => {
    const promise = day.promises.find((entry) => entry.promiseId === promiseId)!;
    return sum + (filledMg / kg) * promise.priceMinorPerKg;
  }, 0);

/** Cost as the programme steers by: older trim is a little cheaper, by a minor unit a kilogram and day. */
function steeredCost(day: KitchenDay, { batches, costMinor }: SausagePlan): number {
  const lots = new Map([...day.lots, ...day.offers.map(({ gives }) => gives)].map((lot) => [lot.lotId, lot]));
  return batches
    .flatMap(({ draws }) => draws)
    .reduce(
      (sum, { lotId, massMg }) => sum - (massMg / kg) * daysFromTo(lots.get(lotId)!.cutOn, day.date),
      costMinor,
    );
}

describe('sausage', () => {
  it('equals every way tried by hand on 300 tiny days, each batch on its own', async () => {
    let made = 0;
    let short = 0;
    let pooled = 0;
    for (let seed = 1; seed <= 300; seed++) {
      const day = tinyDay(seed);
      const answer = await plan(day);
      const best = bruteForce(day);
      expect([seed, worthOf(day, answer)]).toEqual([seed, expect.closeTo(best.worth, 0)]);
      expect([seed, Math.abs(steeredCost(day, answer) - best.costMinor) <= 1]).toEqual([seed, true]);
      made += answer.batches.length;
      short += answer.fills.filter(({ says }) => says !== '').length;
      pooled += answer.batches.filter(({ circle }) => circle.of === 'pool').length;
    }
    // The days are worth trying: many batches, many promises short, some pools.
    expect(made).toBeGreaterThan(100);
    expect(short).toBeGreaterThan(100);
    expect(pooled).toBeGreaterThan(5);
  }, 120_000);

  it('takes the oldest trim first where nothing else differs', async () => {
    const lots = ['2026-11-25', '2026-11-23', '2026-11-24'].map((cutOn) => ({
      ...plainLot,
      lotId: cutOn,
      cutOn,
      massMg: 5 * kg,
    }));
    const { batches } = await plan({ ...plainDay, lots });
    expect(batches.flatMap(({ draws }) => draws.map(({ lotId }) => lotId))).toEqual(['2026-11-23']);
  });

  it('names what must be ground when the pool is short, and grinds nothing by itself', async () => {
    const offer = (offerId: string, costMinor: number, massMg: number) => ({
      offerId,
      name: offerId,
      gives: { ...plainLot, lotId: offerId, massMg, costMinorPerKg: 0 },
      costMinor,
    });
    const day = { ...plainDay, lots: [{ ...plainLot, massMg: 2 * kg }] };
    const alone = await plan(day);
    expect(alone.batches).toEqual([]);
    expect(alone.fills[0]).toMatchObject({
      filledMg: 0,
      says: expect.stringMatching(/at least 4.00 kg of meat, and 2.00 kg/),
    });
    const offers = [offer('butt', 9000, 6 * kg), offer('picnic', 4000, 5 * kg), offer('hock', 100, kg)];
    const choices = await grindChoices({ ...day, offers }, alone);
    expect(choices.map(({ offerIds, missingMg }) => [offerIds, missingMg])).toEqual([
      [['picnic'], 0],
      [['butt'], 0],
    ]);
    expect(choices[0]!.extraMinor).toBeGreaterThan(4000);
  });

  it('case 51: pools only with consent, and shares by own trim over all trim', async () => {
    const own = (ownerId: string, mayPool: boolean) => ({
      ...plainLot,
      lotId: ownerId,
      ownerId,
      mayPool,
      massMg: 3 * kg,
    });
    const wants = (ownerId: string) => ({
      promiseId: ownerId,
      recipeId: 'breakfast',
      massMg: 2 * kg,
      ownerId,
      priceMinorPerKg: 500,
    });
    const both = (mayPool: boolean): KitchenDay => ({
      ...plainDay,
      lots: [own('ada', true), own('bo', mayPool)],
      promises: [wants('ada'), wants('bo')],
    });
    const agreed = await plan(both(true));
    expect(agreed.batches).toHaveLength(1);
    const [batch] = agreed.batches;
    expect(batch!.circle).toEqual({ of: 'pool', ownerIds: ['ada', 'bo'] });
    const trim = (ownerId: string) => batch!.draws.find(({ lotId }) => lotId === ownerId)!.massMg;
    for (const { ownerId, massMg } of batch!.shares)
      expect(massMg / batch!.finishedMg).toBeCloseTo(trim(ownerId!) / batch!.meatMg, 5);
    const refused = await plan(both(false));
    expect(refused.batches).toEqual([]);
    expect(refused.fills.map(({ says }) => says).join()).toMatch(/at least 4.00 kg/);
  });

  it('never grinds a customer’s own meat for the shop, nor the shop’s for a customer', async () => {
    const lots = [{ ...plainLot, ownerId: 'ada', mayPool: true }];
    const { batches, fills } = await plan({ ...plainDay, lots });
    expect(batches).toEqual([]);
    expect(fills[0]!.says).toMatch(/never becomes the shop’s/);
  });

  it.each([
    [
      'a fat range outside the trims',
      { recipes: [{ ...plainRecipe, fatLeastPpm: 400_000, fatMostPpm: 450_000 }] },
      /fattest trim.*25 % fat.*at least 40 %/,
    ],
    [
      'trim that is too fat',
      { lots: [{ ...plainLot, fatPpm: 500_000 }] },
      /leanest trim.*50 %.*at most 32 %/,
    ],
    ['a batch below its least', { lots: [{ ...plainLot, massMg: 3 * kg }] }, /at least 4.00 kg/],
    ['trim too old', { lots: [{ ...plainLot, cutOn: '2026-11-20' }] }, /older than 3 days/],
    ['an empty pool', { lots: [] }, /no trim or fat-trim or back-fat/],
    ['a pool that is short', { lots: [{ ...plainLot, massMg: 4.5 * kg }] }, /The pool is short: 0.43 kg/],
  ])('says why: %s', async (_, change, why) => {
    expect((await plan({ ...plainDay, ...change })).fills[0]!.says).toMatch(why);
  });

  it.each([
    ['a negative weight', { lots: [{ ...plainLot, massMg: -1 }] }, 'lots[0].massMg'],
    ['a fat over 100 %', { lots: [{ ...plainLot, fatPpm: 1_000_001 }] }, 'lots[0].fatPpm'],
    ['a lot twice', { lots: [plainLot, plainLot] }, 'lots[1].lotId'],
    ['a weight that is no number', { lots: [{ ...plainLot, massMg: Number.NaN }] }, 'lots[0].massMg'],
    ['a promise of nothing', { promises: [{ ...plainDay.promises[0]!, massMg: 0 }] }, 'promises[0].massMg'],
    [
      'an unknown recipe',
      { promises: [{ ...plainDay.promises[0]!, recipeId: 'haggis' }] },
      'promises[0].recipeId',
    ],
    [
      'a fat range that is upside down',
      { recipes: [{ ...plainRecipe, fatMostPpm: 100_000 }] },
      'recipes[0].fatMostPpm',
    ],
    [
      'a batch that is upside down',
      { recipes: [{ ...plainRecipe, batchMostMg: 1 }] },
      'recipes[0].batchMostMg',
    ],
    [
      'an unknown allergen',
      { recipes: [{ ...plainRecipe, additions: [{ ...plainRecipe.additions[0]!, allergens: ['love'] }] }] },
      'recipes[0].additions[0].allergens',
    ],
    [
      'shares that never make a whole',
      { recipes: [{ ...plainRecipe, meats: [{ kind: 'trim', mostPpm: 400_000 }] }] },
      'recipes[0].meats',
    ],
    ['a day that does not exist', { date: '2026-02-30' }, 'date'],
  ])('refuses %s by name', async (_, change, field) => {
    const answer = await planSausages({ ...plainDay, ...change } as KitchenDay);
    expect('faults' in answer && answer.faults.map(({ at }) => at)).toContain(field);
  });

  it('catches a plan that was tampered with', async () => {
    const day = plainDay;
    const good = await plan(day);
    const [batch] = good.batches;
    const draws = (massMg: number, lotId = 'lot') => ({
      ...good,
      batches: [{ ...batch!, draws: [{ lotId, massMg }] }],
    });
    const rules = (changed: SausagePlan, on: KitchenDay = day) =>
      checkSausagePlan(on, changed).map(({ rule }) => rule);
    expect(rules(draws(11 * kg))).toContain('K1');
    expect(rules(draws(5 * kg, 'ghost'))).toContain('K1');
    expect(rules({ ...good, ground: ['ghost'] })).toContain('K1');
    expect(rules(good, { ...day, lots: [{ ...plainLot, fatPpm: 500_000 }] })).toContain('K2');
    expect(rules(draws(kg))).toContain('K3');
    expect(
      rules(good, {
        ...day,
        recipes: [{ ...plainRecipe, meats: [{ kind: 'trim', mostPpm: 500_000 }, { kind: 'back-fat' }] }],
      }),
    ).toContain('K4');
    expect(rules(good, { ...day, lots: [{ ...plainLot, ownerId: 'ada' }] })).toContain('K5');
    expect(rules({ ...good, fills: [{ ...good.fills[0]!, filledMg: 6 * kg }] })).toContain('K6');
    expect(rules(draws(batch!.meatMg - 5000))).toContain('K6');
    expect(rules(good, { ...day, lots: [{ ...plainLot, cutOn: '2026-11-01' }] })).toContain('K7');
  });
});
