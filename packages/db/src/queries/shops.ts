import { and, asc, eq, gt, lte, ne, sql } from 'drizzle-orm';
import type { Tx } from '../database.ts';
import { handleOf } from '../engines/engine.ts';
import { farms, people, sessions, shops } from '../schema/index.ts';
import type { Farm, NewPerson, NewSession, Person, Shop } from './shapes.ts';

const shopColumns = {
  shopId: shops.shopId,
  name: shops.name,
  currency: shops.currency,
  timeZone: shops.timeZone,
  weightUnit: shops.weightUnit,
  lengthUnit: shops.lengthUnit,
};

const personColumns = {
  shopId: people.shopId,
  personId: people.personId,
  email: people.email,
  name: people.name,
  role: people.role,
};

export async function createShop(tx: Tx, shop: Shop): Promise<void> {
  await handleOf(tx).insert(shops).values(shop);
}

export async function listShops(tx: Tx): Promise<readonly Shop[]> {
  return await handleOf(tx).select(shopColumns).from(shops).orderBy(asc(shops.createdAt), asc(shops.shopId));
}

export async function findShop(tx: Tx, shopId: string): Promise<Shop | undefined> {
  const [shop] = await handleOf(tx).select(shopColumns).from(shops).where(eq(shops.shopId, shopId));
  return shop;
}

/** @throws ConstraintViolation people_one_per_email, whatever the capitals */
export async function createPerson(tx: Tx, person: NewPerson): Promise<void> {
  await handleOf(tx).insert(people).values(person);
}

export async function findPerson(tx: Tx, shopId: string, personId: string): Promise<Person | undefined> {
  const [found] = await handleOf(tx)
    .select(personColumns)
    .from(people)
    .where(and(eq(people.shopId, shopId), eq(people.personId, personId)));
  return found;
}

type Language = 'en' | 'es';

/** Language of a person's mails; null where it is not known. */
export async function languageOf(tx: Tx, shopId: string, personId: string): Promise<Language | null> {
  const [found] = await handleOf(tx)
    .select({ language: people.language })
    .from(people)
    .where(and(eq(people.shopId, shopId), eq(people.personId, personId)));
  return found?.language ?? null;
}

export async function setLanguage(
  tx: Tx,
  shopId: string,
  personId: string,
  language: Language,
): Promise<void> {
  await handleOf(tx)
    .update(people)
    .set({ language })
    .where(and(eq(people.shopId, shopId), eq(people.personId, personId)));
}

/** @returns false when there is no such person */
export async function setPassword(
  tx: Tx,
  shopId: string,
  personId: string,
  passwordHash: string,
): Promise<boolean> {
  const set = await handleOf(tx)
    .update(people)
    .set({ passwordHash })
    .where(and(eq(people.shopId, shopId), eq(people.personId, personId)))
    .returning({ personId: people.personId });
  return set.length > 0;
}

/** Sessions that have run out, by the database's clock. @returns how many went */
export async function forgetExpiredSessions(tx: Tx, shopId: string): Promise<number> {
  const gone = await handleOf(tx)
    .delete(sessions)
    .where(and(eq(sessions.shopId, shopId), lte(sessions.expiresAt, sql`now()`)))
    .returning({ personId: sessions.personId });
  return gone.length;
}

export async function findSignIn(
  tx: Tx,
  shopId: string,
  email: string,
): Promise<{ readonly person: Person; readonly passwordHash: string | null } | undefined> {
  const [found] = await handleOf(tx)
    .select({ person: personColumns, passwordHash: people.passwordHash })
    .from(people)
    .where(and(eq(people.shopId, shopId), sql`lower(${people.email}) = lower(${email})`));
  return found;
}

/** Sessions of the same person that have run out go at the same time. */
export async function createSession(tx: Tx, session: NewSession): Promise<void> {
  const { shopId, personId, tokenHash, lifetimeSeconds, linkId = null } = session;
  const handle = handleOf(tx);
  await handle
    .delete(sessions)
    .where(
      and(eq(sessions.shopId, shopId), eq(sessions.personId, personId), lte(sessions.expiresAt, sql`now()`)),
    );
  const expiresAt = sql`now() + make_interval(secs => ${lifetimeSeconds})`;
  await handle.insert(sessions).values({ shopId, personId, tokenHash, linkId, expiresAt });
}

/** By the database's clock: an expired session is not found. */
export async function findSession(
  tx: Tx,
  shopId: string,
  tokenHash: string,
): Promise<{ readonly person: Person; readonly shop: Shop } | undefined> {
  const [found] = await handleOf(tx)
    .select({ person: personColumns, shop: shopColumns })
    .from(sessions)
    .innerJoin(people, and(eq(people.shopId, sessions.shopId), eq(people.personId, sessions.personId)))
    .innerJoin(shops, eq(shops.shopId, sessions.shopId))
    .where(
      and(eq(sessions.shopId, shopId), eq(sessions.tokenHash, tokenHash), gt(sessions.expiresAt, sql`now()`)),
    );
  return found;
}

/** @returns false when there was no such session */
export async function endSession(tx: Tx, shopId: string, tokenHash: string): Promise<boolean> {
  const ended = await handleOf(tx)
    .delete(sessions)
    .where(and(eq(sessions.shopId, shopId), eq(sessions.tokenHash, tokenHash)))
    .returning({ personId: sessions.personId });
  return ended.length > 0;
}

/** Every session of a person but one. @returns how many ended */
export async function endOtherSessions(
  tx: Tx,
  { shopId, personId, keepTokenHash }: { shopId: string; personId: string; keepTokenHash: string },
): Promise<number> {
  const ended = await handleOf(tx)
    .delete(sessions)
    .where(
      and(
        eq(sessions.shopId, shopId),
        eq(sessions.personId, personId),
        ne(sessions.tokenHash, keepTokenHash),
      ),
    )
    .returning({ personId: sessions.personId });
  return ended.length;
}

export async function createFarm(tx: Tx, farm: Farm): Promise<void> {
  await handleOf(tx).insert(farms).values(farm);
}

export async function listFarms(tx: Tx, shopId: string): Promise<readonly Farm[]> {
  return await handleOf(tx).select().from(farms).where(eq(farms.shopId, shopId)).orderBy(asc(farms.name));
}
