import { sql } from 'drizzle-orm';
import { customType, timestamp, uuid } from 'drizzle-orm/pg-core';

/** First column of every key: tables can be spread by shop. */
export const shopId = () => uuid('shop_id').notNull();

/** An instant, judged and set by the database's clock. */
export const instant = (name: string) => timestamp(name, { withTimezone: true, mode: 'date' });
export const setNow = (name: string) => instant(name).notNull().default(sql`now()`);

/** Half-open range of whole micrometres, as Postgres writes it: `[0,31750)`. */
export const intRange = customType<{ data: string }>({ dataType: () => 'int4range' });
