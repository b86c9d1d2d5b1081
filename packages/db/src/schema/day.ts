import type { Portion, SlaughterFact, Tools, WeightUnit } from '@flitchbook/carcass';
import type { Counter, Instructions, Rank, Wanted } from '@flitchbook/plan';
import { sql } from 'drizzle-orm';
import {
  bigint,
  boolean,
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
import { farms, people, shops } from './shop.ts';

export const cuttingDays = pgTable(
  'cutting_days',
  {
    shopId: shopId(),
    dayId: uuid('day_id').notNull(),
    date: date('date', { mode: 'string' }).notNull(),
    state: text('state').$type<'open' | 'closed'>().notNull().default('open'),
    /** raised by one with every change of the day, its orders, animals, locks or plan */
    version: integer('version').notNull().default(1),
    /** the version that the stored plan belongs to */
    plannedVersion: integer('planned_version'),
    tools: jsonb('tools').$type<Tools>().notNull(),
    counter: jsonb('counter').$type<Counter>().notNull(),
    createdAt: setNow('created_at'),
  },
  (t) => [
    primaryKey({ name: 'cutting_days_one_per_id', columns: [t.shopId, t.dayId] }),
    foreignKey({ name: 'cutting_days_shop_known', columns: [t.shopId], foreignColumns: [shops.shopId] }),
    unique('cutting_days_one_per_date').on(t.shopId, t.date),
    check('cutting_days_date_finite', sql`${t.date} between date '2000-01-01' and date '2199-12-31'`),
    check('cutting_days_state_known', sql`${t.state} in ('open', 'closed')`),
    check('cutting_days_version_counts', sql`${t.version} >= 1`),
    check('cutting_days_planned_not_ahead', sql`${t.plannedVersion} between 1 and ${t.version}`),
  ],
);

export const animals = pgTable(
  'animals',
  {
    shopId: shopId(),
    animalId: uuid('animal_id').notNull(),
    dayId: uuid('day_id').notNull(),
    farmId: uuid('farm_id'),
    name: text('name').notNull(),
    speciesId: text('species_id').notNull(),
    ribs: integer('ribs').notNull(),
    /** the scale as it was read, and its grams */
    hangingText: text('hanging_text').notNull(),
    hangingUnit: text('hanging_unit').$type<WeightUnit>().notNull(),
    hangingGrams: integer('hanging_grams').notNull(),
    hotOrCold: text('hot_or_cold').$type<'hot' | 'cold'>().notNull(),
    facts: text('facts').array().$type<SlaughterFact[]>().notNull(),
    lostItems: text('lost_items').array().notNull(),
    version: integer('version').notNull().default(1),
    bookedAt: setNow('booked_at'),
  },
  (t) => [
    primaryKey({ name: 'animals_one_per_id', columns: [t.shopId, t.animalId] }),
    foreignKey({
      name: 'animals_day_known',
      columns: [t.shopId, t.dayId],
      foreignColumns: [cuttingDays.shopId, cuttingDays.dayId],
    }),
    foreignKey({
      name: 'animals_farm_known',
      columns: [t.shopId, t.farmId],
      foreignColumns: [farms.shopId, farms.farmId],
    }),
    index('animals_of_day').on(t.shopId, t.dayId),
    check('animals_name_present', sql`length(trim(${t.name})) between 1 and 200`),
    check('animals_ribs_within', sql`${t.ribs} between 1 and 30`),
    check('animals_hanging_read', sql`${t.hangingText} ~ '^[0-9]{1,7}(\\.[0-9]{1,6})?$'`),
    check('animals_hanging_unit_known', sql`${t.hangingUnit} in ('kg', 'g', 'lb', 'oz')`),
    check('animals_hanging_within', sql`${t.hangingGrams} between 1 and 2000000`),
    check('animals_hot_or_cold', sql`${t.hotOrCold} in ('hot', 'cold')`),
    check('animals_facts_known', sql`${t.facts} <@ array['skin-on', 'head', 'feet', 'organs', 'unsplit']::text[]`),
    check('animals_version_counts', sql`${t.version} >= 1`),
  ],
);

export const sides = pgTable(
  'sides',
  {
    shopId: shopId(),
    sideId: uuid('side_id').notNull(),
    animalId: uuid('animal_id').notNull(),
    hand: text('hand').$type<'left' | 'right'>().notNull(),
    /** expected or weighed: half an odd gram is not lost */
    massMg: bigint('mass_mg', { mode: 'number' }).notNull(),
    /** the scale as it was read, when the side was weighed alone */
    weightText: text('weight_text'),
    weightUnit: text('weight_unit').$type<WeightUnit>(),
    lostParts: text('lost_parts').array().notNull(),
  },
  (t) => [
    primaryKey({ name: 'sides_one_per_id', columns: [t.shopId, t.sideId] }),
    foreignKey({
      name: 'sides_animal_known',
      columns: [t.shopId, t.animalId],
      foreignColumns: [animals.shopId, animals.animalId],
    }),
    unique('sides_one_per_hand').on(t.shopId, t.animalId, t.hand),
    check('sides_hand_known', sql`${t.hand} in ('left', 'right')`),
    check('sides_mass_within', sql`${t.massMg} between 1 and 2000000000`),
    check(
      'sides_weight_read',
      sql`(${t.weightText} is null) = (${t.weightUnit} is null) and ${t.weightText} ~ '^[0-9]{1,7}(\\.[0-9]{1,6})?$' and ${t.weightUnit} in ('kg', 'g', 'lb', 'oz')`,
    ),
  ],
);

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
    state: text('state').$type<'standing' | 'cancelled'>().notNull().default('standing'),
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
    check('orders_state_known', sql`${t.state} in ('standing', 'cancelled')`),
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

export const locks = pgTable(
  'locks',
  {
    shopId: shopId(),
    dayId: uuid('day_id').notNull(),
    /** place in the day's list, from 0 */
    place: integer('place').notNull(),
    sideId: uuid('side_id').notNull(),
    kind: text('kind').$type<'operation' | 'manner'>().notNull(),
    /** the part broken down, or the zone cut */
    target: text('target').notNull(),
    /** the operation, or the manner */
    choice: text('choice').notNull(),
  },
  (t) => [
    primaryKey({ name: 'locks_one_per_place', columns: [t.shopId, t.dayId, t.place] }),
    foreignKey({
      name: 'locks_day_known',
      columns: [t.shopId, t.dayId],
      foreignColumns: [cuttingDays.shopId, cuttingDays.dayId],
    }),
    foreignKey({
      name: 'locks_side_known',
      columns: [t.shopId, t.sideId],
      foreignColumns: [sides.shopId, sides.sideId],
    }),
    unique('locks_one_per_choice').on(t.shopId, t.sideId, t.kind, t.target, t.choice),
    check('locks_place_counts', sql`${t.place} >= 0`),
    check('locks_kind_known', sql`${t.kind} in ('operation', 'manner')`),
  ],
);
