import type { WeightUnit } from '@flitchbook/carcass';
import { sql } from 'drizzle-orm';
import {
  check,
  date,
  foreignKey,
  index,
  integer,
  jsonb,
  pgTable,
  primaryKey,
  text,
  unique,
  uuid,
} from 'drizzle-orm/pg-core';
import { setNow, shopId } from './columns.ts';
import { orders } from './orders.ts';
import { packs } from './packs.ts';

type Taxes = readonly {
  readonly taxClass: string;
  readonly name: string;
  readonly ratePpm: number;
  readonly netMinor: number;
  readonly taxMinor: number;
}[];

/** The one settlement of an order. Only added to; a trigger in the migrations holds the total against the lines. */
export const bills = pgTable(
  'bills',
  {
    shopId: shopId(),
    billId: uuid('bill_id').notNull(),
    orderId: uuid('order_id').notNull(),
    number: integer('number').notNull(),
    issuedOn: date('issued_on', { mode: 'string' }).notNull(),
    netMinor: integer('net_minor').notNull(),
    taxMinor: integer('tax_minor').notNull(),
    totalMinor: integer('total_minor').notNull(),
    taxes: jsonb('taxes').$type<Taxes>().notNull(),
    /** what had been paid ahead */
    depositMinor: integer('deposit_minor').notNull(),
    settledAt: setNow('settled_at'),
    settledBy: uuid('settled_by'),
  },
  (t) => [
    primaryKey({ name: 'bills_one_per_id', columns: [t.shopId, t.billId] }),
    unique('bills_one_per_order').on(t.shopId, t.orderId),
    unique('bills_one_per_number').on(t.shopId, t.number),
    foreignKey({
      name: 'bills_order_known',
      columns: [t.shopId, t.orderId],
      foreignColumns: [orders.shopId, orders.orderId],
    }),
    index('bills_by_date').on(t.shopId, t.issuedOn),
    check('bills_number_counts', sql`${t.number} >= 1`),
    check('bills_total_adds_up', sql`${t.totalMinor} = ${t.netMinor} + ${t.taxMinor}`),
    check('bills_total_not_negative', sql`${t.netMinor} >= 0 and ${t.taxMinor} >= 0`),
    check('bills_deposit_not_negative', sql`${t.depositMinor} >= 0`),
    check('bills_taxes_shape', sql`jsonb_typeof(${t.taxes}) = 'array'`),
  ],
);

export const billLines = pgTable(
  'bill_lines',
  {
    shopId: shopId(),
    billId: uuid('bill_id').notNull(),
    /** place on the bill, from 0 */
    place: integer('place').notNull(),
    kind: text('kind').$type<'pack' | 'hanging' | 'fee' | 'allowance'>().notNull(),
    name: text('name').notNull(),
    about: text('about').notNull(),
    packId: uuid('pack_id'),
    count: integer('count').notNull(),
    weightText: text('weight_text'),
    weightUnit: text('weight_unit').$type<WeightUnit>(),
    priceMinor: integer('price_minor'),
    pricePer: text('price_per').$type<'kg' | 'lb'>(),
    amountMinor: integer('amount_minor').notNull(),
    taxClass: text('tax_class').notNull(),
  },
  (t) => [
    primaryKey({ name: 'bill_lines_one_per_place', columns: [t.shopId, t.billId, t.place] }),
    unique('bill_lines_pack_once').on(t.shopId, t.packId),
    foreignKey({
      name: 'bill_lines_bill_known',
      columns: [t.shopId, t.billId],
      foreignColumns: [bills.shopId, bills.billId],
    }),
    foreignKey({
      name: 'bill_lines_pack_known',
      columns: [t.shopId, t.packId],
      foreignColumns: [packs.shopId, packs.packId],
    }),
    check('bill_lines_place_counts', sql`${t.place} >= 0`),
    check('bill_lines_kind_known', sql`${t.kind} in ('pack', 'hanging', 'fee', 'allowance')`),
    check('bill_lines_pack_named', sql`(${t.kind} = 'pack') = (${t.packId} is not null)`),
    check('bill_lines_count_counts', sql`${t.count} >= 0`),
    check('bill_lines_only_allowance_negative', sql`${t.amountMinor} >= 0 or ${t.kind} = 'allowance'`),
    check('bill_lines_weight_whole', sql`(${t.weightText} is null) = (${t.weightUnit} is null)`),
    check('bill_lines_price_whole', sql`(${t.priceMinor} is null) = (${t.pricePer} is null)`),
  ],
);
