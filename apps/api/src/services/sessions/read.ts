import { findSession, listShops, type Person, type Shop } from '@flitchbook/db';
import { done, type Outcome } from '../../refusals.ts';
import type { Services } from '../ctx.ts';
import { look } from '../transact.ts';
import { tokenHash } from './sign-in.ts';

export interface Session {
  readonly person: Person;
  readonly shop: Shop;
}

/** Whose session a token opens; undefined when it is unknown, ended or over. Read anew for every request. */
export async function readSession(services: Services, token: string): Promise<Outcome<Session | undefined>> {
  return look(services.db, async (tx) => {
    const [shop] = await listShops(tx);
    return done(shop && (await findSession(tx, shop.shopId, tokenHash(token))));
  });
}
