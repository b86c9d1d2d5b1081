import type { CuttingPlan, Proof } from '@flitchbook/plan';
import { sql } from 'drizzle-orm';
import {
  bigint,
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
import { intRange, setNow, shopId } from './columns.ts';
import { animals, cuttingDays, sides } from './day.ts';
import { carcassShares, orderLines } from './orders.ts';

/** The plan of a day as a whole; its sides, operations and pieces stand in rows that the database guards. */
export const plans = pgTable(
  'plans',
  {
    shopId: shopId(),
    planId: uuid('plan_id').notNull(),
    dayId: uuid('day_id').notNull(),
    dayVersion: integer('day_version').notNull(),
    shortLines: integer('short_lines').notNull(),
    proof: jsonb('proof').$type<Proof>(),
    plan: jsonb('plan').$type<CuttingPlan>().notNull(),
    madeAt: setNow('made_at'),
  },
  (t) => [
    primaryKey({ name: 'plans_one_per_id', columns: [t.shopId, t.planId] }),
    foreignKey({
      name: 'plans_day_known',
      columns: [t.shopId, t.dayId],
      foreignColumns: [cuttingDays.shopId, cuttingDays.dayId],
    }),
    unique('plans_one_per_day').on(t.shopId, t.dayId),
    check('plans_day_version_counts', sql`${t.dayVersion} >= 1`),
    check('plans_short_lines_not_negative', sql`${t.shortLines} >= 0`),
  ],
);

export const planSides = pgTable(
  'plan_sides',
  {
    shopId: shopId(),
    planId: uuid('plan_id').notNull(),
    sideId: uuid('side_id').notNull(),
    shareId: uuid('share_id'),
    massMg: bigint('mass_mg', { mode: 'number' }).notNull(),
  },
  (t) => [
    primaryKey({ name: 'plan_sides_one_share', columns: [t.shopId, t.planId, t.sideId] }),
    foreignKey({
      name: 'plan_sides_plan_known',
      columns: [t.shopId, t.planId],
      foreignColumns: [plans.shopId, plans.planId],
    }).onDelete('cascade'),
    foreignKey({
      name: 'plan_sides_side_known',
      columns: [t.shopId, t.sideId],
      foreignColumns: [sides.shopId, sides.sideId],
    }),
    foreignKey({
      name: 'plan_sides_share_known',
      columns: [t.shopId, t.shareId],
      foreignColumns: [carcassShares.shopId, carcassShares.shareId],
    }),
    check('plan_sides_mass_not_negative', sql`${t.massMg} >= 0`),
  ],
);

export const planOperations = pgTable(
  'plan_operations',
  {
    shopId: shopId(),
    planId: uuid('plan_id').notNull(),
    sideId: uuid('side_id').notNull(),
    part: text('part').notNull(),
    operation: text('operation').notNull(),
  },
  (t) => [
    primaryKey({ name: 'plan_operations_one_per_part', columns: [t.shopId, t.planId, t.sideId, t.part] }),
    foreignKey({
      name: 'plan_operations_side_planned',
      columns: [t.shopId, t.planId, t.sideId],
      foreignColumns: [planSides.shopId, planSides.planId, planSides.sideId],
    }).onDelete('cascade'),
  ],
);

/** Pieces. Two more rules are written by hand in the migrations: spans of a bar never overlap, and nothing is empty. */
export const planPieces = pgTable(
  'plan_pieces',
  {
    shopId: shopId(),
    planId: uuid('plan_id').notNull(),
    pieceId: text('piece_id').notNull(),
    kind: text('kind').$type<'item' | 'span' | 'single'>().notNull(),
    sideId: uuid('side_id'),
    animalId: uuid('animal_id'),
    bar: text('bar'),
    /** um from the bar's head end */
    span: intRange('span'),
    /** the part or bar that an item came from */
    origin: text('origin'),
    /** cut of a span, or the item */
    what: text('what').notNull(),
    massMg: bigint('mass_mg', { mode: 'number' }).notNull(),
    lineId: uuid('line_id'),
    shareId: uuid('share_id'),
  },
  (t) => [
    primaryKey({ name: 'plan_pieces_one_line', columns: [t.shopId, t.planId, t.pieceId] }),
    foreignKey({
      name: 'plan_pieces_plan_known',
      columns: [t.shopId, t.planId],
      foreignColumns: [plans.shopId, plans.planId],
    }).onDelete('cascade'),
    foreignKey({
      name: 'plan_pieces_side_planned',
      columns: [t.shopId, t.planId, t.sideId],
      foreignColumns: [planSides.shopId, planSides.planId, planSides.sideId],
    }).onDelete('cascade'),
    foreignKey({
      name: 'plan_pieces_animal_known',
      columns: [t.shopId, t.animalId],
      foreignColumns: [animals.shopId, animals.animalId],
    }),
    foreignKey({
      name: 'plan_pieces_line_known',
      columns: [t.shopId, t.lineId],
      foreignColumns: [orderLines.shopId, orderLines.lineId],
    }),
    foreignKey({
      name: 'plan_pieces_share_known',
      columns: [t.shopId, t.shareId],
      foreignColumns: [carcassShares.shopId, carcassShares.shareId],
    }),
    index('plan_pieces_of_line').on(t.shopId, t.lineId),
    check('plan_pieces_one_owner', sql`num_nonnulls(${t.lineId}, ${t.shareId}) <= 1`),
    check('plan_pieces_mass_not_negative', sql`${t.massMg} >= 0`),
    check(
      'plan_pieces_kind_shape',
      sql`case ${t.kind}
        when 'span' then num_nonnulls(${t.sideId}, ${t.bar}, ${t.span}) = 3 and num_nonnulls(${t.animalId}, ${t.origin}) = 0
        when 'item' then num_nonnulls(${t.sideId}, ${t.origin}) = 2 and num_nonnulls(${t.animalId}, ${t.bar}, ${t.span}) = 0
        when 'single' then ${t.animalId} is not null and num_nonnulls(${t.sideId}, ${t.bar}, ${t.span}, ${t.origin}) = 0
        else false end`,
    ),
    check(
      'plan_pieces_span_within',
      sql`not isempty(${t.span}) and not lower_inf(${t.span}) and not upper_inf(${t.span}) and lower(${t.span}) >= 0`,
    ),
  ],
);
