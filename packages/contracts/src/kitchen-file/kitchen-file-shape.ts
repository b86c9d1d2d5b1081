import { z } from 'zod';
import {
  type Read,
  readLength,
  readMoney,
  readPrice,
  readWeight,
  readWeightRange,
} from '../day-file/quantities.ts';
import { anyId, listOf, localDate, maybe, nameText } from '../wire/parts.ts';
import { readShare, readShareRange } from './shares.ts';

const textOf = <T>(read: (text: string) => Read<T>, example: string) =>
  z
    .string(`must be text in quotes, such as "${example}"`)
    .max(100)
    .transform((text, context) => {
      const result = read(text);
      if ('value' in result) return result.value;
      context.addIssue(result.says);
      return z.NEVER;
    });

const milligrams = textOf(readWeight, '5 lb').transform((grams) => grams * 1000);
const share = textOf(readShare, '1.6 %');
const whole = z.int().min(0).max(100_000);

/** Prices need the currency for their decimals. */
const moneyShapes = (currency: string) => ({
  price: textOf((text) => readPrice(text, currency), '8.50/lb'),
  money: textOf((text) => readMoney(text, currency), '24.00'),
});
type MoneyShapes = ReturnType<typeof moneyShapes>;

const lotShape = ({ price }: MoneyShapes) =>
  z
    .strictObject({
      id: anyId,
      kind: anyId,
      species: anyId.default('pork'),
      animal: anyId,
      owner: nameText.nullable().default(null),
      mayPool: z.boolean().default(false),
      weight: milligrams,
      fat: share,
      cutOn: localDate,
      worth: price.default(0),
    })
    .transform(({ id, animal, owner, weight, fat, worth, ...rest }) => ({
      ...rest,
      lotId: id,
      animalId: animal,
      ownerId: owner,
      massMg: weight,
      fatPpm: fat,
      fatFrom: 'measured' as const,
      weight: 'scale' as const,
      costMinorPerKg: worth,
    }));

const meat = z
  .strictObject({ kind: anyId, least: share.default(0), most: share.default(1_000_000) })
  .transform(({ kind, least, most }) => ({ kind, leastPpm: least, mostPpm: most }));

const additionShape = ({ price }: MoneyShapes) =>
  z
    .strictObject({
      name: nameText,
      share,
      allergens: listOf(anyId, 20).default([]),
      price: price.default(0),
      water: z.boolean().default(false),
    })
    .transform(({ name, share: ppmOfMeat, allergens, price: costMinorPerKg, water: isWater }) => ({
      name,
      ppmOfMeat,
      allergens,
      costMinorPerKg,
      isWater,
    }));

const recipeShape = (shapes: MoneyShapes) =>
  z
    .strictObject({
      id: anyId,
      name: nameText,
      meats: listOf(meat, 20),
      fat: textOf(readShareRange, '25-32 %'),
      additions: listOf(additionShape(shapes), 60).default([]),
      batch: textOf(readWeightRange, '8-25 lb'),
      minutes: whole,
      trimDays: whole.default(3),
      standard: maybe(z.literal('fresh-pork-sausage')),
    })
    .transform(({ id, fat, batch, minutes, trimDays, standard, ...rest }) => ({
      ...rest,
      recipeId: id,
      fatLeastPpm: fat.fromPpm,
      fatMostPpm: fat.toPpm,
      batchLeastMg: batch.fromGrams * 1000,
      batchMostMg: batch.toGrams * 1000,
      minutesPerBatch: minutes,
      trimDaysMost: trimDays,
      ...(standard && { standard }),
    }));

const promiseShape = ({ price }: MoneyShapes) =>
  z
    .strictObject({
      id: anyId,
      recipe: anyId,
      amount: milligrams,
      owner: nameText.nullable().default(null),
      price: price.default(0),
    })
    .transform(({ id, recipe: recipeId, amount: massMg, owner: ownerId, price: priceMinorPerKg }) => ({
      promiseId: id,
      recipeId,
      massMg,
      ownerId,
      priceMinorPerKg,
    }));

const offerShape = (shapes: MoneyShapes) =>
  z
    .strictObject({ id: anyId, name: nameText, gives: lotShape(shapes), cost: shapes.money })
    .transform(({ id: offerId, cost: costMinor, ...rest }) => ({ ...rest, offerId, costMinor }));

const sausageShape = (shapes: MoneyShapes) =>
  z
    .strictObject({
      date: localDate,
      labourPerHour: shapes.money.default(0),
      recipes: listOf(recipeShape(shapes), 200),
      trim: listOf(lotShape(shapes), 2000),
      promises: listOf(promiseShape(shapes), 2000),
      offers: listOf(offerShape(shapes), 50).default([]),
    })
    .transform(({ labourPerHour, trim, ...rest }) => ({
      ...rest,
      lots: trim,
      labourMinorPerHour: labourPerHour,
      olderFirstMinorPerKgDay: 1,
    }));

const cutShape = ({ price }: MoneyShapes) =>
  z
    .strictObject({ cut: anyId, weight: milligrams, reference: price, fixed: maybe(price) })
    .transform(({ cut: cutId, weight: massMg, reference: referenceMinorPerKg, fixed }) => ({
      cutId,
      massMg,
      referenceMinorPerKg,
      ...(fixed !== undefined && { fixed: { minor: fixed, per: 'kg' as const } }),
    }));

const pricesShape = (shapes: MoneyShapes) =>
  z
    .strictObject({
      cost: shapes.money,
      margin: share,
      per: z.enum(['kg', 'lb']).default('lb'),
      by: z.enum(['sales-value', 'bid-prices']).default('sales-value'),
      cuts: listOf(cutShape(shapes), 500),
    })
    .transform(({ cost: costMinor, margin: marginPpm, per, by, cuts }) => ({
      target: { costMinor, marginPpm, per, by },
      cuts,
    }));

const calendar = z.strictObject({ rule: anyId, start: localDate, thickness: textOf(readLength, '1 1/2 in') });

/** A cure is read by the kitchen itself, field by field: here it is any object. */
const cure = z.looseObject({ name: nameText, calendar: maybe(calendar) });

/** Cures, sausage and prices as a person writes them: docs/kitchen-file.md. */
export const kitchenFileShape = (currency: string) => {
  const shapes = moneyShapes(currency);
  return z.strictObject({
    flitchbook: z.literal(1),
    currency: maybe(z.string()),
    cures: listOf(cure, 200).default([]),
    sausage: maybe(sausageShape(shapes)),
    prices: maybe(pricesShape(shapes)),
  });
};

export type KitchenFile = z.output<ReturnType<typeof kitchenFileShape>>;
