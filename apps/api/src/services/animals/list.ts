import { type AnimalRecord, findDay, listAnimals } from '@flitchbook/db';
import { done, type Outcome } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { authorise } from '../roles.ts';
import { dayUnknown, look } from '../transact.ts';

/** The animals of a day, in the order they were booked. */
export async function listDayAnimals(ctx: Ctx, dayId: string): Promise<Outcome<readonly AnimalRecord[]>> {
  const refusal = authorise(ctx, 'animals.list');
  if (refusal) return refusal;
  const { shopId } = ctx.actor;
  return look(ctx.db, async (tx) => {
    if (!(await findDay(tx, shopId, dayId))) return dayUnknown(dayId);
    return done(await listAnimals(tx, shopId, dayId));
  });
}
