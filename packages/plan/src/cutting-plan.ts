import type { Portion } from '@flitchbook/carcass';

/** Who a piece is for: a line, a share, or nobody yet (the counter). */
export type Owner = { readonly lineId: string } | { readonly shareId: string } | null;

/** A piece that leaves whole, from an operation or from boning a zone. */
export interface ItemPiece {
  readonly pieceId: string;
  readonly item: string;
  /** part or bar it came from */
  readonly from: string;
  readonly massMg: number;
  readonly owner: Owner;
}

/** A piece laid on a bar. Spans are um from the bar's head end; the cut after it is not part of the span. */
export interface SpanPiece {
  readonly pieceId: string;
  readonly cut: string;
  readonly portion: Portion;
  readonly fromUm: number;
  readonly toUm: number;
  readonly massMg: number;
  readonly owner: Owner;
}

export interface RunStretchPlan {
  readonly zone: string;
  readonly manner: string;
  readonly fromStation: number;
  readonly toStation: number;
}

/** A stretch of a bar in one stock with its pieces in order, and what is left of it for the counter. */
export interface RunPlan {
  readonly stock: string;
  readonly stretches: readonly RunStretchPlan[];
  readonly fromUm: number;
  readonly toUm: number;
  /** length that pieces may take, from `fromUm` on; a boned muscle draws up */
  readonly usableUm: number;
  readonly pieces: readonly SpanPiece[];
  /** length and mass after the last cut, left whole for the counter or for the share's owner */
  readonly freeUm: number;
  readonly freeMg: number;
}

export interface BarPlan {
  readonly bar: string;
  readonly runs: readonly RunPlan[];
}

export interface SidePlan {
  readonly sideId: string;
  readonly animalId: string;
  /** set when one customer has the whole side */
  readonly shareId: string | null;
  readonly massMg: number;
  /** part id to operation id, for each part that is broken down */
  readonly operations: Readonly<Record<string, string>>;
  readonly items: readonly ItemPiece[];
  readonly bars: readonly BarPlan[];
  /** bulk id to milligrams; items, pieces, free stretches and bulk add up to `massMg` exactly */
  readonly bulkMg: Readonly<Record<string, number>>;
  readonly minutes: number;
}

/** A piece of the animal that belongs to no side. Its mass is not part of a side's. */
export interface SinglePiece {
  readonly pieceId: string;
  readonly animalId: string;
  readonly item: string;
  readonly massMg: number;
  readonly owner: Owner;
}

/** Why something cannot be filled, in data and in a sentence. */
export interface Shortfall {
  /** scarce: the day has fewer than are asked; clash: other promises use what it needs; lost: set aside or not on this animal; locked: a settled choice */
  readonly kind: 'scarce' | 'clash' | 'lost' | 'locked' | 'impossible';
  readonly says: string;
  /** lines, shares and locks it clashes with */
  readonly withLines: readonly string[];
  readonly withShares: readonly string[];
  readonly withLocks: readonly string[];
  /** most of it that the day could give if nothing else were asked for, pieces or grams */
  readonly mostPossible: number;
}

export interface LineFill {
  readonly lineId: string;
  /** pieces, or grams of a bulk cut */
  readonly asked: number;
  readonly filled: number;
  readonly pieceIds: readonly string[];
  /** bulk lines: grams taken from the pool of the day */
  readonly bulkGrams: number;
  readonly shortfall: Shortfall | null;
}

export interface ShareFill {
  readonly shareId: string;
  readonly sideIds: readonly string[];
  readonly shortfall: Shortfall | null;
}

/** The goals in their order, minor units: never traded one for another. */
export interface Goals {
  /** worth of promised lines and shares that are filled */
  readonly promised: number;
  readonly wished: number;
  /** what the rest brings over the counter, less labour */
  readonly rest: number;
}

export interface Proof {
  readonly goals: Goals;
  /** no plan of this day can do better, goal by goal, once the goals before it are met as here */
  readonly bound: Goals;
  /** largest shortfall of a goal from its bound, as a share of the plan's worth: 0.005 is half a percent */
  readonly gap: number;
  readonly status: 'optimal' | 'within-gap' | 'deadline';
  readonly method: 'plain' | 'columns';
  readonly seconds: number;
  readonly seed: number;
}

/** What becomes of every side of a day. */
export interface CuttingPlan {
  readonly dayId: string;
  readonly sides: readonly SidePlan[];
  readonly singles: readonly SinglePiece[];
  readonly lines: readonly LineFill[];
  readonly shares: readonly ShareFill[];
  readonly proof: Proof | null;
}
