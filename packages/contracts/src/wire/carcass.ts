import { z } from 'zod';
import { anyId, count, listOf } from './parts.ts';

export const portionShape = z
  .discriminatedUnion('by', [
    z.strictObject({ by: z.literal('thickness'), um: count }),
    z.strictObject({ by: z.literal('ribs'), ribs: count }),
    z.strictObject({ by: z.literal('weight'), fromGrams: count, toGrams: count }),
    z.strictObject({ by: z.literal('whole') }),
    z.strictObject({ by: z.literal('bulk') }),
  ])
  .meta({
    description: 'One portion as asked: a thickness, a number of ribs, a weight range, whole, or loose meat.',
  });

export const handShape = z.enum(['left', 'right']);

export const factShape = z
  .enum(['skin-on', 'head', 'feet', 'organs', 'unsplit'])
  .meta({ description: 'Fixed at slaughter.' });

export const toolsShape = z.strictObject({ saw: z.boolean(), kerfUm: count });

export const readingShape = z
  .strictObject({
    text: z
      .string()
      .regex(/^\d{1,7}(\.\d{1,6})?$/, 'must be a plain decimal number, as the scale showed it: "92.1"'),
    unit: z.enum(['kg', 'g', 'lb', 'oz']),
  })
  .meta({ description: 'What a scale showed, kept as it was read.' });

export const sideFactsShape = z.strictObject({
  sideId: anyId,
  animalId: anyId,
  hand: handShape,
  massMg: count,
  carcassGrams: count,
  ribs: count,
  facts: listOf(factShape, 5),
  lostParts: listOf(anyId, 100),
});
