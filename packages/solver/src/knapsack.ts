/** Length one portion takes, in grid steps or um, and what it is worth. */
export interface KnapsackOption {
  readonly takes: number;
  readonly worth: number;
}

export function gcd(left: number, right: number): number {
  let [a, b] = [left, right];
  while (b !== 0) [a, b] = [b, a % b];
  return a;
}

/**
 * Unbounded knapsack for every capacity up to the longest at once: best worth of pieces laid end to end.
 * One table serves every run that takes the same portions.
 */
export class KnapsackTable {
  readonly #step: number;
  readonly #best: Float64Array;
  readonly #last: Int16Array;
  readonly #options: readonly KnapsackOption[];

  constructor(options: readonly KnapsackOption[], longest: number) {
    this.#options = options;
    const step = options.reduce((common, option) => gcd(common, option.takes), 0);
    this.#step = step === 0 ? Math.max(1, longest) : step;
    const size = Math.floor(longest / this.#step) + 1;
    this.#best = new Float64Array(size);
    this.#last = new Int16Array(size).fill(-1);
    this.#fill(size);
  }

  #fill(size: number): void {
    const best = this.#best;
    const last = this.#last;
    const takes = this.#options.map((option) => option.takes / this.#step);
    const worth = this.#options.map((option) => option.worth);
    for (let at = 1; at < size; at++) {
      let top = best[at - 1] as number;
      let pick = -1;
      for (let option = 0; option < takes.length; option++) {
        const before = at - (takes[option] as number);
        if (before < 0) continue;
        const value = (best[before] as number) + (worth[option] as number);
        if (value > top) {
          top = value;
          pick = option;
        }
      }
      best[at] = top;
      last[at] = pick;
    }
  }

  worth(capacity: number): number {
    return this.#best[Math.min(Math.floor(capacity / this.#step), this.#best.length - 1)] ?? 0;
  }

  /** Pieces of each option in a best filling, by option index. */
  counts(capacity: number): Map<number, number> {
    const counts = new Map<number, number>();
    let at = Math.min(Math.floor(capacity / this.#step), this.#best.length - 1);
    while (at > 0) {
      const option = this.#last[at] as number;
      if (option < 0) {
        at--;
        continue;
      }
      counts.set(option, (counts.get(option) ?? 0) + 1);
      at -= (this.#options[option] as KnapsackOption).takes / this.#step;
    }
    return counts;
  }
}
