import type { Bar, Species } from '../species.ts';
import { type Breakdown, sumAt } from './breakdown.ts';
import { type ChainStep, carcassChain } from './carcass-chain.ts';
import { type Estimate, rounded, squaredCv } from './estimate.ts';
import { asPublished, type ExpectedShares, expectShares, type YieldBelief } from './expect-shares.ts';
import type { KnownCarcass } from './known-carcass.ts';
import { MassTable } from './mass-table.ts';
import { spreadShares } from './spread-shares.ts';
import { type RibChance, ribChances, type YieldProfile } from './yield-profile.ts';

/** What one side of an animal is expected to give. Masses in mg, lengths in um, mean and spread. */
export interface YieldPrediction {
  readonly chain: readonly ChainStep[];
  readonly sideMg: Estimate;
  readonly shares: ExpectedShares;
  /** by part */
  readonly partMg: MassTable;
  /** by "part/operation/output": what an operation gives if it is done */
  readonly outputMg: MassTable;
  /** by bar */
  readonly barUm: ReadonlyMap<string, Estimate>;
  readonly ribs: readonly RibChance[];
}

/** Length of a bar over that at the reference carcass. */
function lengthScale(species: Species, carcassGrams: number): number {
  const { referenceGrams, exponent } = species.lengthGrowth;
  return (carcassGrams / referenceGrams) ** exponent;
}

function barLengths(species: Species, profile: YieldProfile, scale: number): Map<string, Estimate> {
  const cv = profile.lengthCvPercent.value / 100;
  const bars = Object.values(species.parts).filter((part): part is Bar => part.kind === 'bar');
  return new Map(
    bars.map(({ id, zones }) => {
      const mean = zones.reduce((sum, { lengthMm }) => sum + lengthMm, 0) * 1000 * scale;
      return [id, rounded({ mean, sd: mean * cv })];
    }),
  );
}

/**
 * What one side gives, from what is known of the animal. Ask `checkKnown` first: this trusts its input.
 * @throws RangeError when the tree cannot hold what is believed
 */
export function predictYields(
  breakdown: Breakdown,
  profile: YieldProfile,
  known: KnownCarcass,
  belief: YieldBelief = asPublished,
): YieldPrediction {
  const usualShare = (id: string): number => sumAt(breakdown.compartments, breakdown.held.get(id) ?? []);
  const chain = carcassChain(profile, known, usualShare);
  const sideGrams = chain.at(-1)?.grams as Estimate;
  const sideMg = { mean: sideGrams.mean * 1000, sd: sideGrams.sd * 1000 };
  const shares = expectShares(breakdown, profile, known, belief);
  const spread = spreadShares(breakdown, profile, shares);
  const side = { mean: sideMg.mean, squaredCv: squaredCv(sideMg) };
  const partMg = new MassTable(breakdown.partAt, shares.parts, spread.parts, side);
  const outputMg = new MassTable(breakdown.outputAt, shares.outputs, spread.outputs, side);
  const scale = lengthScale(breakdown.species, 2 * sideGrams.mean) * belief.lengths;
  const barUm = barLengths(breakdown.species, profile, scale);
  const ribs =
    known.ribs === undefined
      ? ribChances(breakdown.species, profile, belief.ribs)
      : [{ ribs: known.ribs, chance: 1 }];
  return { chain, sideMg, shares, partMg, outputMg, barUm, ribs };
}
