import { and, eq, gt, isNull, sql } from 'drizzle-orm';
import type { Tx } from '../database.ts';
import { handleOf } from '../engines/engine.ts';
import { people, sessions, signInLinks } from '../schema/index.ts';

export interface NewSignInLink {
  readonly shopId: string;
  readonly linkId: string;
  /** SHA-256 of the token, 64 hexadecimal digits */
  readonly tokenHash: string;
  readonly personId: string;
  readonly orderId: string | null;
  readonly lifetimeSeconds: number;
}

export async function createSignInLink(tx: Tx, link: NewSignInLink): Promise<void> {
  const { lifetimeSeconds, ...row } = link;
  const expiresAt = sql`now() + make_interval(secs => ${lifetimeSeconds})`;
  await handleOf(tx)
    .insert(signInLinks)
    .values({ ...row, expiresAt });
}

/** Whose link a token is; undefined when it is unknown, expired or revoked, by the database's clock. */
export async function findSignInLink(
  tx: Tx,
  shopId: string,
  tokenHash: string,
): Promise<
  { readonly linkId: string; readonly personId: string; readonly orderId: string | null } | undefined
> {
  const [found] = await handleOf(tx)
    .select({ linkId: signInLinks.linkId, personId: signInLinks.personId, orderId: signInLinks.orderId })
    .from(signInLinks)
    .innerJoin(people, and(eq(people.shopId, signInLinks.shopId), eq(people.personId, signInLinks.personId)))
    .where(
      and(
        eq(signInLinks.shopId, shopId),
        eq(signInLinks.tokenHash, tokenHash),
        gt(signInLinks.expiresAt, sql`now()`),
        isNull(signInLinks.revokedAt),
        // A link is as good as a mailbox, which is too little for the shop's own people.
        eq(people.role, 'customer'),
      ),
    );
  return found;
}

/** Every link of a customer is void from now on, and the sessions begun with one are over. */
export async function revokeSignInLinks(tx: Tx, shopId: string, personId: string): Promise<number> {
  const handle = handleOf(tx);
  const revoked = await handle
    .update(signInLinks)
    .set({ revokedAt: sql`now()` })
    .where(
      and(eq(signInLinks.shopId, shopId), eq(signInLinks.personId, personId), isNull(signInLinks.revokedAt)),
    )
    .returning({ linkId: signInLinks.linkId });
  await handle
    .delete(sessions)
    .where(
      and(eq(sessions.shopId, shopId), eq(sessions.personId, personId), sql`${sessions.linkId} is not null`),
    );
  return revoked.length;
}
