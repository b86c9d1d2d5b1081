import type { Operation, Part, Species } from '../species.ts';
import type { Breakdown, BreakdownPart } from './breakdown.ts';
import type { YieldBelief } from './expect-shares.ts';
import type { Settled } from './settle.ts';

const ppm = 1_000_000;

/**
 * A species whose figures are those expected of one animal: what plan and solver work with. Outputs that the animal
 * can't give (the skin of a skinned hog) are left out; the rest of the tree is as it was.
 */
export function believedSpecies(breakdown: Breakdown, settled: Settled, belief: YieldBelief): Species {
  const { species } = breakdown;
  const laid = new Map<string, { entry: BreakdownPart; share: number }>(
    breakdown.parts.map((entry, index) => [entry.id, { entry, share: settled.parts[index] as number }]),
  );
  const operationAs = (operation: Operation, from: number): Operation => ({
    ...operation,
    outputs: operation.outputs.flatMap((output, turn) => {
      const parts = (settled.outputs[from + turn] as number) * ppm;
      const source = Object.hasOwn(belief.shares, output.id) ? 'own-sides' : output.source;
      return parts > 0 ? [{ ...output, parts, source }] : [];
    }),
  });
  const partAs = (part: Part): Part => {
    if (part.kind === 'bar') {
      const zones = part.zones.map((zone) => ({ ...zone, lengthMm: zone.lengthMm * belief.lengths }));
      return { ...part, zones };
    }
    const { entry, share } = laid.get(part.id) as { entry: BreakdownPart; share: number };
    if (share === 0) return part;
    const operations = part.operations.map((operation, turn) =>
      operationAs(operation, entry.operations[turn]?.from ?? 0),
    );
    return { ...part, operations };
  };
  return {
    ...species,
    parts: Object.fromEntries(Object.values(species.parts).map((part) => [part.id, partAs(part)])),
  };
}
