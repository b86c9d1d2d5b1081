import { z } from 'zod';
import { readingShape } from './carcass.ts';
import { anyId, count, listOf, nameText } from './parts.ts';

const ppm = z.int().min(0).max(1_000_000).meta({ description: 'Millionths: 82500 is 8.25 percent.' });
const minor = z.int().min(0).max(2_147_483_647);
const um = z.int().min(0).max(2_000_000);
const text = z.string().max(2000);
const clockTime = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'must be a time of day, hh:mm');
const days = z.int().min(0).max(3650);

export const partyShape = z.strictObject({
  name: z.string().max(200),
  street: z.string().max(200),
  city: z.string().max(200),
  postcode: z.string().max(40),
  country: z.string().regex(/^[A-Z]{2}$/, 'must be two capitals, as ISO 3166-1 has them: "US"'),
  taxNumber: z.string().max(60).nullable(),
});

const stockShape = z.discriminatedUnion('on', [
  z.strictObject({ on: z.literal('roll'), widthUm: um, heightUm: um }),
  z.strictObject({
    on: z.literal('sheet'),
    pageWidthUm: um,
    pageHeightUm: um,
    columns: z.int().min(1).max(20),
    rows: z.int().min(1).max(40),
    widthUm: um,
    heightUm: um,
    leftUm: um,
    topUm: um,
    betweenColumnsUm: um,
    betweenRowsUm: um,
  }),
]);

const soldThingShape = z.strictObject({
  ingredients: listOf(nameText, 100),
  allergens: listOf(nameText, 30),
  gtin: z
    .string()
    .nullable()
    .meta({ description: 'GS1 number for goods of varying weight: fourteen digits, the first a 9.' }),
  item: z
    .string()
    .nullable()
    .meta({ description: 'The shop’s own number, for numbers with a price inside.' }),
  storage: text.nullable(),
  cooking: text.nullable(),
  bestBeforeDays: days.nullable(),
});

const labelSettingsShape = z.strictObject({
  stock: stockShape,
  symbol: z.enum(['databar', 'gs1-128', 'price-inside', 'none']),
  retail: z.strictObject({
    prefix: z.string().max(4),
    itemDigits: z.int().min(1).max(9),
    hasVerifier: z.boolean(),
    priceDigits: z.int().min(1).max(9),
  }),
  safeHandling: text.meta({
    description:
      'The fixed wording of the place (in the United States 9 CFR 317.2(l)), typed in by the shop. None is made up; empty prints none.',
  }),
  storage: text,
  cooking: text,
  bestBeforeDays: days.nullable(),
  things: z.record(z.string().max(200), soldThingShape),
});

const moneySettingsShape = z.strictObject({
  taxClasses: listOf(z.strictObject({ id: anyId, name: nameText, ratePpm: ppm }), 20),
  meatTaxClass: anyId,
  fees: listOf(
    z.strictObject({
      id: anyId,
      name: nameText,
      by: z.enum(['piece', 'order', 'hanging-weight']),
      minor,
      per: z.enum(['kg', 'lb']),
      taxClass: anyId,
    }),
    50,
  ),
  tolerance: z.strictObject({ overPpm: ppm, whenOver: z.enum(['charge', 'cap', 'ask']) }),
  estimateSwingPpm: ppm,
  hangingOn: z.enum(['hot', 'cold']),
  accounts: z.strictObject({
    owedByCustomers: anyId,
    deposits: anyId,
    sales: anyId,
    tax: anyId,
    cash: anyId,
    cardTerminal: anyId,
    bank: anyId,
    letGo: anyId,
  }),
});

/** PUT /api/book-settings */
export const bookSettingsShape = z.strictObject({
  seller: partyShape,
  label: labelSettingsShape,
  tares: listOf(z.strictObject({ ...readingShape.shape, name: nameText }), 50),
  money: moneySettingsShape,
  pickUp: z.strictObject({
    weekly: listOf(
      z.strictObject({ weekday: z.int().min(1).max(7), from: clockTime, to: clockTime, most: count }),
      50,
    ),
    noShow: z.strictObject({
      remindAfterHours: z.int().min(0).max(1000),
      freezeAfterDays: days,
      releaseAfterDays: days,
      keepDepositPpm: ppm,
    }),
    oldAfterDays: days,
  }),
  closeTolerancePpm: ppm,
});

/** GET /api/book-settings */
export const setBooksShape = z.strictObject({
  settings: bookSettingsShape,
  version: count.meta({ description: '0: the usual settings, nothing was set.' }),
});
