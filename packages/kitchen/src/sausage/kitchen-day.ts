import type { TrimLot } from '../trim/trim-lot.ts';
import type { Recipe } from './recipe.ts';

/** Sausage that somebody was promised. */
export interface SausagePromise {
  readonly promiseId: string;
  readonly recipeId: string;
  /** finished sausage */
  readonly massMg: number;
  /** the customer whose own meat it is made of; null: of the shop's */
  readonly ownerId: string | null;
  readonly priceMinorPerKg: number;
}

/** A whole piece that could be boned and ground, and what that costs: what it would have brought, and the boning. */
export interface GrindOffer {
  readonly offerId: string;
  readonly name: string;
  /** what it gives; all of it joins the pool if it is ground */
  readonly gives: TrimLot;
  readonly costMinor: number;
}

/** All that is known when sausage is planned. */
export interface KitchenDay {
  /** local date of grinding */
  readonly date: string;
  readonly recipes: readonly Recipe[];
  readonly lots: readonly TrimLot[];
  readonly promises: readonly SausagePromise[];
  /** those that the butcher is ready to grind: the plan takes what it needs of them */
  readonly offers: readonly GrindOffer[];
  readonly labourMinorPerHour: number;
  /** how much less a kilogram costs for each day it is old, so that the oldest goes first */
  readonly olderFirstMinorPerKgDay: number;
}

/** Whose meat a batch is of: the shop's, one owner's, or that of owners who agreed to share. */
export type Circle =
  | { readonly of: 'shop' }
  | { readonly of: 'owner'; readonly ownerId: string }
  | { readonly of: 'pool'; readonly ownerIds: readonly string[] };

export interface SausageBatch {
  readonly batchId: string;
  readonly recipeId: string;
  readonly circle: Circle;
  readonly draws: readonly { readonly lotId: string; readonly massMg: number }[];
  readonly meatMg: number;
  readonly fatPpm: number;
  readonly additions: readonly { readonly name: string; readonly massMg: number }[];
  readonly finishedMg: number;
  readonly minutes: number;
  /** who gets what of a pool: own trim over all trim */
  readonly shares: readonly { readonly ownerId: string | null; readonly massMg: number }[];
}

export interface PromiseFill {
  readonly promiseId: string;
  readonly askedMg: number;
  readonly filledMg: number;
  /** why something is missing; empty when nothing is */
  readonly says: string;
}

export interface SausagePlan {
  readonly date: string;
  readonly batches: readonly SausageBatch[];
  readonly fills: readonly PromiseFill[];
  /** offers that are ground */
  readonly ground: readonly string[];
  readonly left: readonly { readonly lotId: string; readonly massMg: number }[];
  /** trim, additions, labour and what was ground, minor units */
  readonly costMinor: number;
  readonly proven: boolean;
}

export const circleKey = (circle: Circle): string =>
  circle.of === 'owner' ? `owner:${circle.ownerId}` : circle.of;
