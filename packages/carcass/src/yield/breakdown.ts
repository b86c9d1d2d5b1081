import { shareOf } from '../side-shape.ts';
import type { Operation, Output, Species } from '../species.ts';

/** One output of one operation. */
export interface BreakdownOutput {
  /** "part/operation/output" */
  readonly key: string;
  readonly to: Output['to'];
  readonly id: string;
  /** of the side, in the species' data */
  readonly share: number;
  /** index of the part it makes, -1 for items and bulk */
  readonly makes: number;
  /** index of the compartment it is, -1 when it is broken down further or stands off the usual way */
  readonly compartment: number;
}

export interface BreakdownOperation {
  readonly id: string;
  /** outputs of the operation: from `from` up to but not including `to` */
  readonly from: number;
  readonly to: number;
  readonly usual: boolean;
}

export interface BreakdownPart {
  readonly id: string;
  readonly share: number;
  readonly operations: readonly BreakdownOperation[];
  /** compartments it holds; undefined off the usual way */
  readonly compartments: readonly number[] | undefined;
  /** what it is composed of that the usual way has too, by id; undefined where some of it has no namesake there */
  readonly composition: readonly Ingredient[] | undefined;
}

/** A share of the side, in the species' data, that is of the same meat as a thing of the usual way. */
interface Ingredient {
  readonly id: string;
  readonly share: number;
}

/**
 * A species' tree laid flat. The usual way takes the first operation of each primal; what it ends in, bars included,
 * are the compartments: they add up to the side, and every part of the usual way is a sum of them.
 */
export interface Breakdown {
  readonly species: Species;
  /** each part stands behind the part that makes it; the first is the side */
  readonly parts: readonly BreakdownPart[];
  readonly outputs: readonly BreakdownOutput[];
  /** share of each compartment in the species' data */
  readonly compartments: readonly number[];
  /** compartments of a part, an item or a bulk on the usual way */
  readonly held: ReadonlyMap<string, readonly number[]>;
  /** index of each part by id, and of each output by key */
  readonly partAt: ReadonlyMap<string, number>;
  readonly outputAt: ReadonlyMap<string, number>;
}

type Growing<T> = { -readonly [K in keyof T]: T[K] };

class Layer {
  readonly parts: Growing<BreakdownPart>[] = [];
  readonly outputs: Growing<BreakdownOutput>[] = [];
  readonly compartments: number[] = [];
  readonly #species: Species;
  readonly #indexOf = new Map<string, number>();

  constructor(species: Species) {
    this.#species = species;
  }

  /** Numbers the part and everything that can come from it. */
  visit(partId: string, share: number): number {
    const seen = this.#indexOf.get(partId);
    if (seen !== undefined) return seen;
    const index = this.parts.length;
    const entry: Growing<BreakdownPart> = {
      id: partId,
      share,
      operations: [],
      compartments: undefined,
      composition: undefined,
    };
    this.#indexOf.set(partId, index);
    this.parts.push(entry);
    const part = this.#species.parts[partId];
    if (part?.kind === 'primal')
      entry.operations = part.operations.map((operation, turn) => this.#lay(entry, operation, turn === 0));
    return index;
  }

  #lay(part: BreakdownPart, operation: Operation, usual: boolean): BreakdownOperation {
    const from = this.outputs.length;
    const made = operation.outputs.map((output, at): Growing<BreakdownOutput> => {
      const share = part.share * shareOf(operation.outputs, at);
      const key = `${part.id}/${operation.id}/${output.id}`;
      return { key, to: output.to, id: output.id, share, makes: -1, compartment: -1 };
    });
    this.outputs.push(...made);
    for (const output of made) if (output.to === 'part') output.makes = this.visit(output.id, output.share);
    return { id: operation.id, from, to: from + made.length, usual };
  }

  /** Gathers the compartments below a part of the usual way. */
  gather(index: number): readonly number[] {
    const part = this.parts[index] as Growing<BreakdownPart>;
    const [usual] = part.operations;
    const below: number[] = [];
    for (const output of usual ? this.outputs.slice(usual.from, usual.to) : []) {
      if (output.makes >= 0 && (this.parts[output.makes]?.operations.length ?? 0) > 0) {
        below.push(...this.gather(output.makes));
        continue;
      }
      output.compartment = this.compartments.push(output.share) - 1;
      below.push(output.compartment);
      const bar = this.parts[output.makes];
      if (bar) bar.compartments = [output.compartment];
    }
    part.compartments = below;
    return below;
  }
}

/** Finds the meat of the usual way in a part off it: a blade end cut by another line is meat of the loin all the same. */
class Composing {
  readonly #species: Species;
  readonly #layer: Layer;
  readonly #held: ReadonlyMap<string, readonly number[]>;
  /** the bar of the usual way on which a zone lies */
  readonly #homes = new Map<string, string>();

  constructor(species: Species, layer: Layer, held: ReadonlyMap<string, readonly number[]>) {
    this.#species = species;
    this.#layer = layer;
    this.#held = held;
    for (const { id, compartments } of layer.parts) {
      const bar = compartments ? species.parts[id] : undefined;
      if (bar?.kind === 'bar') for (const zone of bar.zones) this.#homes.set(zone.id, id);
    }
  }

  of(index: number): readonly Ingredient[] | undefined {
    const { id, share, operations } = this.#layer.parts[index] as BreakdownPart;
    const part = this.#species.parts[id];
    const [usual] = operations;
    const found =
      part?.kind === 'bar'
        ? part.zones.map((zone, at) => {
            const home = this.#homes.get(zone.id);
            const masses = part.zones.map(({ mass }) => mass);
            return home === undefined ? undefined : [{ id: home, share: share * shareOf(masses, at) }];
          })
        : this.#layer.outputs.slice(usual?.from, usual?.to).map((output) => {
            if (this.#held.has(output.id)) return [{ id: output.id, share: output.share }];
            return output.makes < 0 ? undefined : this.of(output.makes);
          });
    return found.some((each) => each === undefined) ? undefined : found.flatMap((each) => each ?? []);
  }
}

/** Lays a species' tree flat. Made once for a species; the same data give the same breakdown. */
export function breakdownOf(species: Species): Breakdown {
  const layer = new Layer(species);
  layer.gather(layer.visit(species.sideRoot, 1));
  const held = new Map<string, number[]>();
  for (const { id, compartments } of layer.parts) if (compartments) held.set(id, [...compartments]);
  for (const { id, to, compartment } of layer.outputs)
    if (to !== 'part' && compartment >= 0) held.set(id, [...(held.get(id) ?? []), compartment]);
  const composing = new Composing(species, layer, held);
  layer.parts.forEach((part, index) => {
    if (!part.compartments) part.composition = composing.of(index);
  });
  const { parts, outputs, compartments } = layer;
  const partAt = new Map(parts.map(({ id }, index) => [id, index]));
  const outputAt = new Map(outputs.map(({ key }, index) => [key, index]));
  return { species, parts, outputs, compartments, held, partAt, outputAt };
}

export function sumAt(values: ArrayLike<number>, at: readonly number[]): number {
  let sum = 0;
  for (const index of at) sum += values[index] as number;
  return sum;
}
