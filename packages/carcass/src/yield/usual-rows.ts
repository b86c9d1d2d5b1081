import type { SourceKey } from '../species.ts';
import type { Breakdown } from './breakdown.ts';
import type { Estimate } from './estimate.ts';
import type { YieldPrediction } from './predict-yields.ts';

/** One line of what a side gives the usual way. */
export interface UsualRow {
  readonly id: string;
  readonly name: string;
  /** how deep in the tree it stands; the side is 0 */
  readonly depth: number;
  readonly massMg: Estimate;
  /** of the side, percent */
  readonly percent: number;
  /** where its published share comes from; of the side itself nothing is needed */
  readonly source: SourceKey | null;
}

/** The usual way from the side down, each part before what is made of it. */
export function usualRows(breakdown: Breakdown, prediction: YieldPrediction): readonly UsualRow[] {
  const { species } = breakdown;
  const rows: UsualRow[] = [];
  const add = (id: string, name: string, depth: number, massMg: Estimate, source: SourceKey | null): void => {
    rows.push({ id, name, depth, massMg, percent: (100 * massMg.mean) / prediction.sideMg.mean, source });
  };
  const visit = (index: number, depth: number, source: SourceKey | null): void => {
    const { id, operations } = breakdown.parts[index] as Breakdown['parts'][number];
    const part = species.parts[id];
    const mass = prediction.partMg.get(id);
    if (!part || !mass) return;
    add(id, part.name, depth, mass, source);
    const [usual] = operations;
    if (part.kind === 'bar' || !usual) return;
    for (let at = usual.from; at < usual.to; at++) {
      const output = breakdown.outputs[at] as Breakdown['outputs'][number];
      const from = part.operations[0]?.outputs[at - usual.from]?.source ?? null;
      const massMg = prediction.outputMg.get(output.key);
      if (output.makes >= 0) visit(output.makes, depth + 1, from);
      else if (massMg)
        add(
          output.id,
          (output.to === 'item' ? species.items : species.bulks)[output.id]?.name ?? output.id,
          depth + 1,
          massMg,
          from,
        );
    }
  };
  visit(0, 0, null);
  return rows;
}
