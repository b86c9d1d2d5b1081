import type { CutSheet } from '@flitchbook/carcass';
import { type CarcassShare, sheetFor } from '@flitchbook/plan';
import type { Layout, Node, Unit, UnitClass, UnitDecision } from './problem.ts';

function layoutFor(
  layouts: readonly Layout[],
  manners: CutSheet['manners'],
  zones: readonly string[],
): number {
  return layouts.findIndex((layout) =>
    layout.ways.every((way, at) => {
      const wanted = manners[zones[at] ?? ''];
      const [first] = way;
      return way.length === 1 && first !== undefined && (wanted === undefined || first.manner.id === wanted);
    }),
  );
}

/**
 * How a side is cut to a customer's instructions. What is not said goes the shop's usual way: the first the tree allows.
 * @returns node index to choice or layout index; undefined when this side can't follow the instructions
 */
export function wayOfShare(
  nodes: readonly Node[],
  instructions: CutSheet,
): ReadonlyMap<number, number> | undefined {
  const choices = new Map<number, number>();
  const open = [0];
  for (let index = open.pop(); index !== undefined; index = open.pop()) {
    const node = nodes[index] as Node;
    if (node.kind === 'primal') {
      const wanted = instructions.operations[node.partId];
      const choice =
        wanted === undefined ? 0 : node.choices.findIndex(({ operation }) => operation.id === wanted);
      const chosen = node.choices[choice];
      if (!chosen) return undefined;
      choices.set(index, choice);
      open.push(...chosen.opens);
    } else if (node.kind === 'singles') {
      open.push(...node.opens);
    } else if (node.kind === 'bar') {
      const layout = layoutFor(node.layouts, instructions.manners, node.zones);
      if (layout < 0) return undefined;
      choices.set(index, layout);
    }
  }
  return choices;
}

/** Hands-on minutes of a way of cutting a unit. */
export function minutesOf(nodes: readonly Node[], choices: ReadonlyMap<number, number>): number {
  let minutes = 0;
  for (const [index, choice] of choices) {
    const node = nodes[index];
    if (node?.kind === 'primal') minutes += node.choices[choice]?.operation.minutes ?? 0;
    if (node?.kind === 'bar') minutes += node.layouts[choice]?.minutes ?? 0;
  }
  return minutes;
}

/** A unit cut to the instructions of the share that has it. */
export const shareDecision = (unit: Unit, group: UnitClass, share: CarcassShare): UnitDecision => ({
  unit,
  classIndex: group.index,
  share,
  choices: wayOfShare(group.nodes, sheetFor(share, unit.side?.hand)) ?? new Map(),
  pieces: new Map(),
  labels: new Map(),
});
