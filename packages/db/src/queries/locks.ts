import type { Lock } from '@flitchbook/plan';
import { and, asc, eq } from 'drizzle-orm';
import type { Tx } from '../database.ts';
import { handleOf } from '../engines/engine.ts';
import { locks } from '../schema/index.ts';
import type { TouchedDay } from './shapes.ts';

const toRow = (day: TouchedDay, lock: Lock, place: number): typeof locks.$inferInsert => {
  const { shopId, dayId } = day;
  const { sideId } = lock;
  return lock.lock === 'operation'
    ? { shopId, dayId, place, sideId, kind: 'operation', target: lock.part, choice: lock.operation }
    : { shopId, dayId, place, sideId, kind: 'manner', target: lock.zone, choice: lock.manner };
};

const fromRow = ({ kind, sideId, target, choice }: typeof locks.$inferSelect): Lock =>
  kind === 'operation'
    ? { lock: 'operation', sideId, part: target, operation: choice }
    : { lock: 'manner', sideId, zone: target, manner: choice };

/** Replaces the day's locks whole. @throws ConstraintViolation locks_side_known, locks_one_per_choice */
export async function replaceLocks(tx: Tx, day: TouchedDay, list: readonly Lock[]): Promise<void> {
  const handle = handleOf(tx);
  await handle.delete(locks).where(and(eq(locks.shopId, day.shopId), eq(locks.dayId, day.dayId)));
  if (list.length > 0) await handle.insert(locks).values(list.map((lock, place) => toRow(day, lock, place)));
}

export async function listLocks(tx: Tx, shopId: string, dayId: string): Promise<readonly Lock[]> {
  const found = await handleOf(tx)
    .select()
    .from(locks)
    .where(and(eq(locks.shopId, shopId), eq(locks.dayId, dayId)))
    .orderBy(asc(locks.place));
  return found.map(fromRow);
}
