import { findSession, forShop, type Person, type Shop } from '@flitchbook/db';
import { done, type Outcome } from '../../refusals.ts';
import type { Services } from '../ctx.ts';
import { theShop } from '../shops/the-shop.ts';
import { look } from '../transact.ts';
import { tokenHash } from './token.ts';

export interface Session {
  readonly person: Person;
  readonly shop: Shop;
}

/** Whose session a token opens; undefined when it is unknown, ended or over. Read anew for every request. */
export async function readSession(services: Services, token: string): Promise<Outcome<Session | undefined>> {
  const shop = await theShop(services);
  if (!shop.ok || !shop.value) return shop.ok ? done(undefined) : shop;
  const { shopId } = shop.value;
  return look(forShop(services.db, shopId), async (tx) =>
    done(await findSession(tx, shopId, tokenHash(token))),
  );
}
