import type { Operation, Output, Part, Primal, Species } from './species.ts';

/** Regions that a part holds. */
export const regionsOf = ({ id, regions }: Part): readonly string[] => regions ?? [id];

/**
 * Regions lost with what is named as damaged or condemned: a region by its own name, a part by the regions it holds. So
 * damage hits the meat in whatever way the side is cut.
 */
export function lostRegions(species: Species, named: readonly string[]): ReadonlySet<string> {
  return new Set(
    named.flatMap((name) => {
      const part = Object.hasOwn(species.parts, name) ? species.parts[name] : undefined;
      return part ? regionsOf(part) : [name];
    }),
  );
}

/** A bar with a lost region in it is set aside whole; a part that can be broken down only when nothing sound is in it. */
export function isPartLost(part: Part, lost: ReadonlySet<string>): boolean {
  if (lost.size === 0) return false;
  const regions = regionsOf(part);
  return part.kind === 'bar'
    ? regions.some((region) => lost.has(region))
    : regions.every((region) => lost.has(region));
}

/** Where what an operation makes lies: as said, or what the parts beside it leave of the part. */
export function regionsOfOutput(
  species: Species,
  part: Primal,
  operation: Operation,
  output: Output,
): readonly string[] {
  if (output.regions) return output.regions;
  const beside = new Set(
    operation.outputs.flatMap(({ to, id }) => (to === 'part' ? regionsOf(species.parts[id] as Part) : [])),
  );
  const left = regionsOf(part).filter((region) => !beside.has(region));
  return left.length === 0 ? regionsOf(part) : left;
}

/** An item with a lost region in it is set aside; so is bulk that the data says lies in one. */
export function isOutputLost(
  species: Species,
  part: Primal,
  operation: Operation,
  output: Output,
  lost: ReadonlySet<string>,
): boolean {
  if (lost.size === 0 || output.to === 'part') return false;
  if (output.to === 'bulk' && !output.regions) return false;
  return regionsOfOutput(species, part, operation, output).some((region) => lost.has(region));
}
