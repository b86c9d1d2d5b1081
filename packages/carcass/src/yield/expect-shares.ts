import { type Breakdown, sumAt } from './breakdown.ts';
import type { KnownCarcass } from './known-carcass.ts';
import { type Settled, settle } from './settle.ts';
import type { FatnessMeasure, YieldProfile } from './yield-profile.ts';

/** What a shop believes of a farm's animals, against what is published: 1.06 is six percent more. */
export interface YieldBelief {
  /** id of a part, an item or a bulk to its share over the published one */
  readonly shares: Readonly<Record<string, number>>;
  readonly lengths: number;
  /** mean number of ribs; as published when left out */
  readonly ribs?: number;
}

export const asPublished: YieldBelief = { shares: {}, lengths: 1 };

function multiply(shares: Float64Array, at: readonly number[] | undefined, by: number): void {
  for (const index of at ?? []) shares[index] = (shares[index] as number) * by;
}

function undress(
  breakdown: Breakdown,
  profile: YieldProfile,
  known: KnownCarcass,
  shares: Float64Array,
): void {
  for (const element of profile.dressing) {
    if (!element.usuallyOn || known.dressing[element.id] !== false) continue;
    for (const { id, share } of element.takes) multiply(shares, breakdown.held.get(id), 1 - share);
  }
}

/** Moves groups of parts by the published points; as a rate of each group's share, so that no share ends below 0. */
function fatten(breakdown: Breakdown, measure: FatnessMeasure, value: number, shares: Float64Array): void {
  for (const { ids, points } of measure.moves) {
    const at = ids.flatMap((id) => breakdown.held.get(id) ?? []);
    const rate = points / 100 / sumAt(breakdown.compartments, at);
    multiply(shares, at, Math.exp(rate * (value - measure.reference.value)));
  }
}

function normalise(shares: Float64Array): void {
  const sum = shares.reduce((running, share) => running + share, 0);
  for (const [index, share] of shares.entries()) shares[index] = share / sum;
}

const mostTurns = 200;

/** Scales groups to their targets, and what is outside of them to the rest, until all of them stand (raking). */
function rake(shares: Float64Array, aims: readonly { at: readonly number[]; share: number }[]): void {
  for (let turn = 0; turn < mostTurns; turn++) {
    let off = 0;
    for (const { at, share } of aims) {
      const now = sumAt(shares, at);
      off = Math.max(off, Math.abs(now / share - 1));
      const others = (1 - share) / (1 - now);
      for (let index = 0; index < shares.length; index++) shares[index] = (shares[index] as number) * others;
      multiply(shares, at, share / now / others);
    }
    if (off < 1e-12) return;
  }
}

/** Learned figures hold for the dressing and fatness of the animal at hand: they are ratios to what is expected of it. */
function believe(breakdown: Breakdown, belief: YieldBelief, shares: Float64Array): Settled {
  const aims: { at: readonly number[]; share: number }[] = [];
  const targets = new Map<string, number>();
  let before: Settled | undefined;
  for (const [id, ratio] of Object.entries(belief.shares)) {
    const at = breakdown.held.get(id);
    if (at) {
      const share = sumAt(shares, at);
      if (share > 0) aims.push({ at, share: Math.min(0.95, share * ratio) });
      continue;
    }
    before ??= settle(breakdown, shares);
    for (const [index, output] of breakdown.outputs.entries())
      if (output.id === id) targets.set(output.key, (before.outputs[index] as number) * ratio);
  }
  rake(shares, aims);
  normalise(shares);
  return settle(breakdown, shares, targets);
}

/** Mean shares of a side's compartments, and of all that can be made of them. */
export interface ExpectedShares extends Settled {
  readonly compartments: Float64Array;
}

/**
 * What an animal's side is expected to consist of: the published shares, less what was dressed off, moved by its
 * fatness (the fat depth where it is known, else the lean), then by what was learned. Shares add up to 1.
 */
export function expectShares(
  breakdown: Breakdown,
  profile: YieldProfile,
  known: KnownCarcass,
  belief: YieldBelief = asPublished,
): ExpectedShares {
  const compartments = Float64Array.from(breakdown.compartments);
  undress(breakdown, profile, known, compartments);
  if (profile.lastRibFatMm && known.lastRibFatMm !== undefined)
    fatten(breakdown, profile.lastRibFatMm, known.lastRibFatMm, compartments);
  else if (profile.leanPercent && known.leanPercent !== undefined)
    fatten(breakdown, profile.leanPercent, known.leanPercent, compartments);
  normalise(compartments);
  const plain = Object.keys(belief.shares).length === 0;
  const settled = plain ? settle(breakdown, compartments) : believe(breakdown, belief, compartments);
  return { ...settled, compartments };
}
