import { hog } from '@flitchbook/carcass';
import { type CuttingDay, checkPlan, type Goals, goalsOf } from '@flitchbook/plan';
import { compareSplits, planDay, type SplitOption } from '@flitchbook/solver';
import { seededBelow, shuffled } from '../concurrency/seeded.ts';
import { type Ask, ask, dayOf, grams, inches, loose, ribs } from './one-side.ts';

/** What customers ask of a hog's middle; every one of them rules another out. */
const wishes: readonly ((pieces: number) => Ask)[] = [
  (pieces) => inches('rib-chop', 1, pieces),
  (pieces) => inches('centre-chop', 0.75, pieces),
  (pieces) => inches('boneless-chop', 1, pieces),
  (pieces) => inches('t-bone-chop', 1.25, pieces),
  (pieces) => ribs('long-bone-chop', 1, pieces),
  () => ask('back-ribs'),
  () => ask('spareribs'),
  () => ask('tenderloin'),
  () => ask('porchetta'),
  () => grams('slab-bacon', 1500, 3000),
  (pieces) => loose('ground-pork', 500 * pieces),
];

/** One side of a hog, three to five wishes for its middle at prices of their own. */
export function middleDay(seed: number): CuttingDay {
  const below = seededBelow(seed);
  const asks = shuffled(wishes, below)
    .slice(0, 3 + below(3))
    .map((wish) => wish(1 + below(4)));
  const side = { species: hog, carcassGrams: 70_000 + 1000 * below(30), ribs: 14 + below(3) };
  const facts = ['skin-on', 'head', 'feet', 'organs'] as const;
  const day = dayOf({ ...side, facts, sides: 1 }, asks);
  const lines = day.lines.map((line) => ({ ...line, priceMinorPerKg: 800 + 50 * below(60) }));
  return { ...day, lines };
}

const order = ['promised', 'wished', 'rest'] as const;
/** Each goal is rounded to a whole minor unit by itself. */
const asGood = (left: Goals, right: Goals): boolean =>
  order.every((goal) => Math.abs(left[goal] - right[goal]) <= 1);
const isBetter = (left: Goals, right: Goals): boolean => {
  const goal = order.find((name) => Math.abs(left[name] - right[name]) > 1);
  return goal !== undefined && left[goal] > right[goal];
};

const exact = { deadlineSeconds: 30, gap: 0, seed: 1 } as const;

/** In what the adviser differs from every way to break the middle, planned one by one with the choices locked. */
export async function faultsOfAdvice(day: CuttingDay): Promise<readonly string[]> {
  const free = await planDay(day, exact);
  const { options, undecided } = await compareSplits(day, free, { sideId: 'left', part: 'middle' }, exact);
  const faults = undecided.map(({ wayId }) => `${wayId}: not decided`);
  const best = options[0];
  if (!best || !asGood(best.goals, goalsOf(day, free))) faults.push('the best way is not the day’s own plan');
  for (const option of options) faults.push(...(await faultsOfOption(day, option, goalsOf(day, free))));
  return faults;
}

async function faultsOfOption(day: CuttingDay, option: SplitOption, best: Goals): Promise<readonly string[]> {
  const { wayId, locks, goals, plan } = option;
  const settled = { ...day, locks: [...locks] };
  const broken = checkPlan(settled, plan).map(({ rule, at }) => `${wayId} breaks ${rule} at ${at}`);
  const locked = goalsOf(day, await planDay(settled, exact));
  // A zone parted between two manners can't be locked: what is locked may be planned better then.
  const mayDiffer = wayId.endsWith('/mixed');
  if (isBetter(goals, locked)) broken.push(`${wayId}: better than the day with its choices locked`);
  if (!mayDiffer && !asGood(goals, locked))
    broken.push(`${wayId}: ${JSON.stringify(goals)}, locked ${JSON.stringify(locked)}`);
  if (isBetter(locked, best)) broken.push(`${wayId}: better than the best plan of the day`);
  return broken;
}
