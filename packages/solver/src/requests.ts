import type { Manner, Operation, Primal, Species, Zone } from '@flitchbook/carcass';
import { acceptable, type CuttingDay } from '@flitchbook/plan';

const ofPart = (part: string, operation: string): string => `operation ${part}/${operation}`;
const ofZone = (zone: string, manner: string): string => `manner ${zone}/${manner}`;

/** What lines, shares and locks of a day name of a species: items, stocks, operations, manners. */
function askedOf(day: CuttingDay, species: Species): ReadonlySet<string> {
  const cuts = day.lines
    .filter(({ speciesId }) => speciesId === species.id)
    .flatMap(acceptable)
    .flatMap(({ cut }) => species.cuts[cut]?.sources ?? []);
  const shares = day.shares
    .filter(({ speciesId }) => speciesId === species.id)
    .flatMap(({ instructions }) => [instructions, ...(instructions.right ? [instructions.right] : [])])
    .flatMap(({ operations, manners, portions }) => [
      ...Object.entries(operations).map(([part, operation]) => ofPart(part, operation)),
      ...Object.entries(manners).map(([zone, manner]) => ofZone(zone, manner)),
      ...Object.keys(portions).map((stock) => `stock ${stock}`),
    ]);
  const locks = day.locks.map((lock) =>
    lock.lock === 'operation' ? ofPart(lock.part, lock.operation) : ofZone(lock.zone, lock.manner),
  );
  return new Set([...cuts.map(({ from, id }) => `${from} ${id}`), ...shares, ...locks]);
}

const givenByManner = (zone: Zone, manner: Manner): readonly string[] => [
  ofZone(zone.id, manner.id),
  `stock ${manner.stock}`,
  ...manner.releases.map(({ to, id }) => `${to} ${id}`),
];

/**
 * Leaves out what is done on request only where nobody asks for what it alone gives, so that a long list of rare ways
 * costs an ordinary day nothing. A plan may use them all the same: this narrows the search, not the rules.
 */
export class Requests {
  readonly #species: Species;
  readonly #asked: ReadonlySet<string>;
  readonly #below = new Map<string, ReadonlySet<string>>();

  constructor(day: CuttingDay, species: Species) {
    this.#species = species;
    this.#asked = askedOf(day, species);
  }

  operationsOf(part: Primal, operations: readonly Operation[]): readonly Operation[] {
    return this.#worthwhile(operations, (operation) => this.#givenBy(part.id, operation));
  }

  mannersOf(zone: Zone): readonly Manner[] {
    return this.#worthwhile(zone.manners, (manner) => givenByManner(zone, manner));
  }

  /** What is usual, and of the rest what gives more of what is asked for than another way does. */
  #worthwhile<T extends { readonly onRequest?: true }>(
    ways: readonly T[],
    givenBy: (way: T) => Iterable<string>,
  ): readonly T[] {
    const usual = ways.filter(({ onRequest }) => !onRequest);
    const anyway = new Set(usual.flatMap((way) => [...givenBy(way)]));
    const alone = new Map(
      ways.map((way) => [
        way,
        way.onRequest
          ? [...givenBy(way)].filter((given) => this.#asked.has(given) && !anyway.has(given))
          : [],
      ]),
    );
    const kept: T[] = [];
    for (const way of ways) {
      const mine = alone.get(way) ?? [];
      const outdone = kept.some((other) => mine.every((given) => alone.get(other)?.includes(given)));
      if (!way.onRequest || (mine.length > 0 && !outdone)) kept.push(way);
    }
    return kept;
  }

  #givenBy(partId: string, { id, outputs }: Operation): ReadonlySet<string> {
    return new Set([
      ofPart(partId, id),
      ...outputs.flatMap((output) =>
        output.to === 'part' ? [...this.#belowPart(output.id)] : [`${output.to} ${output.id}`],
      ),
    ]);
  }

  #belowPart(partId: string): ReadonlySet<string> {
    const known = this.#below.get(partId);
    if (known) return known;
    const part = this.#species.parts[partId];
    const found = new Set(
      part?.kind === 'bar'
        ? part.zones.flatMap((zone) => zone.manners.flatMap((manner) => givenByManner(zone, manner)))
        : (part?.operations ?? []).flatMap((operation) => [...this.#givenBy(partId, operation)]),
    );
    this.#below.set(partId, found);
    return found;
  }
}
