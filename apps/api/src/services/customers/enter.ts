import {
  appendAudit,
  createSession,
  endOtherSessions,
  findPerson,
  findSignInLink,
  forShop,
  revokeSignInLinks,
  setLanguage,
  setPassword,
} from '@flitchbook/db';
import { done, type Outcome, refused } from '../../refusals.ts';
import type { Ctx, Services } from '../ctx.ts';
import { authorise } from '../roles.ts';
import type { SignedIn } from '../sessions/sign-in.ts';
import { tokenHash } from '../sessions/token.ts';
import { theShop } from '../shops/the-shop.ts';
import { transact } from '../transact.ts';

/** A link opens a short session: whoever finds an old mail on a shared machine finds it over. */
const linkSessionSeconds = 3600;

const voidLink = refused('link.void', 'This link opens nothing any more. Ask the shop for a new one.');

/** Opens a session with the token of a link. Unknown, expired and revoked ones get the same answer. */
export async function enterByLink(services: Services, token: string): Promise<Outcome<SignedIn>> {
  const shop = await theShop(services);
  if (!shop.ok || !shop.value) return shop.ok ? voidLink : shop;
  const { shopId } = shop.value;
  const opened = shop.value;
  const sessionToken = services.ids.newToken();
  return transact(forShop(services.db, shopId), async (tx) => {
    const link = await findSignInLink(tx, shopId, tokenHash(token));
    const person = link && (await findPerson(tx, shopId, link.personId));
    if (!person) return voidLink;
    const { linkId, personId } = link;
    const lifetimeSeconds = linkSessionSeconds;
    await createSession(tx, {
      shopId,
      personId,
      linkId,
      lifetimeSeconds,
      tokenHash: tokenHash(sessionToken),
    });
    await appendAudit(tx, { shopId, personId, action: 'session.begin-by-link', subject: linkId, facts: {} });
    return done({ token: sessionToken, person, shop: opened });
  });
}

const unknownCustomer = (personId: string) =>
  refused('customer.unknown', `The shop has no customer ${personId}.`);

/** Every link of a customer is void from now on, with the sessions begun by one. A customer does it for himself. */
export async function revokeLinks(ctx: Ctx, personId: string): Promise<Outcome<null>> {
  const refusal = authorise(ctx, 'links.revoke');
  if (refusal) return refusal;
  const { shopId, role } = ctx.actor;
  if (role === 'customer' && personId !== ctx.actor.personId) return unknownCustomer(personId);
  return transact(ctx.db, async (tx) => {
    const person = await findPerson(tx, shopId, personId);
    if (person?.role !== 'customer') return unknownCustomer(personId);
    const revoked = await revokeSignInLinks(tx, shopId, personId);
    const facts = { revoked };
    await appendAudit(tx, {
      shopId,
      personId: ctx.actor.personId,
      action: 'link.revoke',
      subject: personId,
      facts,
    });
    return done(null);
  });
}

/**
 * Gives the signed-in person a password of its own choice, or a new one. Every other session of hers ends: whoever knew
 * the old one is out (OWASP ASVS 5.0.0, 7.4.3).
 * @param token of the session that goes on
 */
export async function choosePassword(ctx: Ctx, password: string, token: string): Promise<Outcome<null>> {
  const { shopId, personId } = ctx.actor;
  if (personId === null) return refused('session.required', 'Sign in first, then try again.');
  const hash = await ctx.passwords.hash(password);
  return transact(ctx.db, async (tx) => {
    await setPassword(tx, shopId, personId, hash);
    const ended = await endOtherSessions(tx, { shopId, personId, keepTokenHash: tokenHash(token) });
    await appendAudit(tx, {
      shopId,
      personId,
      action: 'password.choose',
      subject: personId,
      facts: { ended },
    });
    return done(null);
  });
}

/** Sets the language of the mails that the signed-in person gets. */
export async function chooseLanguage(ctx: Ctx, language: 'en' | 'es'): Promise<Outcome<null>> {
  const { shopId, personId } = ctx.actor;
  if (personId === null) return refused('session.required', 'Sign in first, then try again.');
  return transact(ctx.db, async (tx) => {
    await setLanguage(tx, shopId, personId, language);
    return done(null);
  });
}
