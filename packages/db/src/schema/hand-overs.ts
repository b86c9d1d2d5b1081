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
import { instant, setNow, shopId } from './columns.ts';
import { animals } from './day.ts';
import { orders } from './orders.ts';
import { packs } from './packs.ts';
import { people, shops } from './shop.ts';

/** Packs leave the house: to whoever ordered them, or over the counter. */
export const handOvers = pgTable(
  'hand_overs',
  {
    shopId: shopId(),
    handOverId: uuid('hand_over_id').notNull(),
    /** null: sold over the counter */
    orderId: uuid('order_id'),
    takenBy: text('taken_by').notNull(),
    /** how it is known that they took it */
    proof: text('proof').$type<'signature' | 'code' | 'known'>().notNull(),
    note: text('note').notNull(),
    at: setNow('at'),
    givenBy: uuid('given_by'),
  },
  (t) => [
    primaryKey({ name: 'hand_overs_one_per_id', columns: [t.shopId, t.handOverId] }),
    foreignKey({ name: 'hand_overs_shop_known', columns: [t.shopId], foreignColumns: [shops.shopId] }),
    foreignKey({
      name: 'hand_overs_order_known',
      columns: [t.shopId, t.orderId],
      foreignColumns: [orders.shopId, orders.orderId],
    }),
    index('hand_overs_of_order').on(t.shopId, t.orderId),
    check('hand_overs_taken_by_present', sql`length(trim(${t.takenBy})) between 1 and 200`),
    check('hand_overs_proof_known', sql`${t.proof} in ('signature', 'code', 'known')`),
    check('hand_overs_note_length', sql`length(${t.note}) <= 2000`),
  ],
);

export const handOverPacks = pgTable(
  'hand_over_packs',
  {
    shopId: shopId(),
    packId: uuid('pack_id').notNull(),
    handOverId: uuid('hand_over_id').notNull(),
    /** what it was sold for over the counter */
    soldMinor: integer('sold_minor'),
  },
  (t) => [
    primaryKey({ name: 'hand_over_packs_once', columns: [t.shopId, t.packId] }),
    foreignKey({
      name: 'hand_over_packs_pack_known',
      columns: [t.shopId, t.packId],
      foreignColumns: [packs.shopId, packs.packId],
    }),
    foreignKey({
      name: 'hand_over_packs_hand_over_known',
      columns: [t.shopId, t.handOverId],
      foreignColumns: [handOvers.shopId, handOvers.handOverId],
    }),
    index('hand_over_packs_of_hand_over').on(t.shopId, t.handOverId),
    check('hand_over_packs_sold_not_negative', sql`${t.soldMinor} >= 0`),
  ],
);

/** Money that moved, for an order or over the counter. Only added to. */
export const payments = pgTable(
  'payments',
  {
    shopId: shopId(),
    paymentId: uuid('payment_id').notNull(),
    orderId: uuid('order_id'),
    handOverId: uuid('hand_over_id'),
    kind: text('kind').$type<'deposit' | 'payment' | 'refund' | 'credit'>().notNull(),
    method: text('method').$type<'cash' | 'card-terminal' | 'transfer'>().notNull(),
    amountMinor: integer('amount_minor').notNull(),
    note: text('note').notNull(),
    at: setNow('at'),
    takenBy: uuid('taken_by'),
  },
  (t) => [
    primaryKey({ name: 'payments_one_per_id', columns: [t.shopId, t.paymentId] }),
    foreignKey({
      name: 'payments_order_known',
      columns: [t.shopId, t.orderId],
      foreignColumns: [orders.shopId, orders.orderId],
    }),
    foreignKey({
      name: 'payments_hand_over_known',
      columns: [t.shopId, t.handOverId],
      foreignColumns: [handOvers.shopId, handOvers.handOverId],
    }),
    index('payments_of_order').on(t.shopId, t.orderId),
    index('payments_by_time').on(t.shopId, t.at),
    check('payments_one_reason', sql`num_nonnulls(${t.orderId}, ${t.handOverId}) = 1`),
    check('payments_kind_known', sql`${t.kind} in ('deposit', 'payment', 'refund', 'credit')`),
    check('payments_method_known', sql`${t.method} in ('cash', 'card-terminal', 'transfer')`),
    check('payments_amount_positive', sql`${t.amountMinor} >= 1`),
    check('payments_note_length', sql`length(${t.note}) <= 2000`),
  ],
);

/** When and where an order is fetched: one plan for each order. */
export const pickUps = pgTable(
  'pick_ups',
  {
    shopId: shopId(),
    orderId: uuid('order_id').notNull(),
    /** the shop's own clock, as agreed */
    date: date('date', { mode: 'string' }).notNull(),
    fromTime: text('from_time').notNull(),
    toTime: text('to_time').notNull(),
    startsAt: instant('starts_at').notNull(),
    endsAt: instant('ends_at').notNull(),
    /** where the goods wait */
    place: text('place').notNull(),
    version: integer('version').notNull().default(1),
    changedAt: setNow('changed_at'),
  },
  (t) => [
    primaryKey({ name: 'pick_ups_one_per_order', columns: [t.shopId, t.orderId] }),
    foreignKey({
      name: 'pick_ups_order_known',
      columns: [t.shopId, t.orderId],
      foreignColumns: [orders.shopId, orders.orderId],
    }),
    index('pick_ups_by_time').on(t.shopId, t.startsAt),
    check(
      'pick_ups_clock_times',
      sql`${t.fromTime} ~ '^[0-2][0-9]:[0-5][0-9]$' and ${t.toTime} ~ '^[0-2][0-9]:[0-5][0-9]$'`,
    ),
    check(
      'pick_ups_span_finite',
      sql`isfinite(${t.startsAt}) and isfinite(${t.endsAt}) and ${t.endsAt} > ${t.startsAt}`,
    ),
    check('pick_ups_place_length', sql`length(${t.place}) <= 200`),
  ],
);

/** What was done about goods that nobody fetched. Only added to. */
export const pickUpSteps = pgTable(
  'pick_up_steps',
  {
    shopId: shopId(),
    orderId: uuid('order_id').notNull(),
    step: text('step').$type<'remind' | 'freeze' | 'release'>().notNull(),
    at: setNow('at'),
    doneBy: uuid('done_by'),
  },
  (t) => [
    primaryKey({ name: 'pick_up_steps_once', columns: [t.shopId, t.orderId, t.step] }),
    foreignKey({
      name: 'pick_up_steps_pick_up_known',
      columns: [t.shopId, t.orderId],
      foreignColumns: [pickUps.shopId, pickUps.orderId],
    }),
    check('pick_up_steps_known', sql`${t.step} in ('remind', 'freeze', 'release')`),
  ],
);

type Outs = readonly { readonly kind: string; readonly name: string; readonly grams: number }[];

/** An animal that is done: in equals out to the gram. Only added to; afterwards its packs stand as they are. */
export const animalClosings = pgTable(
  'animal_closings',
  {
    shopId: shopId(),
    animalId: uuid('animal_id').notNull(),
    hangingGrams: integer('hanging_grams').notNull(),
    apartGrams: integer('apart_grams').notNull(),
    packedGrams: integer('packed_grams').notNull(),
    namedGrams: integer('named_grams').notNull(),
    restGrams: integer('rest_grams').notNull(),
    outs: jsonb('outs').$type<Outs>().notNull(),
    flag: text('flag').$type<'none' | 'rest-too-large' | 'more-out-than-in'>().notNull(),
    note: text('note').notNull(),
    minutes: integer('minutes').notNull(),
    animalMinor: integer('animal_minor').notNull(),
    closedAt: setNow('closed_at'),
    closedBy: uuid('closed_by'),
  },
  (t) => [
    primaryKey({ name: 'animal_closings_once', columns: [t.shopId, t.animalId] }),
    foreignKey({
      name: 'animal_closings_animal_known',
      columns: [t.shopId, t.animalId],
      foreignColumns: [animals.shopId, animals.animalId],
    }),
    check(
      'animal_closings_balance',
      sql`${t.hangingGrams} + ${t.apartGrams} = ${t.packedGrams} + ${t.namedGrams} + ${t.restGrams}`,
    ),
    check(
      'animal_closings_not_negative',
      sql`least(${t.hangingGrams}, ${t.apartGrams}, ${t.packedGrams}, ${t.namedGrams}) >= 0`,
    ),
    check('animal_closings_work_not_negative', sql`${t.minutes} >= 0 and ${t.animalMinor} >= 0`),
    check('animal_closings_flag_known', sql`${t.flag} in ('none', 'rest-too-large', 'more-out-than-in')`),
    // What does not balance needs a word why.
    check('animal_closings_flag_explained', sql`${t.flag} = 'none' or length(trim(${t.note})) > 0`),
    check('animal_closings_outs_shape', sql`jsonb_typeof(${t.outs}) = 'array'`),
  ],
);

/** Addresses of calendar feeds. The token itself is stored nowhere; a feed is taken back by its hash. */
export const calendarFeeds = pgTable(
  'calendar_feeds',
  {
    shopId: shopId(),
    /** SHA-256 of the token, hexadecimal */
    tokenHash: text('token_hash').notNull(),
    name: text('name').notNull(),
    madeAt: setNow('made_at'),
    madeBy: uuid('made_by'),
    revokedAt: instant('revoked_at'),
  },
  (t) => [
    primaryKey({ name: 'calendar_feeds_one_per_token', columns: [t.shopId, t.tokenHash] }),
    foreignKey({
      name: 'calendar_feeds_maker_known',
      columns: [t.shopId, t.madeBy],
      foreignColumns: [people.shopId, people.personId],
    }),
    check('calendar_feeds_token_hashed', sql`${t.tokenHash} ~ '^[0-9a-f]{64}$'`),
    check('calendar_feeds_name_present', sql`length(trim(${t.name})) between 1 and 200`),
  ],
);
