import { z } from 'zod';
import { handShape, portionShape, sideFactsShape, toolsShape } from './carcass.ts';
import { anyId, count, listOf, localDate, maybe, nameText } from './parts.ts';

// Most of anything that one day may hold: far beyond a shop, near enough to be counted.
const most = { animals: 1000, lines: 20_000, shares: 2000, locks: 20_000, substitutes: 10, steps: 100 };

export const dayAnimalShape = z.strictObject({
  animalId: anyId,
  name: z.string(),
  speciesId: anyId,
  lostItems: listOf(anyId, 100),
  sides: listOf(sideFactsShape, 2),
});

export const rankShape = z
  .enum(['promised', 'wished'])
  .meta({ description: 'Promised lines are kept before wished ones are looked at.' });

export const wantedShape = z.strictObject({ cut: anyId, portion: portionShape });

export const askShape = z
  .union([z.strictObject({ pieces: count }), z.strictObject({ grams: count })])
  .meta({ description: 'Pieces, or grams of loose meat.' });

export const demandLineShape = z.strictObject({
  lineId: anyId,
  orderId: anyId,
  owner: z.string(),
  speciesId: anyId,
  cut: anyId,
  portion: portionShape,
  ask: askShape,
  rank: rankShape,
  priceMinorPerKg: count,
  sameAnimal: z.boolean(),
  onlyAnimal: maybe(anyId),
  onlyHand: maybe(handShape),
  substitutes: listOf(wantedShape, most.substitutes),
});

const cutSheet = {
  operations: z.record(z.string(), z.string()),
  manners: z.record(z.string(), z.string()),
  portions: z.record(z.string(), portionShape),
};

export const instructionsShape = z
  .strictObject({
    ...cutSheet,
    right: maybe(z.strictObject(cutSheet)).meta({
      description: 'The right side of a whole animal, where it is cut otherwise than the left.',
    }),
    leaves: maybe(listOf(anyId, 100)).meta({ description: 'Items and bulk that are not taken home.' }),
    sharedWith: maybe(nameText).meta({ description: 'The second name, where two deal the pieces.' }),
  })
  .meta({ description: 'How a side is broken down; what is not said falls to the shop’s usual way.' });

export const shareSizeShape = z.enum(['half', 'whole']);

export const carcassShareShape = z.strictObject({
  shareId: anyId,
  orderId: anyId,
  owner: z.string(),
  speciesId: anyId,
  size: shareSizeShape,
  rank: rankShape,
  priceMinorPerKg: count,
  onlyAnimal: maybe(anyId),
  instructions: instructionsShape,
});

export const lockShape = z
  .discriminatedUnion('lock', [
    z.strictObject({ lock: z.literal('operation'), sideId: anyId, part: anyId, operation: anyId }),
    z.strictObject({ lock: z.literal('manner'), sideId: anyId, zone: anyId, manner: anyId }),
  ])
  .meta({ description: 'A choice the butcher has settled.' });

export const locksShape = listOf(lockShape, most.locks);

const counterShape = z.strictObject({
  itemSteps: listOf(z.strictObject({ pieces: count.nullable(), worthPercent: count }), most.steps),
  stockSteps: listOf(z.strictObject({ grams: count.nullable(), worthPercent: count }), most.steps),
  worthMinorPerKg: z.record(z.string(), count),
  labourMinorPerHour: count,
});

/** A cutting day as it travels: the species table is looked up by id on either side. */
export const travellingDayShape = z.strictObject({
  dayId: anyId,
  date: localDate,
  animals: listOf(dayAnimalShape, most.animals),
  lines: listOf(demandLineShape, most.lines),
  shares: listOf(carcassShareShape, most.shares),
  locks: locksShape,
  tools: toolsShape,
  counter: counterShape,
});
export type TravellingDay = z.infer<typeof travellingDayShape>;
