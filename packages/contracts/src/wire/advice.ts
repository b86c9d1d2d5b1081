import { z } from 'zod';
import { locksShape } from './cutting-day.ts';
import { goalsShape, sidePlanShape } from './cutting-plan.ts';
import { anyId, count, listOf, maybe } from './parts.ts';

const many = 100_000;
const minor = z.int().meta({ description: 'Minor units; less than nothing where it costs.' });

/** POST /api/days/:dayId/split-advice: which part of which side, and what may move. */
export const splitQuestionShape = z.strictObject({
  sideId: anyId,
  part: maybe(
    anyId.meta({
      description: 'Without it: the part of the side that leaves the most ways, a hog’s middle.',
    }),
  ),
  rest: maybe(
    z.enum(['held', 'free']).meta({
      description:
        'held, the usual: the rest of the side and the other sides stay as planned. free: the day is planned anew for each way, where time allows.',
    }),
  ),
  againstWay: maybe(
    anyId.meta({ description: 'Way that prices are compared with; without it the best with the bones in.' }),
  ),
});
export type SplitQuestion = z.infer<typeof splitQuestionShape>;

const splitChangeShape = z.strictObject({ lineId: anyId, before: count, after: count, says: z.string() });

const tippingShape = z
  .strictObject({
    againstWay: anyId,
    kinds: listOf(anyId, many),
    grams: count,
    nowMinorPerKg: minor,
    tipsAtMinorPerKg: count,
  })
  .meta({
    description:
      'Items and stocks that this way gives of the side and the other does not; what they bring a kilogram now, and what they would have to bring for the two ways to come to the same.',
  });

export const splitOptionShape = z.strictObject({
  wayId: anyId,
  says: z.string(),
  inForce: z.boolean(),
  boneIn: z.boolean(),
  rest: z.enum(['held', 'planned-anew']),
  proven: z.boolean().meta({ description: 'No better plan of this way is there while the rest is held.' }),
  goals: goalsShape,
  gainMinor: minor,
  fills: listOf(z.strictObject({ lineId: anyId, pieces: count }), many),
  gains: listOf(splitChangeShape, many),
  losses: listOf(splitChangeShape, many),
  minutes: z.number(),
  bulkGrams: z.record(z.string(), count),
  tipping: tippingShape.nullable(),
  locks: locksShape,
  side: sidePlanShape,
});

/** Answer of POST /api/days/:dayId/split-advice: nothing is stored. */
export const splitAdviceShape = z
  .strictObject({
    sideId: anyId,
    part: anyId.nullable(),
    options: listOf(splitOptionShape, many),
    otherLocks: locksShape.meta({ description: 'Locks of the day that stand whichever way is chosen.' }),
    undecided: listOf(z.strictObject({ wayId: anyId, says: z.string() }), many),
    says: z.string().nullable(),
  })
  .meta({
    description:
      'Every way to break the part, each planned to its best, best first; ways that there was no time for are undecided; says tells why there is nothing to choose.',
  });
export type SplitAdviceOnWire = z.infer<typeof splitAdviceShape>;
