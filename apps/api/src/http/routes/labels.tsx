/** @jsxImportSource hono/jsx */
import { labelRunShape, newLabelRunShape, printedShape } from '@flitchbook/contracts';
import { createRoute, OpenAPIHono, z } from '@hono/zod-openapi';
import { faceMeasure } from '../../print/labels/face.ts';
import { labelPng } from '../../print/labels/label-png.ts';
import { LabelsPage, labelsStyle } from '../../print/labels/labels-page.tsx';
import { labelsPdf } from '../../print/labels/labels-pdf.ts';
import { confirmRun, drawOne, drawRun, readRun, startRun } from '../../services/labels/runs.ts';
import { answerOnce, idempotencyHeader, onceKey } from '../edit-headers.ts';
import { forVerb } from '../gate.ts';
import { htmlPage } from '../html-page.ts';
import type { HttpEnv } from '../http-env.ts';
import { orProblem } from '../problem.ts';
import { refuseShape } from '../refuse-shape.ts';
import {
  gated,
  jsonAnswer,
  jsonBody,
  packParam,
  refusing,
  replayHeader,
  withBody,
  withKey,
} from '../route-parts.ts';

const path = '/api/label-runs';
const tags = ['labels'];
const runParam = z.object({ runId: z.uuid() });
const which = z.object({
  all: z.enum(['yes']).optional().meta({ description: 'Those too that are said to have come out.' }),
  skip: z.coerce
    .number()
    .int()
    .min(0)
    .max(100)
    .default(0)
    .meta({ description: 'Places of the first sheet that are used up.' }),
});
const run = labelRunShape.meta({ id: 'LabelRun' });
const unread = refusing(
  ...gated,
  'request.not-found',
  'request.invalid',
  'label.run-unknown',
  'label.invalid',
  'pack.unknown',
);
const file = (type: string, description: string) => ({
  200: { description, content: { [type]: { schema: z.string() } } },
});

const start = createRoute({
  method: 'post',
  path,
  operationId: 'labels.start',
  summary:
    'Puts packs into a batch of labels. Their serials are the packs’ own: printing again makes no new ones.',
  tags,
  ...forVerb('labels.print'),
  request: { headers: idempotencyHeader, body: jsonBody(newLabelRunShape.meta({ id: 'NewLabelRun' })) },
  responses: {
    201: { ...jsonAnswer(run, 'The batch.'), headers: replayHeader },
    ...refusing(...gated, ...withBody, ...withKey, 'label.invalid'),
  },
});

const read = createRoute({
  method: 'get',
  path: `${path}/{runId}`,
  operationId: 'labels.read',
  summary: 'A batch, and which of its labels came out.',
  tags,
  ...forVerb('labels.print'),
  request: { params: runParam },
  responses: { 200: jsonAnswer(run, 'The batch.'), ...unread },
});

const printed = createRoute({
  method: 'post',
  path: `${path}/{runId}/printed`,
  operationId: 'labels.printed',
  summary: 'Says which labels came out: a printer that stopped half-way goes on where it was.',
  tags,
  ...forVerb('labels.print'),
  request: { params: runParam, body: jsonBody(printedShape.meta({ id: 'Printed' })) },
  responses: {
    200: jsonAnswer(run, 'The batch.'),
    ...refusing(...gated, ...withBody, 'request.not-found', 'label.run-unknown'),
  },
});

const pdf = createRoute({
  method: 'get',
  path: `${path}/{runId}/labels.pdf`,
  operationId: 'labels.pdf',
  summary: 'The labels that have not come out yet, on the shop’s stock.',
  tags,
  ...forVerb('labels.print'),
  request: { params: runParam, query: which },
  responses: { ...file('application/pdf', 'A page of the stock each.'), ...unread },
});

const page = createRoute({
  method: 'get',
  path: `${path}/{runId}/labels.html`,
  operationId: 'labels.page',
  summary: 'The same as a page to print from a browser.',
  tags,
  ...forVerb('labels.print'),
  request: { params: runParam, query: which },
  responses: { ...file('text/html', 'The page.'), ...unread },
});

const style = createRoute({
  method: 'get',
  path: `${path}/{runId}/labels.css`,
  operationId: 'labels.style',
  summary: 'Paper size of that page.',
  tags,
  ...forVerb('labels.print'),
  request: { params: runParam },
  responses: { ...file('text/css', 'The style sheet.'), ...unread },
});

const png = createRoute({
  method: 'get',
  path: '/api/packs/{packId}/label.png',
  operationId: 'labels.png',
  summary: 'One label as a picture.',
  tags,
  ...forVerb('labels.print'),
  request: { params: packParam },
  responses: { ...file('image/png', 'The picture.'), ...unread },
});

const measure = faceMeasure();

/** A fresh buffer that holds nothing else. */
const whole = (bytes: Uint8Array): ArrayBuffer => new Uint8Array(bytes).buffer;

export const labelRoutes = new OpenAPIHono<HttpEnv>({ defaultHook: refuseShape })
  .openapi(start, async (c) => {
    const { packIds, runId } = c.req.valid('json');
    const input = { packIds, ...(runId === undefined ? {} : { runId }) };
    const key = onceKey(c, `POST ${path}`, { body: input }, 201);
    return c.json(answerOnce(c, orProblem(await startRun(c.get('ctx'), input, key))), 201);
  })
  .openapi(read, async (c) => c.json(orProblem(await readRun(c.get('ctx'), c.req.valid('param').runId)), 200))
  .openapi(printed, async (c) =>
    c.json(
      orProblem(await confirmRun(c.get('ctx'), c.req.valid('param').runId, c.req.valid('json').packIds)),
      200,
    ),
  )
  .openapi(pdf, async (c) => {
    const { all, skip } = c.req.valid('query');
    const ctx = c.get('ctx');
    const { drawings, stock } = orProblem(
      await drawRun(ctx, c.req.valid('param').runId, { all: all === 'yes', measure }),
    );
    const bytes = await labelsPdf(drawings, stock, { skip, madeAt: ctx.clock() });
    return c.body(whole(bytes), 200, { 'Content-Type': 'application/pdf' }) as never;
  })
  .openapi(page, async (c) => {
    const { all, skip } = c.req.valid('query');
    const { runId } = c.req.valid('param');
    const { drawings, stock } = orProblem(
      await drawRun(c.get('ctx'), runId, { all: all === 'yes', measure }),
    );
    return (await htmlPage(
      c,
      <LabelsPage drawings={drawings} stock={stock} skip={skip} style={`${path}/${runId}/labels.css`} />,
    )) as never;
  })
  .openapi(style, async (c) => {
    const { stock } = orProblem(
      await drawRun(c.get('ctx'), c.req.valid('param').runId, { all: true, measure }),
    );
    return c.body(labelsStyle(stock), 200, { 'Content-Type': 'text/css; charset=utf-8' }) as never;
  })
  .openapi(png, async (c) => {
    const { drawings } = orProblem(await drawOne(c.get('ctx'), c.req.valid('param').packId, measure));
    const [drawing] = drawings;
    if (!drawing) throw new Error('a label was drawn and is not there');
    return c.body(whole(await labelPng(drawing)), 200, { 'Content-Type': 'image/png' }) as never;
  });
