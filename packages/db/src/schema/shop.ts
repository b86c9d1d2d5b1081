import { sql } from 'drizzle-orm';
import { bigint, check, foreignKey, pgTable, primaryKey, text, uniqueIndex, uuid } from 'drizzle-orm/pg-core';
import { instant, setNow, shopId } from './columns.ts';

export const shops = pgTable(
  'shops',
  {
    shopId: shopId(),
    name: text('name').notNull(),
    currency: text('currency').notNull(),
    timeZone: text('time_zone').notNull(),
    weightUnit: text('weight_unit').$type<'lb' | 'kg'>().notNull(),
    lengthUnit: text('length_unit').$type<'in' | 'mm'>().notNull(),
    createdAt: setNow('created_at'),
  },
  (t) => [
    primaryKey({ name: 'shops_one_per_id', columns: [t.shopId] }),
    check('shops_name_present', sql`length(trim(${t.name})) between 1 and 200`),
    check('shops_currency_code', sql`${t.currency} ~ '^[A-Z]{3}$'`),
    check('shops_time_zone_present', sql`length(${t.timeZone}) between 1 and 100`),
    check('shops_weight_unit_known', sql`${t.weightUnit} in ('lb', 'kg')`),
    check('shops_length_unit_known', sql`${t.lengthUnit} in ('in', 'mm')`),
  ],
);

/** Last number given out, by shop and kind. The row lock makes numbers gapless. */
export const counters = pgTable(
  'counters',
  {
    shopId: shopId(),
    counter: text('counter').$type<'order' | 'ledger' | 'pack' | 'bill'>().notNull(),
    last: bigint('last', { mode: 'number' }).notNull(),
  },
  (t) => [
    primaryKey({ name: 'counters_one_per_kind', columns: [t.shopId, t.counter] }),
    foreignKey({ name: 'counters_shop_known', columns: [t.shopId], foreignColumns: [shops.shopId] }),
    check('counters_kind_known', sql`${t.counter} in ('order', 'ledger', 'pack', 'bill')`),
    check('counters_not_negative', sql`${t.last} >= 0`),
  ],
);

export const people = pgTable(
  'people',
  {
    shopId: shopId(),
    personId: uuid('person_id').notNull(),
    email: text('email').notNull(),
    name: text('name').notNull(),
    role: text('role').$type<'customer' | 'counter' | 'butcher' | 'owner'>().notNull(),
    /** null: signs in by a link in a mail and not by a password */
    passwordHash: text('password_hash'),
    /** of mails, BCP 47; null: not known, the shop's own */
    language: text('language').$type<'en' | 'es'>(),
    createdAt: setNow('created_at'),
  },
  (t) => [
    primaryKey({ name: 'people_one_per_id', columns: [t.shopId, t.personId] }),
    foreignKey({ name: 'people_shop_known', columns: [t.shopId], foreignColumns: [shops.shopId] }),
    uniqueIndex('people_one_per_email').on(t.shopId, sql`lower(${t.email})`),
    check(
      'people_email_shape',
      sql`length(${t.email}) <= 254 and ${t.email} ~ '^[^@[:space:]]+@[^@[:space:]]+$'`,
    ),
    check('people_name_present', sql`length(trim(${t.name})) between 1 and 200`),
    check('people_role_known', sql`${t.role} in ('customer', 'counter', 'butcher', 'owner')`),
    check('people_language_known', sql`${t.language} in ('en', 'es')`),
    check('people_password_hashed', sql`${t.passwordHash} like '$argon2id$%'`),
  ],
);

export const sessions = pgTable(
  'sessions',
  {
    shopId: shopId(),
    /** SHA-256 of the token, hexadecimal: the token itself is stored nowhere */
    tokenHash: text('token_hash').notNull(),
    personId: uuid('person_id').notNull(),
    /** the link it was begun with: revoking that ends this */
    linkId: uuid('link_id'),
    createdAt: setNow('created_at'),
    expiresAt: instant('expires_at').notNull(),
  },
  (t) => [
    primaryKey({ name: 'sessions_one_per_token', columns: [t.shopId, t.tokenHash] }),
    foreignKey({
      name: 'sessions_person_known',
      columns: [t.shopId, t.personId],
      foreignColumns: [people.shopId, people.personId],
    }).onDelete('cascade'),
    check('sessions_token_hashed', sql`${t.tokenHash} ~ '^[0-9a-f]{64}$'`),
    check('sessions_expiry_finite', sql`isfinite(${t.expiresAt})`),
  ],
);

export const farms = pgTable(
  'farms',
  { shopId: shopId(), farmId: uuid('farm_id').notNull(), name: text('name').notNull() },
  (t) => [
    primaryKey({ name: 'farms_one_per_id', columns: [t.shopId, t.farmId] }),
    foreignKey({ name: 'farms_shop_known', columns: [t.shopId], foreignColumns: [shops.shopId] }),
    check('farms_name_present', sql`length(trim(${t.name})) between 1 and 200`),
  ],
);
