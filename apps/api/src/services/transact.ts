import {
  ConstraintViolation,
  type Database,
  DatabaseUnavailable,
  inTransaction,
  type Touch,
  type TouchedDay,
  type Tx,
  touchDay,
  ValueRefused,
} from '@flitchbook/db';
import { done, type Outcome, type Refusal, type RefusalType, refused } from '../refusals.ts';

/** Carries a refusal out of a transaction, so that everything in it is undone. */
class Undone extends Error {
  readonly refusal: Refusal;

  constructor(refusal: Refusal) {
    super(refusal.says);
    this.refusal = refusal;
  }
}

// The same refusals that the verbs give when they see it coming; here another request was faster.
const byConstraint: Readonly<Record<string, readonly [RefusalType, string]>> = {
  cutting_days_one_per_date: ['day.already-open', 'There is a cutting day on that date already.'],
  cutting_days_one_per_id: ['day.already-open', 'There is a cutting day with this dayId already.'],
  animals_one_per_id: ['animal.already-booked', 'There is an animal with this animalId already.'],
  sides_one_per_id: ['animal.already-booked', 'There is a side with one of these ids already.'],
  pack_pieces_packed_once: ['pack.already-made', 'Somebody else has just packed one of these pieces.'],
  packs_one_per_id: ['pack.already-made', 'There is a pack with this packId already.'],
  packs_animal_open: ['animal.closed', 'The animal is closed: its packs stand as they are.'],
  packs_owner_only: ['pack.not-for-sale', 'Meat that was cut for its owner goes to nobody else.'],
  kitchen_batches_one_per_id: ['batch.taken', 'There is a batch with this batchId already.'],
  kitchen_draws_within_pack: ['batch.taken', 'A pack does not hold so much: other batches took of it.'],
  kitchen_draws_pack_here: ['batch.taken', 'A pack of the batch has left the house, or was undone.'],
  kitchen_draws_once: ['batch.taken', 'A pack stands in the batch twice.'],
  kitchen_draws_pack_known: ['batch.taken', 'The shop has no pack with one of these packIds.'],
  hand_over_packs_not_in_batch: ['pack.gone', 'The pack went into a batch of the kitchen.'],
  packs_not_in_batch: ['pack.gone', 'The pack went into a batch of the kitchen.'],
  bills_one_per_order: ['bill.already-settled', 'The order has its bill already.'],
  bill_lines_pack_once: ['bill.already-settled', 'A pack of the order stands on a bill already.'],
  hand_over_packs_once: ['pack.gone', 'Somebody else has just handed one of these packs over.'],
  pick_up_steps_once: ['pick-up.not-due', 'This step was done already.'],
  animal_closings_once: ['animal.closed', 'The animal is closed already.'],
  animals_farm_known: ['animal.invalid', 'The shop has no farm with this farmId.'],
  orders_one_per_id: ['order.already-taken', 'There is an order with this orderId already.'],
  order_lines_one_per_id: ['order.already-taken', 'There is a line with one of these lineIds already.'],
  carcass_shares_one_per_id: ['order.already-taken', 'There is a share with one of these shareIds already.'],
  people_one_per_email: ['person.already-there', 'Somebody of the shop has this address already.'],
  order_lines_animal_known: ['order.invalid', 'The shop has no animal with the id in onlyAnimal.'],
  carcass_shares_animal_known: ['order.invalid', 'The shop has no animal with the id in onlyAnimal.'],
};

/** The refusal that an error of the database means, or undefined when it is a fault of ours. */
export function refusalOf(error: unknown): Refusal | undefined {
  if (error instanceof Undone) return error.refusal;
  if (error instanceof ConstraintViolation) {
    // The second wall: a plan that the checker let through and the database does not hold.
    if (error.constraint.startsWith('plan_')) {
      return refused(
        'plan.faulty',
        `The plan that was found breaks ${error.constraint}; nothing was changed.`,
      );
    }
    const [type, says] = byConstraint[error.constraint] ?? [];
    return type && says ? refused(type, says) : undefined;
  }
  if (error instanceof ValueRefused) {
    return refused('request.invalid', 'A value in the request does not fit its field.');
  }
  if (error instanceof DatabaseUnavailable) {
    const says = error.maybeDone
      ? 'The database did not confirm in time. Send the same request with the same key again.'
      : 'The database does not answer just now. Nothing was changed.';
    return refused('server.busy', says, { retryAfterSeconds: 1 });
  }
  return undefined;
}

/**
 * Runs `work` in one transaction. A refusal undoes everything, and rules of the database become the refusals they mean.
 * @throws what is neither: a fault of ours
 */
export async function transact<T>(db: Database, work: (tx: Tx) => Promise<Outcome<T>>): Promise<Outcome<T>> {
  try {
    return await inTransaction(db, async (tx) => {
      const outcome = await work(tx);
      if (!outcome.ok) throw new Undone(outcome);
      return outcome;
    });
  } catch (error) {
    const refusal = refusalOf(error);
    if (refusal) return refusal;
    throw error;
  }
}

/** As `transact`, on one unchanging view of the database. */
export async function look<T>(db: Database, work: (tx: Tx) => Promise<Outcome<T>>): Promise<Outcome<T>> {
  try {
    return await inTransaction(db, work, { reading: true });
  } catch (error) {
    const refusal = refusalOf(error);
    if (refusal) return refusal;
    throw error;
  }
}

export const dayUnknown = (dayId: string): Refusal =>
  refused('day.unknown', `The shop has no cutting day ${dayId}.`);

function refuseTouch(touch: Exclude<Touch, { outcome: 'touched' }>, dayId: string): Refusal {
  switch (touch.outcome) {
    case 'stale':
      return refused(
        'edit.version-stale',
        `The day is at version ${touch.version} now. Read it again, then decide.`,
      );
    case 'closed':
      return refused('day.closed', 'The cutting day is closed: nothing on it changes any more.');
    case 'unknown':
      return dayUnknown(dayId);
  }
}

/** Locks the day and gives it its next version: first in every transaction that changes a day. */
export async function touch(
  tx: Tx,
  day: {
    readonly shopId: string;
    readonly dayId: string;
    readonly ifVersion?: number;
    readonly evenClosed?: boolean;
  },
): Promise<Outcome<TouchedDay>> {
  const touched = await touchDay(tx, day);
  return touched.outcome === 'touched' ? done(touched.day) : refuseTouch(touched, day.dayId);
}
