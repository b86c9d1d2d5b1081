import { z } from 'zod';
import { factShape, handShape } from '../wire/carcass.ts';
import { rankShape, shareSizeShape } from '../wire/cutting-day.ts';
import { anyId, listOf, localDate, maybe, nameText, noteText } from '../wire/parts.ts';
import { length, reading, weight, weightRange } from './quantity-shapes.ts';

/** Read once the currency is known. */
const priceText = z.string('must be text in quotes, such as "8.50/lb"').max(100);

const pieces = z.int().min(1).max(9999);
const percent = z.int().min(0).max(100);
const names = listOf(anyId, 100);

const portionFields = {
  thickness: maybe(length),
  ribs: maybe(z.int().min(1).max(30)),
  weight: maybe(weightRange),
};

const portionText = z.strictObject(portionFields);
const wanted = z.strictObject({ cut: anyId, ...portionFields });

const line = z.strictObject({
  id: maybe(anyId),
  species: maybe(anyId),
  cut: anyId,
  ...portionFields,
  count: maybe(pieces),
  amount: maybe(weight),
  rank: rankShape.default('promised'),
  price: maybe(priceText),
  sameAnimal: z.boolean().default(false),
  onlyAnimal: maybe(anyId),
  onlyHand: maybe(handShape),
  substitutes: listOf(wanted, 10).default([]),
});

const cutSheet = {
  operations: z.record(anyId, anyId).default({}),
  manners: z.record(anyId, anyId).default({}),
  portions: z.record(anyId, portionText).default({}),
};

const share = z.strictObject({
  id: maybe(anyId),
  species: maybe(anyId),
  size: shareSizeShape,
  rank: rankShape.default('promised'),
  price: priceText,
  onlyAnimal: maybe(anyId),
  instructions: maybe(
    z.strictObject({
      ...cutSheet,
      right: maybe(z.strictObject(cutSheet)),
      leaves: maybe(listOf(anyId, 100)),
      sharedWith: maybe(nameText),
    }),
  ),
});

const order = z.strictObject({
  id: maybe(anyId),
  owner: nameText,
  note: noteText.default(''),
  lines: listOf(line, 20_000).default([]),
  shares: listOf(share, 2000).default([]),
});

const side = z.strictObject({
  id: maybe(anyId),
  hand: handShape,
  weight: maybe(reading),
  lostParts: names.default([]),
});

const animal = z.strictObject({
  id: maybe(anyId),
  name: nameText,
  species: anyId,
  hanging: reading,
  hotOrCold: z.enum(['hot', 'cold']),
  ribs: maybe(z.int().min(1).max(30)),
  facts: listOf(factShape, 5).default([]),
  sides: maybe(listOf(side, 2)),
  lostItems: names.default([]),
});

const lockPlace = { animal: anyId, hand: handShape };
const lock = z.union([
  z.strictObject({ ...lockPlace, part: anyId, operation: anyId }),
  z.strictObject({ ...lockPlace, zone: anyId, manner: anyId }),
]);

const shopText = z.strictObject({
  name: nameText.default('The shop'),
  currency: z
    .string()
    .regex(/^[A-Z]{3}$/, 'must be three capitals, as ISO 4217 has them: "USD"')
    .default('USD'),
  weightUnit: z.enum(['lb', 'kg']).default('lb'),
  lengthUnit: z.enum(['in', 'mm']).default('in'),
});

const counter = z.strictObject({
  itemSteps: maybe(listOf(z.strictObject({ pieces: maybe(pieces), percent }), 20)),
  stockSteps: maybe(listOf(z.strictObject({ amount: maybe(weight), percent }), 20)),
  worth: z.record(anyId, priceText).default({}),
  labourPerHour: maybe(z.string('must be text in quotes, such as "24.00"').max(100)),
});

/** A cutting day as a person writes it. What may be left out, and what is then taken, is in docs/day-file.md. */
export const dayFileShape = z.strictObject({
  flitchbook: z.literal(1),
  id: maybe(anyId),
  date: localDate,
  shop: maybe(shopText),
  tools: maybe(z.strictObject({ saw: z.boolean().default(true), kerfMm: maybe(z.number().min(0).max(20)) })),
  animals: listOf(animal, 1000),
  orders: listOf(order, 20_000).default([]),
  locks: listOf(lock, 20_000).default([]),
  counter: maybe(counter),
});

/** A day file whose texts are read and whose gaps are filled, not yet looked at as a cutting day. */
export type DayFileParts = z.output<typeof dayFileShape>;

export type LineParts = z.output<typeof line>;
export type ShareParts = z.output<typeof share>;
export type OrderParts = z.output<typeof order>;
export type AnimalParts = z.output<typeof animal>;
export type LockParts = z.output<typeof lock>;
export type CounterParts = z.output<typeof counter>;
export type PortionParts = z.output<typeof portionText>;
