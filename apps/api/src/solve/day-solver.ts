import type { CuttingDay, CuttingPlan } from '@flitchbook/plan';

/** A day as it travels: the species table is looked up by id where it arrives. */
export type TravellingDay = Omit<CuttingDay, 'species'>;

/** Seconds of work that may go into a plan, and the gap at which it is good enough (0.01 is one percent). */
export interface SolveLimits {
  readonly deadlineSeconds: number;
  readonly gap: number;
  readonly seed: number;
}

export type SolveAnswer =
  | { readonly ok: true; readonly plan: CuttingPlan }
  | {
      readonly ok: false;
      /** full: too many wait; late: no answer long after the deadline; broken: it threw or its thread died; closed: the service stops */
      readonly why: 'full' | 'late' | 'broken' | 'closed';
      readonly says: string;
    };

/** Plans a day somewhere else than on the thread that serves requests. Never rejects. */
export interface DaySolver {
  solve(day: TravellingDay, limits: SolveLimits): Promise<SolveAnswer>;
  close(): Promise<void>;
}

/** What the thread is asked, and what it answers. */
export interface ThreadQuestion {
  readonly number: number;
  readonly day: TravellingDay;
  readonly limits: SolveLimits;
}

export type ThreadAnswer =
  | { readonly number: number; readonly plan: CuttingPlan }
  | { readonly number: number; readonly failed: string };
