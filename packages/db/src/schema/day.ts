import type { SlaughterFact, Tools, WeightUnit } from '@flitchbook/carcass';
import type { Counter } from '@flitchbook/plan';
import { sql } from 'drizzle-orm';
import {
  bigint,
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
import { instant, setNow, shopId } from './columns.ts';
import { farms, shops } from './shop.ts';

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
    /** customers may hold, reserve and release until then; staff until the day is closed */
    customersUntil: instant('customers_until'),
    createdAt: setNow('created_at'),
  },
  (t) => [
    primaryKey({ name: 'cutting_days_one_per_id', columns: [t.shopId, t.dayId] }),
    foreignKey({ name: 'cutting_days_shop_known', columns: [t.shopId], foreignColumns: [shops.shopId] }),
    unique('cutting_days_one_per_date').on(t.shopId, t.date),
    check('cutting_days_date_finite', sql`${t.date} between date '2000-01-01' and date '2199-12-31'`),
    check('cutting_days_customers_until_finite', sql`isfinite(${t.customersUntil})`),
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
    /** cut for its owner: never for sale. Fixed when the animal is booked */
    legalMode: text('legal_mode').$type<'for-sale' | 'for-owner'>().notNull().default('for-sale'),
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
    unique('animals_one_mode').on(t.shopId, t.animalId, t.legalMode),
    check('animals_name_present', sql`length(trim(${t.name})) between 1 and 200`),
    check('animals_ribs_within', sql`${t.ribs} between 1 and 30`),
    check('animals_hanging_read', sql`${t.hangingText} ~ '^[0-9]{1,7}(\\.[0-9]{1,6})?$'`),
    check('animals_hanging_unit_known', sql`${t.hangingUnit} in ('kg', 'g', 'lb', 'oz')`),
    check('animals_hanging_within', sql`${t.hangingGrams} between 1 and 2000000`),
    check('animals_legal_mode_known', sql`${t.legalMode} in ('for-sale', 'for-owner')`),
    check('animals_hot_or_cold', sql`${t.hotOrCold} in ('hot', 'cold')`),
    check(
      'animals_facts_known',
      sql`${t.facts} <@ array['skin-on', 'head', 'feet', 'organs', 'unsplit']::text[]`,
    ),
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
