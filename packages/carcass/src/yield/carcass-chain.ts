import { certain, type Estimate, product, rounded, scaled } from './estimate.ts';
import type { KnownCarcass } from './known-carcass.ts';
import type { YieldProfile } from './yield-profile.ts';

/** One weighing, weighed or expected, and what was lost on the way to it. */
export interface ChainStep {
  readonly stage: 'live' | 'hot' | 'cold' | 'side';
  readonly weighed: boolean;
  readonly grams: Estimate;
  /** what the step before loses on the way here; empty for the first */
  readonly loses: string;
}

/** Shares of the hot weight that hang with the carcass beyond the usual dressing, or are missing from it. */
interface DressedOff {
  /** share of a side that is taken off against the usual dressing */
  readonly fromSides: number;
  /** over the usual hot weight: what hangs with it and is no piece of a side */
  readonly extra: number;
}

function dressedOff(
  profile: YieldProfile,
  known: KnownCarcass,
  shareOfId: (id: string) => number,
): DressedOff {
  let fromSides = 0;
  let extra = 0;
  for (const { id, usuallyOn, takes, livePercent } of profile.dressing) {
    const on = known.dressing[id] === true;
    if (usuallyOn && !on) fromSides += takes.reduce((sum, take) => sum + take.share * shareOfId(take.id), 0);
    if (!usuallyOn && on && livePercent) extra += livePercent.value / profile.dressingPercent.mean;
  }
  return { fromSides, extra };
}

function names(profile: YieldProfile, known: KnownCarcass): string {
  const off = profile.dressing.filter(({ id }) => known.dressing[id] !== true).map(({ name }) => name);
  const on = profile.dressing.filter(({ id }) => known.dressing[id] === true).map(({ name }) => name);
  const left = on.length === 0 ? '' : `; ${on.join(', ')} still hanging`;
  return `blood, guts and their contents${off.length === 0 ? '' : `, ${off.join(', ')}`}${left}`;
}

/**
 * The carcass from the weight that is known to one chilled side. Where several weights are known the last counts.
 * @param shareOfId share of a usual side that a part, an item or a bulk is
 */
export function carcassChain(
  profile: YieldProfile,
  known: KnownCarcass,
  shareOfId: (id: string) => number,
): readonly ChainStep[] {
  const steps: ChainStep[] = [];
  const { fromSides, extra } = dressedOff(profile, known, shareOfId);
  const hanging = 1 - fromSides + extra;
  let grams: Estimate = certain(0);
  const step = (
    stage: ChainStep['stage'],
    weighed: number | undefined,
    expected: () => Estimate,
    loses: string,
  ): void => {
    grams = weighed === undefined ? expected() : certain(weighed);
    steps.push({
      stage,
      weighed: weighed !== undefined || (stage === 'live' && liveBy !== 'tape'),
      grams: rounded(grams),
      loses,
    });
  };
  const { liveGrams, hotGrams, coldGrams, liveBy } = known;
  if (liveGrams !== undefined) {
    const cv = liveBy === 'tape' ? profile.tapeCvPercent.value / 100 : 0;
    step('live', undefined, () => ({ mean: liveGrams, sd: liveGrams * cv }), '');
  }
  const dressing = scaled(profile.dressingPercent, hanging / 100);
  if (liveGrams !== undefined || hotGrams !== undefined)
    step(
      'hot',
      hotGrams,
      () => product(grams, dressing),
      liveGrams === undefined ? '' : names(profile, known),
    );
  const kept = { mean: 1 - profile.coolerPercent.mean / 100, sd: profile.coolerPercent.sd / 100 };
  step('cold', coldGrams, () => product(grams, kept), steps.length === 0 ? '' : 'water, in the cooler');
  const halves = (1 - fromSides) / hanging / 2;
  const apart = profile.dressing.filter(({ id, livePercent }) => livePercent && known.dressing[id] === true);
  const loses =
    apart.length === 0 ? 'split in two' : `${apart.map(({ name }) => name).join(', ')}, then split in two`;
  step('side', undefined, () => scaled(grams, halves), loses);
  return steps;
}
