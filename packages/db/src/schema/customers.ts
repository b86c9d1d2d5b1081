import { sql } from 'drizzle-orm';
import {
  check,
  foreignKey,
  index,
  integer,
  pgTable,
  primaryKey,
  text,
  unique,
  uuid,
} from 'drizzle-orm/pg-core';
import { instant, setNow, shopId } from './columns.ts';
import { orders } from './orders.ts';
import { people, shops } from './shop.ts';

/** How a shop deals with its customers. Without a row the usual figures hold. */
export const shopRules = pgTable(
  'shop_rules',
  {
    shopId: shopId(),
    /** a hold that a customer makes */
    holdSeconds: integer('hold_seconds').notNull(),
    /** a hold that somebody gets from the queue: the answer has to come by mail */
    promotedHoldSeconds: integer('promoted_hold_seconds').notNull(),
    /** of what the order is expected to cost */
    depositPercent: integer('deposit_percent').notNull(),
    /** orders that are expected to cost less need no deposit */
    depositFromMinor: integer('deposit_from_minor').notNull(),
    /** queued, held and standing orders of one customer on one day */
    ordersPerPerson: integer('orders_per_person').notNull(),
    /** pieces of one customer on one day, over all these orders; a share counts as none */
    piecesPerPerson: integer('pieces_per_person').notNull(),
    sharesPerPerson: integer('shares_per_person').notNull(),
  },
  (t) => [
    primaryKey({ name: 'shop_rules_one_per_shop', columns: [t.shopId] }),
    foreignKey({ name: 'shop_rules_shop_known', columns: [t.shopId], foreignColumns: [shops.shopId] }),
    check('shop_rules_hold_within', sql`${t.holdSeconds} between 1 and 604800`),
    check('shop_rules_promoted_hold_within', sql`${t.promotedHoldSeconds} between 1 and 604800`),
    check('shop_rules_deposit_within', sql`${t.depositPercent} between 0 and 100`),
    check('shop_rules_deposit_from_not_negative', sql`${t.depositFromMinor} >= 0`),
    check('shop_rules_orders_within', sql`${t.ordersPerPerson} between 1 and 1000`),
    check('shop_rules_pieces_within', sql`${t.piecesPerPerson} between 1 and 100000`),
    check('shop_rules_shares_within', sql`${t.sharesPerPerson} between 0 and 1000`),
  ],
);

/** A link in a mail with which one customer comes in without a password. */
export const signInLinks = pgTable(
  'sign_in_links',
  {
    shopId: shopId(),
    linkId: uuid('link_id').notNull(),
    /** SHA-256 of the token, hexadecimal: the token itself stands in the mail only */
    tokenHash: text('token_hash').notNull(),
    personId: uuid('person_id').notNull(),
    /** the order that the mail was about, if it was about one */
    orderId: uuid('order_id'),
    madeAt: setNow('made_at'),
    expiresAt: instant('expires_at').notNull(),
    revokedAt: instant('revoked_at'),
  },
  (t) => [
    primaryKey({ name: 'sign_in_links_one_per_id', columns: [t.shopId, t.linkId] }),
    foreignKey({
      name: 'sign_in_links_person_known',
      columns: [t.shopId, t.personId],
      foreignColumns: [people.shopId, people.personId],
    }),
    foreignKey({
      name: 'sign_in_links_order_known',
      columns: [t.shopId, t.orderId],
      foreignColumns: [orders.shopId, orders.orderId],
    }),
    unique('sign_in_links_one_per_token').on(t.shopId, t.tokenHash),
    check('sign_in_links_token_hashed', sql`${t.tokenHash} ~ '^[0-9a-f]{64}$'`),
    check('sign_in_links_expiry_finite', sql`isfinite(${t.expiresAt})`),
  ],
);

/** Mail to be sent, written in the transaction of what it tells. Sent at least once. */
export const mails = pgTable(
  'mails',
  {
    shopId: shopId(),
    mailId: uuid('mail_id').notNull(),
    /** what it tells, in small words joined by dots: order.reserved */
    kind: text('kind').notNull(),
    orderId: uuid('order_id'),
    toEmail: text('to_email').notNull(),
    subject: text('subject').notNull(),
    body: text('body').notNull(),
    /** the same as a page; null for what was written before there were any */
    html: text('html'),
    madeAt: setNow('made_at'),
    tries: integer('tries').notNull().default(0),
    /** null: sent, or given up */
    tryAt: instant('try_at'),
    sentAt: instant('sent_at'),
    /** what went wrong last */
    fault: text('fault'),
  },
  (t) => [
    primaryKey({ name: 'mails_one_per_id', columns: [t.shopId, t.mailId] }),
    foreignKey({
      name: 'mails_order_known',
      columns: [t.shopId, t.orderId],
      foreignColumns: [orders.shopId, orders.orderId],
    }),
    foreignKey({ name: 'mails_shop_known', columns: [t.shopId], foreignColumns: [shops.shopId] }),
    index('mails_to_send').on(t.shopId, t.tryAt).where(sql`${t.tryAt} is not null`),
    check('mails_kind_shape', sql`${t.kind} ~ '^[a-z]+([.-][a-z]+)*$'`),
    check(
      'mails_to_email_shape',
      sql`length(${t.toEmail}) <= 254 and ${t.toEmail} ~ '^[^@[:space:]]+@[^@[:space:]]+$'`,
    ),
    // A line break in a header would begin another one (OWASP ASVS 5.0.0, 1.3.11).
    check('mails_subject_one_line', sql`${t.subject} ~ '^[^[:cntrl:]]{1,200}$'`),
    check('mails_tries_not_negative', sql`${t.tries} >= 0`),
    check('mails_sent_once', sql`${t.sentAt} is null or ${t.tryAt} is null`),
  ],
);
