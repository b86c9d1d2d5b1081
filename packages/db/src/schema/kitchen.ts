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
  uuid,
} from 'drizzle-orm/pg-core';
import { setNow, shopId } from './columns.ts';
import { orders } from './orders.ts';
import { packs } from './packs.ts';
import { people } from './shop.ts';

/** What was ground, cured or rendered at once. Appended only: a correction is another batch. */
export const kitchenBatches = pgTable(
  'kitchen_batches',
  {
    shopId: shopId(),
    batchId: uuid('batch_id').notNull(),
    kind: text('kind').$type<'sausage' | 'cure' | 'lard'>().notNull(),
    name: text('name').notNull(),
    madeOn: date('made_on', { mode: 'string' }).notNull(),
    /** recipe, cure request and what was reckoned of it, as it stood on that day */
    record: jsonb('record').$type<Readonly<Record<string, unknown>>>().notNull(),
    madeBy: uuid('made_by'),
    madeAt: setNow('made_at'),
  },
  (t) => [
    primaryKey({ name: 'kitchen_batches_one_per_id', columns: [t.shopId, t.batchId] }),
    foreignKey({
      name: 'kitchen_batches_maker_known',
      columns: [t.shopId, t.madeBy],
      foreignColumns: [people.shopId, people.personId],
    }),
    index('kitchen_batches_by_day').on(t.shopId, t.madeOn),
    check('kitchen_batches_kind_known', sql`${t.kind} in ('sausage', 'cure', 'lard')`),
    check('kitchen_batches_name_present', sql`length(trim(${t.name})) between 1 and 200`),
    check('kitchen_batches_record_shape', sql`jsonb_typeof(${t.record}) = 'object'`),
  ],
);

/** What a batch took of a pack. A pack gives no more than it weighs, and nothing once it has left the house. */
export const kitchenDraws = pgTable(
  'kitchen_draws',
  {
    shopId: shopId(),
    batchId: uuid('batch_id').notNull(),
    packId: uuid('pack_id').notNull(),
    grams: integer('grams').notNull(),
  },
  (t) => [
    primaryKey({ name: 'kitchen_draws_once', columns: [t.shopId, t.batchId, t.packId] }),
    foreignKey({
      name: 'kitchen_draws_batch_known',
      columns: [t.shopId, t.batchId],
      foreignColumns: [kitchenBatches.shopId, kitchenBatches.batchId],
    }),
    foreignKey({
      name: 'kitchen_draws_pack_known',
      columns: [t.shopId, t.packId],
      foreignColumns: [packs.shopId, packs.packId],
    }),
    index('kitchen_draws_of_pack').on(t.shopId, t.packId),
    check('kitchen_draws_positive', sql`${t.grams} > 0`),
  ],
);

/** Owners who agreed that their trim is ground with that of others who agreed. The last word counts. */
export const poolConsents = pgTable(
  'pool_consents',
  {
    shopId: shopId(),
    orderId: uuid('order_id').notNull(),
    saidAt: setNow('said_at'),
    saidBy: uuid('said_by'),
  },
  (t) => [
    primaryKey({ name: 'pool_consents_one_per_order', columns: [t.shopId, t.orderId] }),
    foreignKey({
      name: 'pool_consents_order_known',
      columns: [t.shopId, t.orderId],
      foreignColumns: [orders.shopId, orders.orderId],
    }),
    foreignKey({
      name: 'pool_consents_person_known',
      columns: [t.shopId, t.saidBy],
      foreignColumns: [people.shopId, people.personId],
    }),
  ],
);
