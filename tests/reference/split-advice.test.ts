import { hog } from '@flitchbook/carcass';
import { type CuttingDay, checkPlan, goalsOf } from '@flitchbook/plan';
import { compareSplits, planDay, type SplitOption } from '@flitchbook/solver';
import { beforeAll, describe, expect, it } from 'vitest';
import { ask, dayOf, inches, planned } from './one-side.ts';
import { faultsOfAdvice, middleDay } from './split-days.ts';

const limits = { deadlineSeconds: 20, seed: 1 } as const;
const facts = ['skin-on', 'head', 'feet', 'organs'] as const;
const carcass = { species: hog, carcassGrams: 83_461, ribs: 15, facts };

describe('the ways to break a middle', () => {
  // Two hundred by name: npx tsx tests/reference/run-split-days.ts
  it.each([1, 2, 3])(
    'are what planning each of them by itself comes to: day %i',
    async (seed) => {
      expect(await faultsOfAdvice(middleDay(seed))).toEqual([]);
    },
    120_000,
  );

  describe('beside another side that stays as it is', () => {
    let day: CuttingDay;
    let options: readonly SplitOption[];
    beforeAll(async () => {
      day = dayOf({ ...carcass, sides: 2 }, [
        ask('tenderloin', 2),
        inches('t-bone-chop', 1.25, 12),
        ask('back-ribs', 2),
        inches('rib-chop', 1, 6),
      ]);
      const plan = await planned(day);
      ({ options } = await compareSplits(day, plan, { sideId: 'left' }, limits));
      const other = plan.sides.find(({ sideId }) => sideId === 'right');
      for (const option of options)
        expect(option.plan.sides.find(({ sideId }) => sideId === 'right')).toEqual(other);
    }, 120_000);

    const gives = (option: SplitOption, line: number): number =>
      option.fills.find(({ lineId }) => lineId === `${line}`)?.pieces ?? 0;

    it('never give what excludes each other: a whole tenderloin and T-bone chops, back ribs and rib chops', () => {
      expect(options.length).toBeGreaterThan(8);
      for (const option of options) {
        expect(Math.min(gives(option, 0), gives(option, 1)), option.says).toBe(0);
        // Back ribs are of a run of eight ribs or more, bones out: what is left over of the rib end is less than six chops.
        if (gives(option, 2) > 0) expect(gives(option, 3), option.says).toBeLessThan(6);
      }
      expect(options.some((option) => gives(option, 0) > 0)).toBe(true);
      expect(options.some((option) => gives(option, 1) > 0)).toBe(true);
      expect(options.some((option) => gives(option, 2) > 0)).toBe(true);
    });

    it('are whole plans of the day that the check passes, one of them in force, best first', () => {
      for (const { plan, locks, goals, wayId } of options) {
        expect(checkPlan({ ...day, locks: [...locks] }, plan), wayId).toEqual([]);
        expect(goalsOf(day, plan)).toEqual(goals);
      }
      expect(options.filter(({ inForce }) => inForce)).toHaveLength(1);
      const promised = options.map(({ goals }) => goals.promised);
      expect(promised).toEqual(promised.toSorted((a, b) => b - a));
    });

    it('say at which price they would be as good as the chops', () => {
      const priced = options.filter(({ tipping }) => tipping !== null);
      expect(priced.length).toBeGreaterThan(0);
      for (const { tipping, gainMinor, wayId } of priced) {
        const against = options.find((option) => option.wayId === tipping?.againstWay);
        if (!tipping || !against) throw new Error(`${wayId} is compared with nothing`);
        const dearer = tipping.tipsAtMinorPerKg > tipping.nowMinorPerKg;
        if (Math.abs(gainMinor - against.gainMinor) > tipping.grams / 500)
          expect(dearer, wayId).toBe(gainMinor < against.gainMinor && tipping.tipsAtMinorPerKg > 0);
      }
    });
  });
});

describe('an answer there is always', () => {
  const theDay = dayOf({ ...carcass, sides: 1 }, [ask('tenderloin')]);

  it('with no time at all: the plan in force, and which ways were not looked at', async () => {
    const plan = await planned(theDay);
    const advice = await compareSplits(theDay, plan, { sideId: 'left' }, { ...limits, deadlineSeconds: 0 });
    expect(advice.options.map(({ inForce }) => inForce)).toEqual([true]);
    expect(advice.undecided.length).toBeGreaterThan(8);
  });

  it('cut short by whoever asked, with what was found so far', async () => {
    const plan = await planned(theDay);
    const stop = new AbortController();
    const seen: number[] = [];
    const onProgress = ({ done }: { done: number }): void => {
      seen.push(done);
      if (done === 2) stop.abort();
    };
    const asked = { ...limits, signal: stop.signal, onProgress };
    const advice = await compareSplits(theDay, plan, { sideId: 'left' }, asked);
    expect(seen).toEqual([1, 2]);
    expect(advice.options.length).toBeLessThanOrEqual(3);
    expect(advice.undecided.length).toBeGreaterThan(5);
  });

  it('where there is nothing to choose: no such side, no such part, a half that is cut as its owner says', async () => {
    const share = {
      shareId: 's',
      orderId: 's',
      owner: 'Marthe Quill',
      speciesId: 'hog',
      size: 'half',
      rank: 'promised',
      priceMinorPerKg: 900,
      instructions: { operations: {}, manners: {}, portions: {} },
    } as const;
    const owned = dayOf({ ...carcass, sides: 1 }, [], [share]);
    const [plan, ofOwner] = [await planned(theDay), await planDay(owned, { ...limits, gap: 0 })];
    const says = async (day: CuttingDay, of: typeof plan, sideId: string, part?: string) =>
      (await compareSplits(day, of, { sideId, ...(part && { part }) }, limits)).says;
    expect(await says(theDay, plan, 'nowhere')).toMatch(/no side "nowhere"/);
    expect(await says(theDay, plan, 'left', 'wing')).toMatch(/no "wing"/);
    expect(await says(owned, ofOwner, 'left')).toMatch(/Marthe Quill/);
  });
});
