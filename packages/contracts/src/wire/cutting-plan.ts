import { z } from 'zod';
import { portionShape } from './carcass.ts';
import { anyId, count, listOf } from './parts.ts';

const many = 100_000;

const ownerShape = z
  .union([z.strictObject({ lineId: anyId }), z.strictObject({ shareId: anyId })])
  .nullable()
  .meta({ description: 'Who a piece is for: a line, a share, or nobody yet (the counter).' });

const itemPieceShape = z.strictObject({
  pieceId: anyId,
  item: anyId,
  from: anyId,
  massMg: count,
  owner: ownerShape,
});

const spanPieceShape = z.strictObject({
  pieceId: anyId,
  cut: anyId,
  portion: portionShape,
  fromUm: count,
  toUm: count,
  massMg: count,
  owner: ownerShape,
});

const runPlanShape = z.strictObject({
  stock: anyId,
  stretches: listOf(
    z.strictObject({ zone: anyId, manner: anyId, fromStation: count, toStation: count }),
    many,
  ),
  fromUm: count,
  toUm: count,
  usableUm: count,
  pieces: listOf(spanPieceShape, many),
  freeUm: count,
  freeMg: count,
});

export const sidePlanShape = z.strictObject({
  sideId: anyId,
  animalId: anyId,
  shareId: anyId.nullable(),
  massMg: count,
  operations: z.record(z.string(), z.string()),
  items: listOf(itemPieceShape, many),
  bars: listOf(z.strictObject({ bar: anyId, runs: listOf(runPlanShape, many) }), many),
  bulkMg: z.record(z.string(), count),
  minutes: z.number(),
});

const singlePieceShape = z.strictObject({
  pieceId: anyId,
  animalId: anyId,
  item: anyId,
  massMg: count,
  owner: ownerShape,
});

/** Why something cannot be filled: a shortfall's kind. */
export const whyShape = z.enum(['scarce', 'clash', 'lost', 'locked', 'impossible']);

const shortfallShape = z.strictObject({
  kind: whyShape,
  says: z.string(),
  withLines: listOf(anyId, many),
  withShares: listOf(anyId, many),
  withLocks: listOf(z.string(), many),
  mostPossible: count,
});

const lineFillShape = z.strictObject({
  lineId: anyId,
  asked: count,
  filled: count,
  pieceIds: listOf(anyId, many),
  bulkGrams: count,
  shortfall: shortfallShape.nullable(),
});

const shareFillShape = z.strictObject({
  shareId: anyId,
  sideIds: listOf(anyId, many),
  shortfall: shortfallShape.nullable(),
});

export const goalsShape = z.strictObject({ promised: z.number(), wished: z.number(), rest: z.number() });

const proofShape = z.strictObject({
  goals: goalsShape,
  bound: goalsShape,
  gap: z.number(),
  status: z.enum(['optimal', 'within-gap', 'deadline']),
  method: z.enum(['plain', 'columns']),
  seconds: z.number(),
  seed: z.number(),
});

export const cuttingPlanShape = z
  .strictObject({
    dayId: anyId,
    sides: listOf(sidePlanShape, many),
    singles: listOf(singlePieceShape, many),
    lines: listOf(lineFillShape, many),
    shares: listOf(shareFillShape, many),
    proof: proofShape.nullable(),
  })
  .meta({
    description: 'What becomes of every side of a day. Lengths in micrometres, masses in milligrams.',
  });
