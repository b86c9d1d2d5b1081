import { partyShape } from '@flitchbook/contracts';
import { createRoute, OpenAPIHono, z } from '@hono/zod-openapi';
import { makeFeed, readFeed, revokeFeeds } from '../../services/exports/feeds.ts';
import { readInvoice } from '../../services/exports/invoice.ts';
import { billsTable, journalTable } from '../../services/exports/tables.ts';
import { forVerb, open } from '../gate.ts';
import type { HttpEnv } from '../http-env.ts';
import { orProblem } from '../problem.ts';
import { refuseShape } from '../refuse-shape.ts';
import { gated, jsonAnswer, jsonBody, orderParam, refusing, withBody } from '../route-parts.ts';

const tags = ['exports'];
const dates = z.object({ from: z.iso.date(), to: z.iso.date() });
const asText = (type: string, description: string) => ({
  description,
  content: { [type]: { schema: z.string() } },
});
const csvAnswer = asText('text/csv', 'Comma-separated, and nothing in it that a spreadsheet would run.');

const billsCsv = createRoute({
  method: 'get',
  path: '/api/exports/bills.csv',
  operationId: 'exports.bills',
  summary: 'Every line of the bills of some days.',
  tags,
  ...forVerb('exports.read'),
  request: { query: dates },
  responses: { 200: csvAnswer, ...refusing(...gated, 'request.invalid') },
});

const journalCsv = createRoute({
  method: 'get',
  path: '/api/exports/journal.csv',
  operationId: 'exports.journal',
  summary: 'Settled bills and moved money as double entries.',
  tags,
  ...forVerb('exports.read'),
  request: { query: dates },
  responses: { 200: csvAnswer, ...refusing(...gated, 'request.invalid') },
});

const short = z.string().max(200);
const invoice = createRoute({
  method: 'post',
  path: '/api/orders/{orderId}/invoice',
  operationId: 'exports.invoice',
  summary: 'The settled bill for a business customer, as a UBL 2.1 invoice.',
  tags,
  ...forVerb('accounts.read'),
  request: { params: orderParam, body: jsonBody(partyShape.meta({ id: 'InvoiceParty' })) },
  responses: {
    200: asText('application/xml', 'The invoice.'),
    ...refusing(...gated, ...withBody, 'request.not-found', 'order.unknown', 'bill.missing'),
  },
});

const feedPath = '/api/calendar-feeds';
const makeOne = createRoute({
  method: 'post',
  path: feedPath,
  operationId: 'feeds.make',
  summary: 'Makes the address of a calendar with the shop’s pick-ups. Whoever has it needs no sign-in.',
  tags,
  ...forVerb('feeds.make'),
  request: { body: jsonBody(z.strictObject({ name: short.min(1) }).meta({ id: 'NewFeed' })) },
  responses: {
    201: jsonAnswer(z.strictObject({ address: z.string() }), 'Shown this once.'),
    ...refusing(...gated, ...withBody),
  },
});

const revoke = createRoute({
  method: 'delete',
  path: feedPath,
  operationId: 'feeds.revoke',
  summary: 'Takes back every calendar address that you made.',
  tags,
  ...forVerb('feeds.make'),
  responses: {
    200: jsonAnswer(z.strictObject({ revoked: z.int() }), 'How many there were.'),
    ...refusing(...gated, 'request.cross-site'),
  },
});

const feed = createRoute({
  method: 'get',
  path: '/api/calendar/{shopId}/{file}',
  operationId: 'feeds.read',
  summary: 'Pick-ups as iCalendar.',
  tags,
  ...open,
  request: { params: z.object({ shopId: z.uuid(), file: z.string().regex(/^[\w-]{20,100}\.ics$/) }) },
  responses: { 200: asText('text/calendar', 'The feed.'), ...refusing('request.not-found', 'server.busy') },
});

const attached = (type: string, name: string) => ({
  'Content-Type': `${type}; charset=utf-8`,
  'Content-Disposition': `attachment; filename="${name}"`,
});

export const exportRoutes = new OpenAPIHono<HttpEnv>({ defaultHook: refuseShape })
  .openapi(
    billsCsv,
    async (c) =>
      c.body(
        orProblem(await billsTable(c.get('ctx'), c.req.valid('query'))),
        200,
        attached('text/csv', 'bills.csv'),
      ) as never,
  )
  .openapi(
    journalCsv,
    async (c) =>
      c.body(
        orProblem(await journalTable(c.get('ctx'), c.req.valid('query'))),
        200,
        attached('text/csv', 'journal.csv'),
      ) as never,
  )
  .openapi(invoice, async (c) => {
    const text = orProblem(
      await readInvoice(c.get('ctx'), c.req.valid('param').orderId, c.req.valid('json')),
    );
    return c.body(text, 200, attached('application/xml', 'invoice.xml')) as never;
  })
  .openapi(makeOne, async (c) =>
    c.json(orProblem(await makeFeed(c.get('ctx'), c.req.valid('json').name)), 201),
  )
  .openapi(revoke, async (c) => c.json(orProblem(await revokeFeeds(c.get('ctx'))), 200))
  .openapi(feed, async (c) => {
    const { shopId, file } = c.req.valid('param');
    const text = orProblem(await readFeed(c.get('services'), shopId, file.replace(/\.ics$/, '')));
    return c.body(text, 200, { 'Content-Type': 'text/calendar; charset=utf-8' }) as never;
  });
