import type { WeightUnit } from '@flitchbook/carcass';
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
import { instant, setNow, shopId } from './columns.ts';
import { animals, cuttingDays, sides } from './day.ts';
import { carcassShares, orderLines, orders } from './orders.ts';
import { people, shops } from './shop.ts';

/** What the shop has set for labels, bills and pick-ups. A shop without a row has the usual settings. */
export const bookSettings = pgTable(
  'book_settings',
  {
    shopId: shopId(),
    settings: jsonb('settings').$type<Readonly<Record<string, unknown>>>().notNull(),
    version: integer('version').notNull().default(1),
  },
  (t) => [
    primaryKey({ name: 'book_settings_one_per_shop', columns: [t.shopId] }),
    foreignKey({ name: 'book_settings_shop_known', columns: [t.shopId], foreignColumns: [shops.shopId] }),
    check('book_settings_shape', sql`jsonb_typeof(${t.settings}) = 'object'`),
    check('book_settings_version_counts', sql`${t.version} >= 1`),
  ],
);

const reading = '^[0-9]{1,7}(\\.[0-9]{1,6})?$';

/** Pieces of one animal in one wrap, weighed once. A pack is never changed: it is undone, and another one made. */
export const packs = pgTable(
  'packs',
  {
    shopId: shopId(),
    packId: uuid('pack_id').notNull(),
    /** running number of the shop, from 1: on the label, and in its symbol */
    serial: integer('serial').notNull(),
    dayId: uuid('day_id').notNull(),
    animalId: uuid('animal_id').notNull(),
    legalMode: text('legal_mode').$type<'for-sale' | 'for-owner'>().notNull(),
    /** null: belongs to no side */
    sideId: uuid('side_id'),
    lot: text('lot').notNull(),
    /** the plan's name for the pack it foresaw */
    foreseen: text('foreseen').notNull(),
    thing: text('thing').$type<'cut' | 'item' | 'stock' | 'bulk'>().notNull(),
    what: text('what').notNull(),
    name: text('name').notNull(),
    pieces: integer('pieces').notNull(),
    /** null: for the counter */
    orderId: uuid('order_id'),
    lineId: uuid('line_id'),
    shareId: uuid('share_id'),
    /** the scale as it was read; gross and tare may differ in unit, the net has that of the gross */
    grossText: text('gross_text').notNull(),
    tareText: text('tare_text').notNull(),
    tareUnit: text('tare_unit').$type<WeightUnit>().notNull(),
    netText: text('net_text').notNull(),
    unit: text('unit').$type<WeightUnit>().notNull(),
    netGrams: integer('net_grams').notNull(),
    expectedMg: bigint('expected_mg', { mode: 'number' }).notNull(),
    /** null: part of a share, or cut for its owner */
    priceMinor: integer('price_minor'),
    pricePer: text('price_per').$type<'kg' | 'lb'>(),
    amountMinor: integer('amount_minor'),
    taxClass: text('tax_class').notNull(),
    frozen: boolean('frozen').notNull(),
    packedOn: date('packed_on', { mode: 'string' }).notNull(),
    bestBefore: date('best_before', { mode: 'string' }),
    packedAt: setNow('packed_at'),
    packedBy: uuid('packed_by'),
    undoneAt: instant('undone_at'),
  },
  (t) => [
    primaryKey({ name: 'packs_one_per_id', columns: [t.shopId, t.packId] }),
    unique('packs_one_per_serial').on(t.shopId, t.serial),
    foreignKey({
      name: 'packs_day_known',
      columns: [t.shopId, t.dayId],
      foreignColumns: [cuttingDays.shopId, cuttingDays.dayId],
    }),
    // The mode of the animal comes along, so that the rule below can look at it.
    foreignKey({
      name: 'packs_animal_known',
      columns: [t.shopId, t.animalId, t.legalMode],
      foreignColumns: [animals.shopId, animals.animalId, animals.legalMode],
    }),
    foreignKey({
      name: 'packs_side_known',
      columns: [t.shopId, t.sideId],
      foreignColumns: [sides.shopId, sides.sideId],
    }),
    foreignKey({
      name: 'packs_order_known',
      columns: [t.shopId, t.orderId],
      foreignColumns: [orders.shopId, orders.orderId],
    }),
    foreignKey({
      name: 'packs_line_known',
      columns: [t.shopId, t.lineId],
      foreignColumns: [orderLines.shopId, orderLines.lineId],
    }),
    foreignKey({
      name: 'packs_share_known',
      columns: [t.shopId, t.shareId],
      foreignColumns: [carcassShares.shopId, carcassShares.shareId],
    }),
    foreignKey({
      name: 'packs_packer_known',
      columns: [t.shopId, t.packedBy],
      foreignColumns: [people.shopId, people.personId],
    }),
    index('packs_of_day').on(t.shopId, t.dayId),
    index('packs_of_animal').on(t.shopId, t.animalId),
    index('packs_of_order').on(t.shopId, t.orderId),
    index('packs_of_lot').on(t.shopId, t.lot),
    check('packs_serial_counts', sql`${t.serial} >= 1`),
    // Meat cut for its owner never reaches the counter.
    check(
      'packs_owner_only',
      sql`${t.legalMode} = 'for-sale' or (${t.orderId} is not null and ${t.priceMinor} is null)`,
    ),
    check(
      'packs_one_owner',
      sql`num_nonnulls(${t.lineId}, ${t.shareId}) = case when ${t.orderId} is null then 0 else 1 end`,
    ),
    check('packs_thing_known', sql`${t.thing} in ('cut', 'item', 'stock', 'bulk')`),
    check('packs_name_present', sql`length(trim(${t.name})) between 1 and 200`),
    check('packs_lot_shape', sql`${t.lot} ~ '^[A-Za-z0-9./_-]{1,20}$'`),
    check('packs_pieces_within', sql`${t.pieces} between 0 and 10000`),
    check('packs_gross_read', sql`${t.grossText} ~ ${sql.raw(`'${reading}'`)}`),
    check('packs_tare_read', sql`${t.tareText} ~ ${sql.raw(`'${reading}'`)}`),
    check('packs_net_read', sql`${t.netText} ~ ${sql.raw(`'${reading}'`)}`),
    check(
      'packs_units_known',
      sql`${t.unit} in ('kg', 'g', 'lb', 'oz') and ${t.tareUnit} in ('kg', 'g', 'lb', 'oz')`,
    ),
    check('packs_net_positive', sql`${t.netGrams} between 1 and 2000000`),
    check('packs_net_not_above_gross', sql`${t.netText}::numeric <= ${t.grossText}::numeric`),
    check('packs_expected_not_negative', sql`${t.expectedMg} >= 0`),
    check('packs_price_whole', sql`num_nulls(${t.priceMinor}, ${t.pricePer}, ${t.amountMinor}) in (0, 3)`),
    check('packs_price_not_negative', sql`${t.priceMinor} >= 0 and ${t.amountMinor} >= 0`),
    check('packs_price_per_known', sql`${t.pricePer} in ('kg', 'lb')`),
    check('packs_dates_in_order', sql`${t.bestBefore} >= ${t.packedOn}`),
  ],
);

/** A piece of a day goes into one pack. Pieces are named as the plan names them; undoing a pack sets them free. */
export const packPieces = pgTable(
  'pack_pieces',
  {
    shopId: shopId(),
    dayId: uuid('day_id').notNull(),
    pieceId: text('piece_id').notNull(),
    packId: uuid('pack_id').notNull(),
  },
  (t) => [
    primaryKey({ name: 'pack_pieces_packed_once', columns: [t.shopId, t.dayId, t.pieceId] }),
    foreignKey({
      name: 'pack_pieces_pack_known',
      columns: [t.shopId, t.packId],
      foreignColumns: [packs.shopId, packs.packId],
    }),
    index('pack_pieces_of_pack').on(t.shopId, t.packId),
  ],
);

/** A batch of labels at the printer. What is confirmed is not printed again when the printer stops half-way. */
export const labelRuns = pgTable(
  'label_runs',
  {
    shopId: shopId(),
    runId: uuid('run_id').notNull(),
    startedAt: setNow('started_at'),
    startedBy: uuid('started_by'),
  },
  (t) => [
    primaryKey({ name: 'label_runs_one_per_id', columns: [t.shopId, t.runId] }),
    foreignKey({ name: 'label_runs_shop_known', columns: [t.shopId], foreignColumns: [shops.shopId] }),
  ],
);

export const labelRunPacks = pgTable(
  'label_run_packs',
  {
    shopId: shopId(),
    runId: uuid('run_id').notNull(),
    /** place in the run, from 0 */
    place: integer('place').notNull(),
    packId: uuid('pack_id').notNull(),
    printedAt: instant('printed_at'),
  },
  (t) => [
    primaryKey({ name: 'label_run_packs_one_per_place', columns: [t.shopId, t.runId, t.place] }),
    unique('label_run_packs_once').on(t.shopId, t.runId, t.packId),
    foreignKey({
      name: 'label_run_packs_run_known',
      columns: [t.shopId, t.runId],
      foreignColumns: [labelRuns.shopId, labelRuns.runId],
    }),
    foreignKey({
      name: 'label_run_packs_pack_known',
      columns: [t.shopId, t.packId],
      foreignColumns: [packs.shopId, packs.packId],
    }),
    check('label_run_packs_place_counts', sql`${t.place} >= 0`),
  ],
);
