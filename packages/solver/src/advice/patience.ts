import type { Budget } from '../price-out.ts';

/** How far a long piece of advice has come. */
export interface Progress {
  readonly done: number;
  readonly of: number;
  /** what was looked at last */
  readonly says: string;
}

export interface AdviceOptions {
  /** the best so far is answered when this has passed */
  readonly deadlineSeconds: number;
  readonly seed: number;
  /** seconds on any clock that runs forward */
  readonly now?: () => number;
  /** ends the search early, with the best so far */
  readonly signal?: AbortSignal;
  readonly onProgress?: (progress: Progress) => void;
}

/** Time left, whoever wants to stop, and who is told. */
export interface Patience extends Budget {
  readonly isOver: () => boolean;
  readonly tell: (progress: Progress) => void;
}

export function patienceOf({ deadlineSeconds, seed, signal, onProgress, now }: AdviceOptions): Patience {
  const clock = now ?? (() => performance.now() / 1000);
  const began = clock();
  const secondsLeft = (): number => (signal?.aborted ? 0 : deadlineSeconds - (clock() - began));
  return { seed, secondsLeft, isOver: () => secondsLeft() <= 0, tell: (progress) => onProgress?.(progress) };
}

/** The nth of several looks may take its share of what is left, twice over: most need less. */
export function shareOf(patience: Patience, looksLeft: number): Patience {
  const kept = Math.max(0, patience.secondsLeft() * (1 - Math.min(1, 2 / looksLeft)));
  return { ...patience, secondsLeft: () => patience.secondsLeft() - kept };
}

/** Lets a message in that may want to stop the search. */
export const breathe = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));
