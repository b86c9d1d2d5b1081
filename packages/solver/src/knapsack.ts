/** Length one portion takes, um, and what it is worth. */
export interface KnapsackOption {
  readonly takes: number;
  readonly worth: number;
}

export interface Filling {
  readonly worth: number;
  /** pieces of each option, by option index */
  readonly counts: readonly number[];
}

/** An option that takes more and is worth no more than another is never needed. */
function withoutDominated(order: readonly number[], options: readonly KnapsackOption[]): number[] {
  return order.filter((mine, at) => {
    const { takes, worth } = options[mine] as KnapsackOption;
    return !order.some((other, place) => {
      const rival = options[other] as KnapsackOption;
      return (
        other !== mine &&
        rival.takes <= takes &&
        rival.worth >= worth &&
        (rival.takes < takes || rival.worth > worth || place < at)
      );
    });
  });
}

/**
 * Unbounded knapsack: the best pieces to lay end to end in a length. Exact, by depth-first search over the options,
 * densest first, cut off where even the next density can't catch up. A bar holds few pieces, so that this looks at some
 * dozens of fillings where a table over the length would fill ten thousand cells. One knapsack serves every run that
 * takes the same portions; each length is worked out once.
 */
export class Knapsack {
  readonly #options: readonly KnapsackOption[];
  readonly #order: readonly number[];
  readonly #known = new Map<number, Filling>();

  constructor(options: readonly KnapsackOption[]) {
    this.#options = options;
    const density = (at: number): number =>
      (options[at] as KnapsackOption).worth / (options[at] as KnapsackOption).takes;
    const useful = options.map((_, at) => at).filter((at) => (options[at] as KnapsackOption).worth > 0);
    this.#order = withoutDominated(useful, options).sort(
      (left, right) => density(right) - density(left) || left - right,
    );
  }

  fill(length: number): Filling {
    const known = this.#known.get(length);
    if (known) return known;
    const filling = this.#search(length);
    this.#known.set(length, filling);
    return filling;
  }

  #search(length: number): Filling {
    const takes = this.#order.map((at) => (this.#options[at] as KnapsackOption).takes);
    const worth = this.#order.map((at) => (this.#options[at] as KnapsackOption).worth);
    const shortest = Math.min(...takes);
    const laid = new Array<number>(takes.length).fill(0);
    let bestWorth = 0;
    let best = [...laid];
    const descend = (at: number, room: number, sum: number): void => {
      if (sum > bestWorth) {
        bestWorth = sum;
        best = [...laid];
      }
      if (at === takes.length || room < shortest) return;
      const mine = takes[at] as number;
      const next = at + 1 < takes.length ? (worth[at + 1] as number) / (takes[at + 1] as number) : 0;
      for (let count = Math.floor(room / mine); count >= 0; count--) {
        const rest = room - count * mine;
        const here = sum + count * (worth[at] as number);
        // Fewer of a denser piece can only lower what is still reachable.
        if (here + rest * next <= bestWorth && !(here > bestWorth)) break;
        laid[at] = count;
        descend(at + 1, rest, here);
      }
      laid[at] = 0;
    };
    descend(0, length, 0);
    const counts = new Array<number>(this.#options.length).fill(0);
    this.#order.forEach((option, at) => {
      counts[option] = best[at] as number;
    });
    return { worth: bestWorth, counts };
  }
}
