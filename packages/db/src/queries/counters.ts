import { sql } from 'drizzle-orm';
import type { Tx } from '../database.ts';
import { handleOf } from '../engines/engine.ts';
import { counters } from '../schema/index.ts';

/** The next number of a shop, from 1, without gaps: the row stays locked until this unit ends, so take it late. */
export async function nextNumber(
  tx: Tx,
  shopId: string,
  counter: 'order' | 'ledger' | 'pack' | 'bill',
): Promise<number> {
  const [row] = await handleOf(tx)
    .insert(counters)
    .values({ shopId, counter, last: 1 })
    .onConflictDoUpdate({
      target: [counters.shopId, counters.counter],
      set: { last: sql`${counters.last} + 1` },
    })
    .returning({ last: counters.last });
  if (!row) throw new Error(`the ${counter} counter gave no number`);
  return row.last;
}
