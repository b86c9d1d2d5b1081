import type { Portion } from '@flitchbook/carcass';
import type { Instructions, Rank, Wanted } from '@flitchbook/plan';
import { sql } from 'drizzle-orm';
import {
  boolean,
  check,
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
import { instant, setNow, shopId } from './columns.ts';
import { animals, cuttingDays } from './day.ts';
import { people } from './shop.ts';

export type OrderState = 'queued' | 'held' | 'standing' | 'lapsed' | 'released' | 'cancelled';

export const orders = pgTable(
  'orders',
  {
    shopId: shopId(),
    orderId: uuid('order_id').notNull(),
    dayId: uuid('day_id').notNull(),
    number: integer('number').notNull(),
    owner: text('owner').notNull(),
    personId: uuid('person_id'),
    note: text('note').notNull(),
    /** queued and held wait for a yes; standing is reserved or taken by the shop; the others are over */
    state: text('state').$type<OrderState>().notNull().default('standing'),
    /** the stored plan covers all of it, and has since it was accepted */
    assured: boolean('assured').notNull().default(false),
    /** a hold lapses when the database's clock has reached this */
    heldUntil: instant('held_until'),
    depositMinor: integer('deposit_minor').notNull().default(0),
    version: integer('version').notNull().default(1),
    placedAt: setNow('placed_at'),
  },
  (t) => [
    primaryKey({ name: 'orders_one_per_id', columns: [t.shopId, t.orderId] }),
    foreignKey({
      name: 'orders_day_known',
      columns: [t.shopId, t.dayId],
      foreignColumns: [cuttingDays.shopId, cuttingDays.dayId],
    }),
    foreignKey({
      name: 'orders_person_known',
      columns: [t.shopId, t.personId],
      foreignColumns: [people.shopId, people.personId],
    }),
    unique('orders_one_per_number').on(t.shopId, t.number),
    index('orders_of_day').on(t.shopId, t.dayId),
    check('orders_number_counts', sql`${t.number} >= 1`),
    check('orders_owner_present', sql`length(trim(${t.owner})) between 1 and 200`),
    check('orders_note_length', sql`length(${t.note}) <= 2000`),
    index('orders_by_hold').on(t.shopId, t.heldUntil).where(sql`${t.heldUntil} is not null`),
    index('orders_of_person').on(t.shopId, t.personId),
    check(
      'orders_state_known',
      sql`${t.state} in ('queued', 'held', 'standing', 'lapsed', 'released', 'cancelled')`,
    ),
    check('orders_held_until_set', sql`(${t.state} = 'held') = (${t.heldUntil} is not null)`),
    check('orders_held_until_finite', sql`isfinite(${t.heldUntil})`),
    check(
      'orders_assured_while_kept',
      sql`case ${t.state} when 'held' then ${t.assured} when 'standing' then true else not ${t.assured} end`,
    ),
    check('orders_deposit_not_negative', sql`${t.depositMinor} >= 0`),
    check('orders_version_counts', sql`${t.version} >= 1`),
  ],
);

export const orderLines = pgTable(
  'order_lines',
  {
    shopId: shopId(),
    lineId: uuid('line_id').notNull(),
    orderId: uuid('order_id').notNull(),
    /** place in the order, from 0 */
    place: integer('place').notNull(),
    speciesId: text('species_id').notNull(),
    cut: text('cut').notNull(),
    portion: jsonb('portion').$type<Portion>().notNull(),
    askPieces: integer('ask_pieces'),
    askGrams: integer('ask_grams'),
    rank: text('rank').$type<Rank>().notNull(),
    priceMinorPerKg: integer('price_minor_per_kg').notNull(),
    sameAnimal: boolean('same_animal').notNull(),
    onlyAnimal: uuid('only_animal'),
    onlyHand: text('only_hand').$type<'left' | 'right'>(),
    substitutes: jsonb('substitutes').$type<Wanted[]>().notNull(),
  },
  (t) => [
    primaryKey({ name: 'order_lines_one_per_id', columns: [t.shopId, t.lineId] }),
    foreignKey({
      name: 'order_lines_order_known',
      columns: [t.shopId, t.orderId],
      foreignColumns: [orders.shopId, orders.orderId],
    }),
    foreignKey({
      name: 'order_lines_animal_known',
      columns: [t.shopId, t.onlyAnimal],
      foreignColumns: [animals.shopId, animals.animalId],
    }),
    unique('order_lines_one_per_place').on(t.shopId, t.orderId, t.place),
    check('order_lines_place_counts', sql`${t.place} >= 0`),
    check('order_lines_ask_one', sql`num_nonnulls(${t.askPieces}, ${t.askGrams}) = 1`),
    check('order_lines_pieces_within', sql`${t.askPieces} between 1 and 100000`),
    check('order_lines_grams_within', sql`${t.askGrams} between 1 and 10000000`),
    check('order_lines_rank_known', sql`${t.rank} in ('promised', 'wished')`),
    check('order_lines_price_not_negative', sql`${t.priceMinorPerKg} >= 0`),
    check('order_lines_hand_known', sql`${t.onlyHand} in ('left', 'right')`),
    check('order_lines_portion_shape', sql`jsonb_typeof(${t.portion}) = 'object'`),
    check('order_lines_substitutes_shape', sql`jsonb_typeof(${t.substitutes}) = 'array'`),
  ],
);

export const carcassShares = pgTable(
  'carcass_shares',
  {
    shopId: shopId(),
    shareId: uuid('share_id').notNull(),
    orderId: uuid('order_id').notNull(),
    /** place in the order, from 0 */
    place: integer('place').notNull(),
    speciesId: text('species_id').notNull(),
    size: text('size').$type<'half' | 'whole'>().notNull(),
    rank: text('rank').$type<Rank>().notNull(),
    priceMinorPerKg: integer('price_minor_per_kg').notNull(),
    onlyAnimal: uuid('only_animal'),
    instructions: jsonb('instructions').$type<Instructions>().notNull(),
  },
  (t) => [
    primaryKey({ name: 'carcass_shares_one_per_id', columns: [t.shopId, t.shareId] }),
    foreignKey({
      name: 'carcass_shares_order_known',
      columns: [t.shopId, t.orderId],
      foreignColumns: [orders.shopId, orders.orderId],
    }),
    foreignKey({
      name: 'carcass_shares_animal_known',
      columns: [t.shopId, t.onlyAnimal],
      foreignColumns: [animals.shopId, animals.animalId],
    }),
    unique('carcass_shares_one_per_place').on(t.shopId, t.orderId, t.place),
    check('carcass_shares_place_counts', sql`${t.place} >= 0`),
    check('carcass_shares_size_known', sql`${t.size} in ('half', 'whole')`),
    check('carcass_shares_rank_known', sql`${t.rank} in ('promised', 'wished')`),
    check('carcass_shares_price_not_negative', sql`${t.priceMinorPerKg} >= 0`),
    check('carcass_shares_instructions_shape', sql`jsonb_typeof(${t.instructions}) = 'object'`),
  ],
);
