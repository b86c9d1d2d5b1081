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
  uuid,
} from 'drizzle-orm/pg-core';
import { setNow, shopId } from './columns.ts';
import { shops } from './shop.ts';

type Facts = Readonly<Record<string, unknown>>;

/** What happened to promises, in order. Appended only: triggers in the migrations refuse anything else. */
export const ledger = pgTable(
  'ledger',
  {
    shopId: shopId(),
    seq: bigint('seq', { mode: 'number' }).notNull(),
    at: setNow('at'),
    kind: text('kind').notNull(),
    dayId: uuid('day_id'),
    orderId: uuid('order_id'),
    personId: uuid('person_id'),
    facts: jsonb('facts').$type<Facts>().notNull(),
  },
  (t) => [
    primaryKey({ name: 'ledger_one_per_seq', columns: [t.shopId, t.seq] }),
    foreignKey({ name: 'ledger_shop_known', columns: [t.shopId], foreignColumns: [shops.shopId] }),
    check('ledger_seq_counts', sql`${t.seq} >= 1`),
    check('ledger_kind_shape', sql`${t.kind} ~ '^[a-z]+([.-][a-z]+)*$'`),
    check('ledger_facts_shape', sql`jsonb_typeof(${t.facts}) = 'object'`),
  ],
);

/** Who did what. Appended only, like the ledger. */
export const audit = pgTable(
  'audit',
  {
    shopId: shopId(),
    auditId: uuid('audit_id').notNull().default(sql`gen_random_uuid()`),
    at: setNow('at'),
    personId: uuid('person_id'),
    action: text('action').notNull(),
    subject: text('subject').notNull(),
    facts: jsonb('facts').$type<Facts>().notNull(),
  },
  (t) => [
    primaryKey({ name: 'audit_one_per_id', columns: [t.shopId, t.auditId] }),
    foreignKey({ name: 'audit_shop_known', columns: [t.shopId], foreignColumns: [shops.shopId] }),
    index('audit_by_time').on(t.shopId, t.at),
    check('audit_action_shape', sql`${t.action} ~ '^[a-z]+([.-][a-z]+)*$'`),
    check('audit_facts_shape', sql`jsonb_typeof(${t.facts}) = 'object'`),
  ],
);

/** Answers already given, written in the transaction of the effect. */
export const idempotencyKeys = pgTable(
  'idempotency_keys',
  {
    shopId: shopId(),
    principal: text('principal').notNull(),
    route: text('route').notNull(),
    key: text('key').notNull(),
    fingerprint: text('fingerprint').notNull(),
    status: integer('status').notNull(),
    response: jsonb('response').$type<unknown>(),
    createdAt: setNow('created_at'),
  },
  (t) => [
    primaryKey({ name: 'idempotency_keys_once', columns: [t.shopId, t.principal, t.route, t.key] }),
    foreignKey({ name: 'idempotency_keys_shop_known', columns: [t.shopId], foreignColumns: [shops.shopId] }),
    index('idempotency_keys_by_time').on(t.shopId, t.createdAt),
    check('idempotency_keys_key_length', sql`length(${t.key}) between 1 and 255`),
    check('idempotency_keys_fingerprint_hashed', sql`${t.fingerprint} ~ '^[0-9a-f]{64}$'`),
    check('idempotency_keys_status_known', sql`${t.status} between 200 and 599`),
  ],
);
