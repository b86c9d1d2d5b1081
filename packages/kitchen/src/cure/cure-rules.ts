import type { Substance } from './substances.ts';

/**
 * How the cure gets in. A short soak and a long soak are the handbook's two ways to reckon a tub: by what the meat
 * picked up, and by meat and pickle as one.
 */
export type CureMethod = 'mixed-in' | 'dry-rub' | 'short-soak' | 'long-soak' | 'pumped';

export const cureMethods: readonly CureMethod[] = [
  'mixed-in',
  'dry-rub',
  'short-soak',
  'long-soak',
  'pumped',
];

/** How far a figure can be trusted: the text itself was read, quoted by others, worked out, or remembered. */
export type Standing = 'quoted' | 'derived' | 'second-hand' | 'memory';

export interface CureLimit {
  readonly methods: readonly CureMethod[];
  /** what goes in, or what is found in the finished meat */
  readonly basis: 'ingoing' | 'residual';
  /** level: required, neither less nor more */
  readonly kind: 'at-most' | 'at-least' | 'level';
  readonly of: 'nitrite' | 'nitrate' | 'nitrite-and-nitrate' | 'ascorbate';
  /** ppm for each substance that the rule prints a figure for; others are converted to the first. 0 forbids it. */
  readonly ppm: Readonly<Partial<Record<Substance | 'ascorbate', number>>>;
  /** reckoned on the weight without skin */
  readonly skinFree?: boolean;
  readonly source: string;
  readonly standing: Standing;
  /** the day on which the shop last held the figure against its source */
  readonly checkedOn: string;
}

export interface ProductClass {
  readonly id: string;
  readonly name: string;
  readonly says: string;
  readonly limits: readonly CureLimit[];
}

export interface Jurisdiction {
  readonly id: string;
  readonly name: string;
  readonly says: string;
  readonly classes: readonly ProductClass[];
}

/** The limits a shop cures by: a setting. `usualCureRules` is where it starts. */
export interface CureRules {
  readonly jurisdictions: readonly Jurisdiction[];
}
