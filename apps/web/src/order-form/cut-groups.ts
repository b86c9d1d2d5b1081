import type { Cut, CutSource, Part, Species } from '@flitchbook/carcass';

export interface CutGroup {
  readonly name: string;
  readonly cuts: readonly Cut[];
}

/** What a part can come to: sources written "item/tenderloin", "stock/rib-bone-in". Loose meat comes from everywhere. */
function sourcesUnder(species: Species, part: Part | undefined, found: Set<string>, seen: Set<string>): void {
  if (!part || seen.has(part.id)) return;
  seen.add(part.id);
  if (part.kind === 'bar') {
    for (const manner of part.zones.flatMap((zone) => zone.manners)) {
      found.add(`stock/${manner.stock}`);
      for (const release of manner.releases) found.add(`${release.to}/${release.id}`);
    }
    return;
  }
  for (const output of part.operations.flatMap((operation) => operation.outputs)) {
    if (output.to === 'part') sourcesUnder(species, species.parts[output.id], found, seen);
    else found.add(`${output.to}/${output.id}`);
  }
}

const written = ({ from, id }: CutSource): string => `${from}/${id}`;

/** The primals a side is broken into, each with all that can come of it. */
function primalsOf(species: Species): { readonly name: string; readonly sources: ReadonlySet<string> }[] {
  const root = species.parts[species.sideRoot];
  const operations = root?.kind === 'primal' ? root.operations : [];
  const primals = (operations[0]?.outputs ?? []).filter(({ to }) => to === 'part');
  return primals.map(({ id }, at) => {
    const sources = new Set<string>();
    // Whichever lines the side is broken by, its primals come in one order.
    for (const { outputs } of operations) {
      const part = outputs.filter(({ to }) => to === 'part')[at];
      if (part) sourcesUnder(species, species.parts[part.id], sources, new Set());
    }
    return { name: species.parts[id]?.name ?? id, sources };
  });
}

/** All cuts of a species by the primal they come from, then those of the whole animal, then loose meat. */
export function groupCuts(
  species: Species,
  names: { readonly animal: string; readonly loose: string },
): CutGroup[] {
  const cuts = Object.values(species.cuts);
  const primals = primalsOf(species);
  const groupOf = ({ sources }: Cut): string => {
    if (sources.some(({ from }) => from === 'bulk')) return names.loose;
    return (
      primals.find((primal) => sources.some((source) => primal.sources.has(written(source))))?.name ??
      names.animal
    );
  };
  return [...primals.map(({ name }) => name), names.animal, names.loose]
    .map((name) => ({ name, cuts: cuts.filter((cut) => groupOf(cut) === name) }))
    .filter((group) => group.cuts.length > 0);
}
