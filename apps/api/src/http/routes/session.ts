import { demoSignInsShape, sessionShape, signInShape } from '@flitchbook/contracts';
import { createRoute, OpenAPIHono } from '@hono/zod-openapi';
import { refused } from '../../refusals.ts';
import type { Session } from '../../services/sessions/read.ts';
import { signIn } from '../../services/sessions/sign-in.ts';
import { signOut } from '../../services/sessions/sign-out.ts';
import { forAnyRole, open } from '../gate.ts';
import type { HttpEnv } from '../http-env.ts';
import { orProblem, Problem } from '../problem.ts';
import { refuseShape } from '../refuse-shape.ts';
import { jsonAnswer, jsonBody, refusing, withBody } from '../route-parts.ts';

const session = sessionShape.meta({ id: 'Session' });

/** Who is signed in, as callers see it. */
export const sessionOnWire = ({ person, shop }: Session) => ({
  person: { personId: person.personId, name: person.name, role: person.role },
  shop,
});

const tags = ['session'];
const path = '/api/session';

const begin = createRoute({
  method: 'post',
  path,
  operationId: 'session.begin',
  summary: 'Signs in. The session is a cookie that scripts cannot read.',
  tags,
  ...open,
  request: { body: jsonBody(signInShape.meta({ id: 'SignIn' })) },
  responses: {
    200: jsonAnswer(session, 'Who is signed in, and for which shop.'),
    ...refusing(...withBody, 'session.wrong-sign-in', 'request.too-many', 'server.busy', 'server.fault'),
  },
});

const read = createRoute({
  method: 'get',
  path,
  operationId: 'session.read',
  summary: 'Who is signed in.',
  tags,
  ...forAnyRole,
  responses: {
    200: jsonAnswer(session, 'Who is signed in, and for which shop.'),
    ...refusing('session.required', 'server.busy', 'server.fault'),
  },
});

const end = createRoute({
  method: 'delete',
  path,
  operationId: 'session.end',
  summary: 'Signs out: the session is over on the server too.',
  tags,
  ...forAnyRole,
  responses: {
    204: { description: 'Signed out.' },
    ...refusing('session.required', 'request.cross-site', 'server.busy', 'server.fault'),
  },
});

const demo = createRoute({
  method: 'get',
  path: '/api/demo-sign-ins',
  operationId: 'session.demo',
  summary: 'Who can sign in to the invented shop. Only where the service listens to this machine alone.',
  tags,
  ...open,
  responses: {
    200: jsonAnswer(demoSignInsShape.meta({ id: 'DemoSignIns' }), 'The people of the invented shop.'),
    ...refusing('request.not-found'),
  },
});

export const sessionRoutes = new OpenAPIHono<HttpEnv>({ defaultHook: refuseShape })
  .openapi(begin, async (c) => {
    const { cookie, signInLimits, networkOf } = c.get('transport');
    const input = { ...c.req.valid('json'), network: networkOf(c), replaces: cookie.read(c) };
    const { token, ...opened } = orProblem(await signIn(c.get('services'), signInLimits, input));
    cookie.set(c, token);
    return c.json(sessionOnWire(opened), 200);
  })
  .openapi(read, (c) => {
    const found = c.get('session');
    if (!found) throw new Problem(refused('session.required', 'Sign in first, then try again.'));
    return c.json(sessionOnWire(found), 200);
  })
  .openapi(end, async (c) => {
    const { cookie } = c.get('transport');
    orProblem(await signOut(c.get('ctx'), cookie.read(c) ?? ''));
    cookie.clear(c);
    return c.body(null, 204);
  })
  .openapi(demo, (c) => {
    const { demoSignIns } = c.get('transport');
    if (demoSignIns.length === 0)
      throw new Problem(refused('request.not-found', 'There is no invented shop here.'));
    return c.json({ signIns: [...demoSignIns] }, 200);
  });
