import type { Manner, Operation, SlaughterFact, Species } from '../species.ts';

type Facts = readonly SlaughterFact[];

/** What an operation or item cannot do without and this animal lacks. */
export const lackedBy = (
  facts: Facts,
  { needs = [] }: { readonly needs?: readonly SlaughterFact[] },
): readonly SlaughterFact[] => needs.filter((need) => !facts.includes(need));

/**
 * Which pieces may still come of a part or of one way to break it down, whatever is answered further below. Loose meat is
 * left out: there is always some.
 */
export class ReachableCuts {
  readonly #species: Species;
  readonly #facts: Facts;
  readonly #below = new Map<string, ReadonlySet<string>>();

  constructor(species: Species, facts: Facts) {
    this.#species = species;
    this.#facts = facts;
  }

  ofOperation(operation: Operation): ReadonlySet<string> {
    if (lackedBy(this.#facts, operation).length > 0) return new Set();
    return this.#cutsOf(this.#givenBy(operation));
  }

  ofManner(manner: Manner): ReadonlySet<string> {
    return this.#cutsOf(endingsOf(manner));
  }

  ofPart(partId: string): ReadonlySet<string> {
    return this.#cutsOf(this.#belowPart(partId));
  }

  #cutsOf(endings: Iterable<string>): ReadonlySet<string> {
    const given = new Set(endings);
    const made = Object.values(this.#species.cuts).filter(({ sources }) =>
      sources.some(({ from, id }) => from !== 'bulk' && given.has(`${from} ${id}`)),
    );
    return new Set(made.map(({ id }) => id));
  }

  #givenBy(operation: Operation): readonly string[] {
    return operation.outputs.flatMap((output) => {
      if (lackedBy(this.#facts, output).length > 0) return [];
      return output.to === 'part' ? [...this.#belowPart(output.id)] : [`${output.to} ${output.id}`];
    });
  }

  #belowPart(partId: string): ReadonlySet<string> {
    const known = this.#below.get(partId);
    if (known) return known;
    const part = this.#species.parts[partId];
    const found = new Set(
      part?.kind === 'bar'
        ? part.zones.flatMap(({ manners }) => manners.flatMap(endingsOf))
        : (part?.operations ?? [])
            .filter((operation) => lackedBy(this.#facts, operation).length === 0)
            .flatMap((operation) => this.#givenBy(operation)),
    );
    this.#below.set(partId, found);
    return found;
  }
}

const endingsOf = ({ stock, releases }: Manner): readonly string[] => [
  `stock ${stock}`,
  ...releases.map(({ to, id }) => `${to} ${id}`),
];

const union = (sets: readonly ReadonlySet<string>[]): ReadonlySet<string> =>
  new Set(sets.flatMap((set) => [...set]));
const without = (set: ReadonlySet<string>, taken: ReadonlySet<string>): readonly string[] =>
  [...set].filter((each) => !taken.has(each));

/** What one answer takes away that another would leave, and what no other answer gives. Cut ids. */
export interface Consequence {
  readonly rulesOut: readonly string[];
  readonly onlySo: readonly string[];
}

/** @param answers the cuts that may still come with each answer of one question */
export function consequences(answers: readonly ReadonlySet<string>[]): readonly Consequence[] {
  return answers.map((mine, at) => {
    const others = union(answers.filter((_, other) => other !== at));
    return { rulesOut: without(others, mine), onlySo: without(mine, others) };
  });
}
