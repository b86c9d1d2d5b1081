import {
  chosenLanguageShape,
  linkTokenShape,
  newcomerShape,
  newPasswordShape,
  sessionShape,
  shopRulesShape,
} from '@flitchbook/contracts';
import { createRoute, OpenAPIHono, z } from '@hono/zod-openapi';
import { refused } from '../../refusals.ts';
import { chooseLanguage, choosePassword, enterByLink, revokeLinks } from '../../services/customers/enter.ts';
import { sendOrderLink, welcome } from '../../services/customers/send-link.ts';
import { changeRules, readRules } from '../../services/shops/rules.ts';
import { forAnyRole, forVerb, open } from '../gate.ts';
import type { HttpEnv } from '../http-env.ts';
import { orProblem, Problem } from '../problem.ts';
import { refuseShape } from '../refuse-shape.ts';
import { gated, jsonAnswer, jsonBody, orderParam, refusing, withBody } from '../route-parts.ts';
import { sessionOnWire } from './session.ts';

const tags = ['customers'];
const session = sessionShape.meta({ id: 'Session' });
const rules = shopRulesShape.meta({ id: 'ShopRules' });
const personParam = z.object({ personId: z.uuid() });

const come = createRoute({
  method: 'post',
  path: '/api/customers',
  operationId: 'customers.welcome',
  summary: 'Sends a link to an address. Says the same whether or not the address is known.',
  tags,
  ...open,
  request: { body: jsonBody(newcomerShape.meta({ id: 'Newcomer' })) },
  responses: {
    202: { description: 'A mail is on its way, if one may be sent there.' },
    ...refusing(...withBody, 'request.too-many', 'server.busy', 'server.fault'),
  },
});

const enter = createRoute({
  method: 'post',
  path: '/api/link-sessions',
  operationId: 'customers.enter',
  summary: 'Signs in with the token of a link: for an hour.',
  tags,
  ...open,
  request: { body: jsonBody(linkTokenShape.meta({ id: 'LinkToken' })) },
  responses: {
    200: jsonAnswer(session, 'Who is signed in, and for which shop.'),
    ...refusing(...withBody, 'link.void', 'request.too-many', 'server.busy', 'server.fault'),
  },
});

const sendLink = createRoute({
  method: 'post',
  path: '/api/orders/{orderId}/link',
  operationId: 'links.send',
  summary: 'Sends the customer of an order a fresh link to it.',
  tags,
  ...forVerb('links.send'),
  request: { params: orderParam },
  responses: {
    202: { description: 'A mail is on its way.' },
    ...refusing(...gated, 'request.not-found', 'request.cross-site', 'order.unknown'),
  },
});

const revoke = createRoute({
  method: 'delete',
  path: '/api/customers/{personId}/links',
  operationId: 'links.revoke',
  summary: 'Makes every link of a customer void and ends what was begun by one.',
  tags,
  ...forVerb('links.revoke'),
  request: { params: personParam },
  responses: {
    204: { description: 'No link of that customer opens anything any more.' },
    ...refusing(...gated, 'request.not-found', 'request.cross-site', 'customer.unknown'),
  },
});

const password = createRoute({
  method: 'put',
  path: '/api/my/password',
  operationId: 'customers.choose-password',
  summary: 'Sets the password of whoever is signed in, and ends every other session of theirs.',
  tags,
  ...forAnyRole,
  request: { body: jsonBody(newPasswordShape.meta({ id: 'NewPassword' })) },
  responses: {
    204: { description: 'Set.' },
    ...refusing(...withBody, 'session.required', 'server.busy', 'server.fault'),
  },
});

const language = createRoute({
  method: 'put',
  path: '/api/my/language',
  operationId: 'customers.choose-language',
  summary: 'Sets the language of the mails that whoever is signed in gets.',
  tags,
  ...forAnyRole,
  request: { body: jsonBody(chosenLanguageShape.meta({ id: 'ChosenLanguage' })) },
  responses: {
    204: { description: 'Set.' },
    ...refusing(...withBody, 'session.required', 'server.busy', 'server.fault'),
  },
});

const readRulesRoute = createRoute({
  method: 'get',
  path: '/api/rules',
  operationId: 'rules.read',
  summary: 'How the shop deals with its customers.',
  tags,
  ...forVerb('rules.read'),
  responses: { 200: jsonAnswer(rules, 'The rules.'), ...refusing(...gated) },
});

const setRules = createRoute({
  method: 'put',
  path: '/api/rules',
  operationId: 'rules.set',
  summary: 'Replaces the rules whole. What is held already keeps its terms.',
  tags,
  ...forVerb('rules.set'),
  request: { body: jsonBody(rules) },
  responses: { 200: jsonAnswer(rules, 'The rules as they are now.'), ...refusing(...gated, ...withBody) },
});

const tooMany = (seconds: number): Problem =>
  new Problem(
    refused('request.too-many', `Too many tries. Wait ${Math.ceil(seconds / 60)} min, then try again.`, {
      retryAfterSeconds: seconds,
    }),
  );

export const customerRoutes = new OpenAPIHono<HttpEnv>({ defaultHook: refuseShape })
  .openapi(come, async (c) => {
    const { linkLimits, networkOf } = c.get('transport');
    const newcomer = c.req.valid('json');
    const wait = Math.max(
      linkLimits.network.take(networkOf(c)),
      linkLimits.address.take(newcomer.email.toLowerCase()),
    );
    if (wait > 0) throw tooMany(wait);
    orProblem(await welcome(c.get('services'), newcomer));
    return c.body(null, 202);
  })
  .openapi(enter, async (c) => {
    const { cookie, linkLimits, networkOf } = c.get('transport');
    const wait = linkLimits.token.take(networkOf(c));
    if (wait > 0) throw tooMany(wait);
    const { token, ...opened } = orProblem(await enterByLink(c.get('services'), c.req.valid('json').token));
    cookie.set(c, token);
    return c.json(sessionOnWire(opened), 200);
  })
  .openapi(sendLink, async (c) => {
    orProblem(await sendOrderLink(c.get('ctx'), c.req.valid('param').orderId));
    return c.body(null, 202);
  })
  .openapi(revoke, async (c) => {
    orProblem(await revokeLinks(c.get('ctx'), c.req.valid('param').personId));
    return c.body(null, 204);
  })
  .openapi(password, async (c) => {
    const token = c.get('transport').cookie.read(c) ?? '';
    orProblem(await choosePassword(c.get('ctx'), c.req.valid('json').password, token));
    return c.body(null, 204);
  })
  .openapi(language, async (c) => {
    orProblem(await chooseLanguage(c.get('ctx'), c.req.valid('json').language));
    return c.body(null, 204);
  })
  .openapi(readRulesRoute, async (c) => c.json(orProblem(await readRules(c.get('ctx'))), 200))
  .openapi(setRules, async (c) =>
    c.json(orProblem(await changeRules(c.get('ctx'), c.req.valid('json'))), 200),
  );
