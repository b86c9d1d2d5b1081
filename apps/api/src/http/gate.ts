import { createMiddleware } from 'hono/factory';
import { refused } from '../refusals.ts';
import { actAs } from '../services/ctx.ts';
import { authorise, mayDo, type Verb } from '../services/roles.ts';
import { readSession } from '../services/sessions/read.ts';
import type { HttpEnv } from './http-env.ts';
import { orProblem, Problem } from './problem.ts';

/** Finds the session, or answers 401. The person's role is read anew each time, so a change counts at once. */
const signedIn = createMiddleware<HttpEnv>(async (c, next) => {
  const services = c.get('services');
  const token = c.get('transport').cookie.read(c);
  const session = token === undefined ? undefined : orProblem(await readSession(services, token));
  if (!session) throw new Problem(refused('session.required', 'Sign in first, then try again.'));
  const { shopId, personId, role } = session.person;
  c.set('session', session);
  c.set('ctx', actAs(services, { shopId, personId, role }));
  await next();
});

const allowed = (verb: Verb) =>
  createMiddleware<HttpEnv>(async (c, next) => {
    const refusal = authorise(c.get('ctx'), verb);
    if (refusal) throw new Problem(refusal);
    await next();
  });

/** For everyone, signed in or not. */
export const open = { 'x-roles': ['everyone'] };

/** For whoever is signed in. */
export const forAnyRole = {
  middleware: [signedIn],
  'x-roles': ['customer', 'counter', 'butcher', 'owner'],
};

/** Before anything of a request is read: who asks, and may they. The verb asks again. */
export const forVerb = (verb: Verb) => ({
  middleware: [signedIn, allowed(verb)],
  'x-roles': [...mayDo[verb]],
});
