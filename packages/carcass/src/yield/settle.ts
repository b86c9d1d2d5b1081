import { type Breakdown, type BreakdownOperation, type BreakdownOutput, sumAt } from './breakdown.ts';

/** Shares of one side: what each output of each operation, and each part, is of it. */
export interface Settled {
  readonly outputs: Float64Array;
  readonly parts: Float64Array;
}

/** The share of each id on the usual way against the species' data: an output off it follows its namesake. */
function changes(breakdown: Breakdown, compartments: ArrayLike<number>): Map<string, number> {
  const change = new Map<string, number>();
  for (const [id, at] of breakdown.held)
    change.set(id, sumAt(compartments, at) / sumAt(breakdown.compartments, at));
  return change;
}

/** What each part weighs off the usual way if its meat weighs what it weighs there; 0 where that is not known. */
function composedShares({ parts }: Breakdown, change: ReadonlyMap<string, number>): Float64Array {
  const composed = new Float64Array(parts.length);
  for (const [index, { composition }] of parts.entries())
    for (const { id, share } of composition ?? [])
      composed[index] = (composed[index] as number) + share * (change.get(id) ?? 1);
  return composed;
}

/** What is there is never nothing, even where beliefs leave it no room. */
const leastFree = 1e-12;

/** Targets may take up to this share of the room that they share with other outputs. */
const mostAimed = 0.98;

/**
 * Fills an operation off the usual way: parts that other operations make weigh what they weigh there, targets and parts of
 * meat that the usual way has too are met as far as there is room, and the other outputs share what is left.
 */
function fill(
  { breakdown, settled, change, composed, isAimed, targets }: Filling,
  operation: BreakdownOperation,
  whole: number,
) {
  let room = whole;
  let sumAimed = 0;
  let sumFree = 0;
  for (let at = operation.from; at < operation.to; at++) {
    const { makes, key, share, id } = breakdown.outputs[at] as BreakdownOutput;
    const made = makes < 0 ? 0 : (settled.parts[makes] as number);
    const aimed = made > 0 ? 0 : (targets.get(key) ?? composed[makes] ?? 0);
    isAimed[at] = aimed > 0 ? 1 : 0;
    settled.outputs[at] = made || aimed || share * (change.get(id) ?? 1);
    if (made > 0) room -= made;
    else if (aimed > 0) sumAimed += aimed;
    else sumFree += settled.outputs[at] as number;
  }
  if (room < -1e-9 || (sumAimed + sumFree === 0 && room > 1e-9))
    throw new RangeError(
      `${breakdown.outputs[operation.from]?.key}: the outputs of the operation do not fit`,
    );
  const toAimed = sumFree === 0 ? room : Math.min(sumAimed, room * mostAimed);
  const toFree = Math.max(leastFree, room - toAimed);
  for (let at = operation.from; at < operation.to; at++) {
    const { makes } = breakdown.outputs[at] as BreakdownOutput;
    if (makes >= 0 && (settled.parts[makes] as number) > 0) continue;
    const scale = isAimed[at] ? toAimed / sumAimed : toFree / sumFree;
    settled.outputs[at] = scale > 0 ? (settled.outputs[at] as number) * scale : 0;
    if (makes >= 0) settled.parts[makes] = settled.outputs[at] as number;
  }
}

interface Filling {
  readonly breakdown: Breakdown;
  readonly settled: Settled;
  readonly change: ReadonlyMap<string, number>;
  /** by part */
  readonly composed: Float64Array;
  /** by output: 1 while it is being met as a target */
  readonly isAimed: Uint8Array;
  readonly targets: ReadonlyMap<string, number>;
}

const noTargets: ReadonlyMap<string, number> = new Map();

/**
 * Shares of everything, from the shares of the compartments. A part weighs the same whichever operation makes it, and
 * the outputs of each operation add up to what went in.
 * @param compartments shares of the side, 0 or more, adding up to 1
 * @param targets shares of outputs off the usual way that are known from elsewhere, by key
 * @throws RangeError when the tree cannot hold such shares
 */
export function settle(
  breakdown: Breakdown,
  compartments: ArrayLike<number>,
  targets: ReadonlyMap<string, number> = noTargets,
): Settled {
  const settled = {
    outputs: new Float64Array(breakdown.outputs.length),
    parts: new Float64Array(breakdown.parts.length),
  };
  const change = changes(breakdown, compartments);
  const composed = composedShares(breakdown, change);
  const isAimed = new Uint8Array(breakdown.outputs.length);
  const filling = { breakdown, settled, targets, change, composed, isAimed };
  breakdown.parts.forEach((part, index) => {
    if (part.compartments) settled.parts[index] = sumAt(compartments, part.compartments);
  });
  breakdown.parts.forEach((part, index) => {
    const share = settled.parts[index] as number;
    if (share === 0) return;
    for (const operation of part.operations) {
      if (!operation.usual || !part.compartments) {
        fill(filling, operation, share);
        continue;
      }
      for (let at = operation.from; at < operation.to; at++) {
        const { makes, compartment } = breakdown.outputs[at] as BreakdownOutput;
        settled.outputs[at] = (compartment >= 0 ? compartments[compartment] : settled.parts[makes]) as number;
      }
    }
  });
  return settled;
}
