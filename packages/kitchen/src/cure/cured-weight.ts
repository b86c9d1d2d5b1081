import { type Ratio, ratio, roundHalfUp, times } from '@flitchbook/carcass';
import type { Standing } from './cure-rules.ts';

/** What a stage of a cure does to the weight, in hundredths of a percent of what went into it: a gain is above 0. */
export interface WeightStage {
  readonly what: string;
  /** 600 is a gain of 6 % */
  readonly leastBp: number;
  readonly mostBp: number;
}

export interface CureChain {
  readonly id: string;
  readonly name: string;
  readonly stages: readonly WeightStage[];
  readonly source: string;
  readonly standing: Standing;
}

const california = 'University of California station, letter of 1918, printed by a newspaper in 2018';
const stage = (what: string, leastBp: number, mostBp = leastBp): WeightStage => ({ what, leastBp, mostBp });

export const usualCureChains: readonly CureChain[] = [
  {
    id: 'ham-pickled-smoked',
    name: 'Ham, pickled and smoked',
    stages: [stage('pickle', 600), stage('smoke', -1000)],
    source: california,
    standing: 'second-hand',
  },
  {
    id: 'belly-pickled-smoked',
    name: 'Belly, pickled and smoked',
    stages: [stage('pickle', 800), stage('smoke', -1200)],
    source: california,
    standing: 'second-hand',
  },
  {
    id: 'belly-dry-smoked',
    name: 'Belly, dry-cured and smoked',
    stages: [stage('dry cure', -200), stage('smoke', -900, -800)],
    source: california,
    standing: 'second-hand',
  },
  {
    id: 'country-ham',
    name: 'Country ham',
    stages: [stage('cure, equalise and dry', -1800)],
    source: '9 CFR 319.106, a loss of at least 18 %, from memory',
    standing: 'memory',
  },
];

const kept = (stages: readonly WeightStage[], bound: 'leastBp' | 'mostBp'): Ratio =>
  stages.reduce((share, entry) => times(share, ratio(10_000 + entry[bound], 10_000)), ratio(1));

/** What comes out of a cure, as a range. */
export function curedWeight(
  chain: CureChain,
  greenMg: number,
): { readonly leastMg: number; readonly mostMg: number } {
  const green = ratio(greenMg);
  return {
    leastMg: roundHalfUp(times(green, kept(chain.stages, 'leastBp'))),
    mostMg: roundHalfUp(times(green, kept(chain.stages, 'mostBp'))),
  };
}

/** The green weight that gives a cured weight for certain, by the least the chain keeps. */
export function greenWeightFor(chain: CureChain, curedMg: number): number {
  const { over, under } = kept(chain.stages, 'leastBp');
  return Number((BigInt(curedMg) * under + over - 1n) / over);
}

/** Raw bacon that was pumped must come back to its green weight before it is sliced: 9 CFR 319.107, as quoted. */
export function isBaconHeavy(greenMg: number, curedMg: number): boolean {
  return curedMg > greenMg;
}
