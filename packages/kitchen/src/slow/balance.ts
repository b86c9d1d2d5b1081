/** What one animal gives of a cut, and what a week takes of it. */
export interface CutFlow {
  readonly cutId: string;
  readonly perAnimal: number;
  readonly soldPerWeek: number;
  readonly pieceMg: number;
}

export interface WeekBalance {
  /** the cut that limits buying: every animal more leaves its pieces unsold */
  readonly slowest: string;
  /** animals a week whose slowest cut is sold whole */
  readonly animalsInBalance: number;
  readonly cuts: readonly {
    readonly cutId: string;
    readonly unsold: number;
    readonly unsoldMg: number;
    readonly waiting: number;
  }[];
}

/** A week of so many animals: what is left of each cut, and who waits. @throws RangeError on an empty list, or a cut that no animal gives */
export function weekBalance(animals: number, flows: readonly CutFlow[]): WeekBalance {
  const [first] = flows;
  if (!first) throw new RangeError('flows must name a cut');
  const none = flows.find(({ perAnimal }) => !(perAnimal > 0));
  if (none) throw new RangeError(`perAnimal of ${none.cutId} must be above 0, got ${none.perAnimal}`);
  const carries = ({ soldPerWeek, perAnimal }: CutFlow): number => soldPerWeek / perAnimal;
  const slowest = flows.reduce((least, flow) => (carries(flow) < carries(least) ? flow : least), first);
  return {
    slowest: slowest.cutId,
    animalsInBalance: Math.floor(carries(slowest)),
    cuts: flows.map(({ cutId, perAnimal, soldPerWeek, pieceMg }) => {
      const over = animals * perAnimal - soldPerWeek;
      return {
        cutId,
        unsold: Math.max(0, over),
        unsoldMg: Math.max(0, over) * pieceMg,
        waiting: Math.max(0, -over),
      };
    }),
  };
}

/** Animals that so many pieces take. @throws RangeError when no animal gives any */
export function animalsFor(pieces: number, perAnimal: number): number {
  if (!(perAnimal > 0)) throw new RangeError(`perAnimal must be above 0, got ${perAnimal}`);
  return Math.ceil(pieces / perAnimal);
}

/**
 * Whose turn a scarce piece is: who went longest without one, then who asked first.
 * @param had the day on which each last got one; those who never did come first
 */
export function nextTurn(
  waiting: readonly { readonly customerId: string; readonly askedAt: string }[],
  had: Readonly<Record<string, string>>,
): string | undefined {
  const order = [...waiting].sort((a, b) => {
    const [left, right] = [had[a.customerId] ?? '', had[b.customerId] ?? ''];
    if (left !== right) return left < right ? -1 : 1;
    return a.askedAt < b.askedAt ? -1 : Number(a.askedAt > b.askedAt);
  });
  return order[0]?.customerId;
}
