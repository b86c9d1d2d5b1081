import type { CuttingDay, CuttingPlan } from '@flitchbook/plan';
import type { SplitAdvice, SplitQuestion } from '@flitchbook/solver';

/** A day as it travels: the species table is looked up by id where it arrives. */
export type TravellingDay = Omit<CuttingDay, 'species'>;

/** Seconds of work that may go into a plan, and the gap at which it is good enough (0.01 is one percent). */
export interface SolveLimits {
  readonly deadlineSeconds: number;
  readonly gap: number;
  readonly seed: number;
}

export interface NoAnswer {
  readonly ok: false;
  /** full: too many wait; late: no answer long after the deadline; broken: it threw or its thread died; closed: the service stops */
  readonly why: 'full' | 'late' | 'broken' | 'closed';
  readonly says: string;
}
export type SolveAnswer = { readonly ok: true; readonly plan: CuttingPlan } | NoAnswer;

/** What may be asked about a day beside its plan, and what is answered. */
export interface Advice {
  readonly split: {
    readonly asks: { readonly plan: CuttingPlan; readonly question: SplitQuestion };
    readonly gives: SplitAdvice;
  };
}
export type AdviceKind = keyof Advice;
export type AdviceAnswer<Kind extends AdviceKind> =
  | { readonly ok: true; readonly advice: Advice[Kind]['gives'] }
  | NoAnswer;

/** Plans a day, and advises on one, somewhere else than on the thread that serves requests. Never rejects. */
export interface DaySolver {
  solve(day: TravellingDay, limits: SolveLimits): Promise<SolveAnswer>;
  advise<Kind extends AdviceKind>(
    day: TravellingDay,
    limits: SolveLimits,
    kind: Kind,
    asks: Advice[Kind]['asks'],
  ): Promise<AdviceAnswer<Kind>>;
  close(): Promise<void>;
}

/** What the thread is asked, and what it answers. */
export interface ThreadQuestion {
  readonly number: number;
  readonly day: TravellingDay;
  readonly limits: SolveLimits;
  /** without it the day is planned */
  readonly advice?: {
    readonly [Kind in AdviceKind]: { readonly kind: Kind; readonly asks: Advice[Kind]['asks'] };
  }[AdviceKind];
}

export type ThreadAnswer =
  | { readonly number: number; readonly plan: CuttingPlan }
  | { readonly number: number; readonly advice: Advice[AdviceKind]['gives'] }
  | { readonly number: number; readonly failed: string };
