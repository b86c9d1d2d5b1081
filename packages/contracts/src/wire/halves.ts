import { z } from 'zod';
import { factShape, portionShape, toolsShape } from './carcass.ts';
import { instructionsShape, shareSizeShape } from './cutting-day.ts';
import { anyId, count, listOf, localDate, maybe, storedId } from './parts.ts';

/** POST /api/days/:dayId/half-previews */
export const halfAskedShape = z.strictObject({
  speciesId: maybe(anyId),
  size: shareSizeShape,
  instructions: instructionsShape,
});
export type HalfAsked = z.infer<typeof halfAskedShape>;

const rangeShape = z
  .strictObject({ low: count, high: count })
  .meta({ description: 'Nine animals in ten give more than the first, nine in ten less than the second.' });

const lineShape = z.strictObject({
  kind: z.enum(['item', 'stock', 'bulk']),
  id: anyId,
  name: z.string(),
  lowMg: count,
  highMg: count,
  cut: maybe(anyId),
  portion: maybe(portionShape),
  pieces: maybe(z.strictObject({ low: count, likely: count, high: count })),
  usedPercent: maybe(count),
});

const lines = listOf(lineShape, 500);

/** What a half or a whole animal of a day would come to, cut as asked. */
export const halfPreviewShape = z.strictObject({
  dayId: storedId,
  date: localDate,
  speciesId: anyId,
  size: shareSizeShape,
  side: z
    .strictObject({
      massMg: z.strictObject({ mean: count, sd: count }),
      carcassGrams: count,
      ribs: count,
      facts: listOf(factShape, 5),
    })
    .meta({ description: 'One side as the day’s animals have them: what every one of them has.' }),
  tools: toolsShape,
  hangingMg: rangeShape,
  boxedMg: rangeShape,
  freezerLitres: rangeShape,
  coolBoxes: rangeShape,
  priceMinorPerKg: count,
  price: z
    .strictObject({ fromMinor: count, toMinor: count, expectedMinor: count, depositMinor: count })
    .meta({ description: 'By hanging weight, however it is cut; the scale decides.' }),
  sides: listOf(
    z.strictObject({
      hand: z.enum(['alike', 'left', 'right']),
      primals: listOf(
        z.strictObject({ part: anyId, name: z.string(), lowMg: count, highMg: count, gives: lines }),
        50,
      ),
      stays: lines,
      lost: lines,
    }),
    2,
  ),
});
export type HalfPreviewOnWire = z.infer<typeof halfPreviewShape>;

const pileShape = z.strictObject({
  name: z.string(),
  grams: count,
  worthMinor: count,
  pieces: listOf(z.strictObject({ name: z.string(), portion: portionShape, count, grams: count }), 500),
  loose: listOf(z.strictObject({ bulk: anyId, name: z.string(), grams: count }), 100),
});

/** GET /api/orders/:orderId/deals: how the pieces of a shared half are dealt, by the plan of the day */
export const dealsShape = z.strictObject({
  deals: listOf(
    z.strictObject({
      shareId: anyId,
      apartPercent: z.number().min(0).max(100),
      fair: z.boolean(),
      piles: listOf(pileShape, 2),
    }),
    50,
  ),
});
export type DealsOnWire = z.infer<typeof dealsShape>;
