import type { Bar, Species } from '../species.ts';
import type { Breakdown } from '../yield/breakdown.ts';
import { expectShares } from '../yield/expect-shares.ts';
import { spreadShares } from '../yield/spread-shares.ts';
import type { YieldProfile } from '../yield/yield-profile.ts';
import type { MeasuredSide } from './measured-side.ts';

/** What one side says of one figure: the logarithm of measured over expected, and how far sides differ in it. */
export interface SideReading {
  readonly kind: 'share' | 'length' | 'ribs';
  readonly id: string;
  readonly farm: string;
  readonly log: number;
  readonly sd: number;
}

/** A pool of trim depends on how the side was cut; a bulk that the usual way gives once does not. */
function isTaught(breakdown: Breakdown, id: string): boolean {
  return !Object.hasOwn(breakdown.species.bulks, id) || breakdown.held.get(id)?.length === 1;
}

function shareReadings(breakdown: Breakdown, profile: YieldProfile, side: MeasuredSide): SideReading[] {
  const means = expectShares(breakdown, profile, side.known);
  const spread = spreadShares(breakdown, profile, means);
  return side.weighed.flatMap(({ id, grams }) => {
    const at = breakdown.outputs.findIndex(
      (output, index) => output.id === id && (means.outputs[index] as number) > 0,
    );
    const share = means.outputs[at];
    if (!share || !isTaught(breakdown, id)) return [];
    const log = Math.log(grams / side.sideGrams / share);
    const sd = Math.sqrt(Math.log1p(spread.outputs[at] as number));
    return [{ kind: 'share' as const, id, farm: side.farm, log, sd }];
  });
}

/** Length of a stock that pieces can take up on the reference carcass, um; 0 when the species has no such stock. */
function stockUm(species: Species, stock: string): number {
  const bars = Object.values(species.parts).filter((part): part is Bar => part.kind === 'bar');
  const lengths = bars.map(({ zones }) =>
    zones.reduce((sum, { lengthMm, manners }) => {
      const manner = manners.find((each) => each.stock === stock);
      return sum + (manner ? (lengthMm * manner.lengthPpm) / 1000 : 0);
    }, 0),
  );
  return Math.max(0, ...lengths);
}

function lengthReadings(breakdown: Breakdown, profile: YieldProfile, side: MeasuredSide): SideReading[] {
  const { lengthGrowth } = breakdown.species;
  const scale = ((2 * side.sideGrams) / lengthGrowth.referenceGrams) ** lengthGrowth.exponent;
  return side.slices.flatMap(({ stock, thicknessUm, kerfUm, pieces }) => {
    const expectedUm = stockUm(breakdown.species, stock) * scale;
    if (expectedUm === 0) return [];
    // What was left after the last slice is anything from nothing to just under a slice: half of one is the best guess.
    const takesUm = thicknessUm + kerfUm;
    const log = Math.log(((pieces + 0.5) * takesUm) / expectedUm);
    const rounding = takesUm / Math.sqrt(12) / expectedUm;
    const sd = Math.hypot(profile.chopsCvPercent.value / 100, rounding);
    return [{ kind: 'length' as const, id: 'lengths', farm: side.farm, log, sd }];
  });
}

function ribReadings(profile: YieldProfile, side: MeasuredSide): SideReading[] {
  const { ribs } = side.known;
  const { mean, sd } = profile.ribs;
  if (ribs === undefined || sd === 0) return [];
  return [{ kind: 'ribs', id: 'ribs', farm: side.farm, log: Math.log(ribs / mean), sd: sd / mean }];
}

/** Everything that a side which passed `checkMeasured` has to say. */
export function sideReadings(
  breakdown: Breakdown,
  profile: YieldProfile,
  side: MeasuredSide,
): readonly SideReading[] {
  return [
    ...shareReadings(breakdown, profile, side),
    ...lengthReadings(breakdown, profile, side),
    ...ribReadings(profile, side),
  ];
}
