import type { NewHold } from '@flitchbook/contracts';
import type { DemandLine } from '@flitchbook/plan';
import { createDatabase, dropDatabase, freshName } from '@flitchbook/test-harness';
import { describeOnPostgres } from '@flitchbook/test-harness/vitest';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { claimDayOf, isAllServed } from '../../apps/api/src/services/reservations/claim-day.ts';
import { type Below, faultsOf, sell } from './claim-rounds.ts';
import { openTown } from './many-rounds.ts';
import { seededBelow } from './seeded.ts';
import { chop, holdOf, openDayOn, readDay, tenderloin } from './shop-on-postgres.ts';

type Line = NewHold['lines'][number];
type Town = Awaited<ReturnType<typeof openTown>>;

const seed = 62_063;
const oneHog = [{ grams: 83_500 }];

/** Whether a fresh solve of what is held, and this beside it, serves all of both. */
async function wouldFit({ shop, solver }: Town, dayId: string, line: Line): Promise<boolean> {
  const { stored } = await readDay(shop.db, shop.shopId, dayId);
  const { cuttingDay } = stored;
  const more = {
    ...line,
    lineId: 'one-more',
    orderId: 'one-more',
    owner: 'one more',
    speciesId: 'hog',
    rank: 'promised',
    priceMinorPerKg: 1,
    sameAnimal: false,
    substitutes: [],
  } as unknown as DemandLine;
  const held = {
    lineIds: new Set(cuttingDay.lines.map(({ lineId }) => lineId)),
    shareIds: new Set<string>(),
  };
  const claimed = { lineIds: new Set(['one-more']), shareIds: new Set<string>() };
  const question = claimDayOf({ ...cuttingDay, lines: [...cuttingDay.lines, more] }, null, held, claimed);
  const answer = await solver.solve(question.day, { deadlineSeconds: 8, gap: 0, seed: 5 });
  if (!answer.ok) throw new Error(answer.says);
  return isAllServed(answer.plan);
}

/** Everybody asks at once; afterwards the day holds, and no refusal of a kind was wrong. */
async function sellAndJudge(town: Town, wishes: readonly Line[], below: Below) {
  const { shop } = town;
  const dayId = await openDayOn(shop.db, shop.shopId, oneHog);
  const holds = wishes.map((line) => holdOf([line]));
  const { answers, tally } = await sell(shop, dayId, holds, below);
  expect(await faultsOf(shop, dayId)).toEqual([]);
  // Nothing is given back here, so what fits beside all that is held in the end fitted at any moment before.
  const refused = answers.flatMap(({ outcome, input }) =>
    !outcome.ok && outcome.type === 'reservation.not-possible' ? [JSON.stringify(input.lines[0])] : [],
  );
  const wrong: string[] = [];
  for (const kind of new Set(refused)) {
    if (await wouldFit(town, dayId, JSON.parse(kind) as Line)) wrong.push(kind);
  }
  expect(wrong).toEqual([]);
  return { dayId, tally, refused };
}

describeOnPostgres('claims that take of the same meat in different ways', (server) => {
  const name = freshName('mixed');
  let town: Town;
  beforeAll(async () => {
    town = await openTown(await createDatabase(server.url, name), seededBelow(seed), 10);
  });
  afterAll(async () => {
    await town.close();
    await dropDatabase(server.url, name);
  });

  it('share the length of a loin to the last chop of any thickness', async () => {
    const below = seededBelow(seed + 1);
    const wishes = Array.from({ length: 60 }, () => chop('rib-chop', 19_000 + 6350 * below(5), 1 + below(2)));
    const { tally, refused } = await sellAndJudge(town, wishes, below);
    expect(tally.accepted).toBeGreaterThan(5);
    expect(refused.length).toBeGreaterThan(0);
  }, 300_000);

  // A T-bone chop has a piece of the tenderloin in it: a side gives the one or the other whole.
  it('part the tenderloin between those who want it whole and those who want T-bones', async () => {
    const below = seededBelow(seed + 2);
    const tBones = Array.from({ length: 20 }, () => chop('t-bone-chop', 25_400, 2));
    const whole = Array.from({ length: 10 }, () => tenderloin());
    const { dayId, tally } = await sellAndJudge(town, [...tBones, ...whole], below);
    expect(tally.accepted).toBeGreaterThanOrEqual(2);
    const { stored } = await readDay(town.shop.db, town.shop.shopId, dayId);
    const tenderloins = stored.cuttingDay.lines.filter(({ cut }) => cut === 'tenderloin').length;
    const withTBones = stored.cuttingDay.lines.filter(({ cut }) => cut === 't-bone-chop').length > 0;
    // Common practice, no source: two sides, so two whole tenderloins, less one for each side that is sawn into T-bones.
    expect(tenderloins).toBeLessThanOrEqual(withTBones ? 1 : 2);
  }, 300_000);
});
