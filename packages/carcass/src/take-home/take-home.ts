import type { Breakdown } from '../yield/breakdown.ts';
import {
  cautiousHigh,
  cautiousLow,
  type Estimate,
  product,
  rounded,
  scaled,
  usualConfidence,
} from '../yield/estimate.ts';
import type { YieldPrediction } from '../yield/predict-yields.ts';
import type { YieldProfile } from '../yield/yield-profile.ts';
import type { CuttingStyle, TakeHomeProfile } from './cutting-style.ts';
import { type Ending, type SeenAnimal, StyleWalk } from './kept-share.ts';

/** From and to: nine in ten animals give more than the first, and nine in ten less than the second. */
interface Span {
  readonly low: number;
  readonly high: number;
}

export interface TakeHomeLine extends Ending {
  readonly name: string;
  readonly massMg: Estimate;
}

/** What a customer carries home of one side or two, as ranges, and what stays. */
export interface TakeHome {
  readonly style: CuttingStyle;
  readonly hangingMg: Estimate;
  readonly boxedMg: Estimate;
  readonly boxed: Span;
  /** boxed over the cold weight of the sides, percent */
  readonly percent: Span;
  readonly lines: readonly TakeHomeLine[];
  /** what was not wanted: where the difference went */
  readonly declined: readonly TakeHomeLine[];
  readonly lost: readonly TakeHomeLine[];
  readonly servings: Span;
  readonly freezerCubicFeet: Span;
}

const poundMg = 453_592.37;

/** Servings of the lines at their means, scaled to what the boxes hold at least and at most. */
function servingsOf(
  profile: TakeHomeProfile,
  lines: readonly TakeHomeLine[],
  boxedMg: Estimate,
  boxed: Span,
): Span {
  let [fewest, most] = [0, 0];
  for (const { id, massMg } of lines) {
    const figure = profile.servings.find(({ ids }) => ids.includes(id));
    fewest += (massMg.mean / poundMg) * (figure?.fewestPerPound ?? 0);
    most += (massMg.mean / poundMg) * (figure?.mostPerPound ?? 0);
  }
  if (boxedMg.mean === 0) return { low: 0, high: 0 };
  return {
    low: Math.floor((fewest * boxed.low) / boxedMg.mean),
    high: Math.ceil((most * boxed.high) / boxedMg.mean),
  };
}

/**
 * The boxes of a customer who takes one side, or both, cut in a style. Curing and smoking are not in it: what they take
 * or add depends on the cure.
 */
export function takeHome(
  species: {
    readonly breakdown: Breakdown;
    readonly yields: YieldProfile;
    readonly takeHome: TakeHomeProfile;
  },
  prediction: YieldPrediction,
  style: CuttingStyle,
  sides: 1 | 2,
  {
    confidence = usualConfidence,
    animal = null,
  }: { readonly confidence?: number; readonly animal?: SeenAnimal | null } = {},
): TakeHome {
  const { breakdown, takeHome: profile } = species;
  const walk = new StyleWalk(breakdown, species.yields, prediction.shares, style, animal);
  const hangingMg = scaled(prediction.sideMg, sides);
  const stays = ({ id }: Ending): boolean => style.declines.includes(id);
  const isLost = ({ id }: Ending): boolean => profile.lost.includes(id);
  const goes = (ending: Ending): boolean => !stays(ending) && !isLost(ending);
  const massOf = (picks: (ending: Ending) => boolean): Estimate =>
    rounded(product(hangingMg, walk.shareOf(picks)));
  const tables = {
    item: breakdown.species.items,
    stock: breakdown.species.stocks,
    bulk: breakdown.species.bulks,
  };
  const lines = walk.endings().map(
    (ending): TakeHomeLine => ({
      ...ending,
      name: tables[ending.kind][ending.id]?.name ?? ending.id,
      massMg: massOf(({ kind, id }) => kind === ending.kind && id === ending.id),
    }),
  );
  const share = walk.shareOf(goes);
  const boxedMg = massOf(goes);
  const boxed = {
    low: Math.round(cautiousLow(boxedMg, confidence)),
    high: Math.round(cautiousHigh(boxedMg, confidence)),
  };
  const taken = lines.filter(goes);
  return {
    style,
    hangingMg: rounded(hangingMg),
    boxedMg,
    boxed,
    percent: { low: 100 * cautiousLow(share, confidence), high: 100 * cautiousHigh(share, confidence) },
    lines: taken,
    declined: lines.filter(stays),
    lost: lines.filter(isLost),
    servings: servingsOf(profile, taken, boxedMg, boxed),
    freezerCubicFeet: {
      low: boxed.low / poundMg / profile.freezer.tightestPoundsPerCubicFoot,
      high: boxed.high / poundMg / profile.freezer.loosestPoundsPerCubicFoot,
    },
  };
}
