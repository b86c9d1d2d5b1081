import { listShops, type Shop } from '@flitchbook/db';
import { done, type Outcome } from '../../refusals.ts';
import type { Services } from '../ctx.ts';
import { look } from '../transact.ts';

/** The shop that this service opens its door to: the first one. Undefined while the database is empty. */
export async function theShop(services: Services): Promise<Outcome<Shop | undefined>> {
  return look(services.db, async (tx) => done((await listShops(tx))[0]));
}
