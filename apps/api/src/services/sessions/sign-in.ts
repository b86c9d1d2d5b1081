import { createHash } from 'node:crypto';
import {
  appendAudit,
  createSession,
  endSession,
  findSignIn,
  forShop,
  type Person,
  type Shop,
} from '@flitchbook/db';
import { done, type Outcome, type Refusal, refused } from '../../refusals.ts';
import type { Services } from '../ctx.ts';
import { HashingBusy } from '../passwords.ts';
import { theShop } from '../shops/the-shop.ts';
import { look, transact } from '../transact.ts';
import { TryCounter } from '../try-limits.ts';
import { tokenHash } from './token.ts';

export interface SignIn {
  readonly email: string;
  readonly password: string;
  /** the network that the request came from */
  readonly network: string;
  /** token of the session that the browser had before: it is over */
  readonly replaces: string | undefined;
}

export interface SignedIn {
  /** goes to the browser once and is stored nowhere */
  readonly token: string;
  readonly person: Person;
  readonly shop: Shop;
}

/** A working day and its overtime. */
export const sessionSeconds = 14 * 3600;

/** Tries of signing in: by account and network together, by account (OWASP ASVS 4.0.3, 2.2.1), and by network. */
export function createSignInLimits(nowMs: () => number) {
  return {
    accountHere: new TryCounter({ tries: 10, perSeconds: 15 * 60 }, nowMs),
    account: new TryCounter({ tries: 100, perSeconds: 3600 }, nowMs),
    network: new TryCounter({ tries: 100, perSeconds: 15 * 60 }, nowMs),
  };
}

export type SignInLimits = ReturnType<typeof createSignInLimits>;

// One text for every reason: nobody learns which addresses are known.
const wrong = refused('session.wrong-sign-in', 'E-mail address or password is wrong.');

function refuseTooMany(waitSeconds: number): Refusal {
  const minutes = Math.ceil(waitSeconds / 60);
  return refused('request.too-many', `Too many tries. Wait ${minutes} min, then try again.`, {
    retryAfterSeconds: waitSeconds,
  });
}

async function passwordMatches(
  services: Services,
  password: string,
  stored: string | null | undefined,
): Promise<Outcome<boolean>> {
  try {
    return done(await services.passwords.matches(password, stored ?? undefined));
  } catch (error) {
    if (!(error instanceof HashingBusy)) throw error;
    return refused('server.busy', 'Too many people are signing in. Try again in a moment.', {
      retryAfterSeconds: 2,
    });
  }
}

async function findAccount(services: Services, email: string) {
  const shop = await theShop(services);
  if (!shop.ok || !shop.value) return shop.ok ? done(undefined) : shop;
  const { value } = shop;
  return look(forShop(services.db, value.shopId), async (tx) => {
    const found = await findSignIn(tx, value.shopId, email);
    return done(found && { shop: value, ...found });
  });
}

/** Opens a session. An unknown address costs the same time and gives the same answer as a wrong password. */
export async function signIn(
  services: Services,
  limits: SignInLimits,
  input: SignIn,
): Promise<Outcome<SignedIn>> {
  const email = input.email.trim().toLowerCase();
  const account = createHash('sha256').update(email).digest('hex');
  const tries = [
    { counter: limits.network, key: input.network },
    { counter: limits.accountHere, key: `${account} ${input.network}` },
    { counter: limits.account, key: account },
  ];
  const waitSeconds = Math.max(...tries.map(({ counter, key }) => counter.take(key)));
  if (waitSeconds > 0) return refuseTooMany(waitSeconds);

  const found = await findAccount(services, email);
  if (!found.ok) return found;
  const matches = await passwordMatches(services, input.password, found.value?.passwordHash);
  if (!matches.ok) return matches;
  if (!matches.value || found.value === undefined) {
    services.log({ level: 'warning', event: 'sign-in-refused' });
    return wrong;
  }

  for (const { counter, key } of tries) counter.giveBack(key);
  const { person, shop } = found.value;
  const token = services.ids.newToken();
  return transact(forShop(services.db, shop.shopId), async (tx) => {
    const { shopId, personId } = person;
    if (input.replaces !== undefined) await endSession(tx, shopId, tokenHash(input.replaces));
    await createSession(tx, {
      shopId,
      personId,
      tokenHash: tokenHash(token),
      lifetimeSeconds: sessionSeconds,
    });
    await appendAudit(tx, { shopId, personId, action: 'session.begin', subject: personId, facts: {} });
    return done({ token, person, shop });
  });
}
