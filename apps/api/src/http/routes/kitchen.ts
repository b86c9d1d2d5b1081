import {
  batchesShape,
  batchShape,
  newBatchShape,
  poolConsentShape,
  trimPoolShape,
} from '@flitchbook/contracts';
import { createRoute, OpenAPIHono } from '@hono/zod-openapi';
import { listBatches, makeBatch } from '../../services/kitchen/batches.ts';
import { sayPoolConsent } from '../../services/kitchen/consent.ts';
import { readTrimPool } from '../../services/kitchen/trim.ts';
import { answerOnce, idempotencyHeader, onceKey } from '../edit-headers.ts';
import { forVerb } from '../gate.ts';
import type { HttpEnv } from '../http-env.ts';
import { orProblem } from '../problem.ts';
import { refuseShape } from '../refuse-shape.ts';
import {
  gated,
  jsonAnswer,
  jsonBody,
  orderParam,
  refusing,
  replayHeader,
  withBody,
  withKey,
} from '../route-parts.ts';

const tags = ['kitchen'];

const trim = createRoute({
  method: 'get',
  path: '/api/kitchen/trim',
  operationId: 'kitchen.trim',
  summary: 'Trim and fat in the house, by pack and by kind, less what batches took.',
  tags,
  ...forVerb('kitchen.read'),
  responses: {
    200: jsonAnswer(trimPoolShape.meta({ id: 'TrimPool' }), 'The oldest first.'),
    ...refusing(...gated),
  },
});

const consent = createRoute({
  method: 'put',
  path: '/api/orders/{orderId}/pool-consent',
  operationId: 'kitchen.consent',
  summary: 'Whether the owner of an order lets his trim be ground with that of others who agreed.',
  tags,
  ...forVerb('kitchen.consent'),
  request: { params: orderParam, body: jsonBody(poolConsentShape.meta({ id: 'PoolConsent' })) },
  responses: {
    204: { description: 'Written down.' },
    ...refusing(...gated, ...withBody, 'request.not-found', 'order.unknown'),
  },
});

const list = createRoute({
  method: 'get',
  path: '/api/kitchen/batches',
  operationId: 'kitchen.batches',
  summary: 'What was ground, cured and rendered, with what each label says.',
  tags,
  ...forVerb('kitchen.read'),
  responses: {
    200: jsonAnswer(batchesShape.meta({ id: 'Batches' }), 'The latest first.'),
    ...refusing(...gated),
  },
});

const makePath = '/api/kitchen/batches';
const make = createRoute({
  method: 'post',
  path: makePath,
  operationId: 'kitchen.make',
  summary: 'Keeps a batch of sausage, lard or cure with what it took of which packs.',
  tags,
  ...forVerb('kitchen.make'),
  request: { headers: idempotencyHeader, body: jsonBody(newBatchShape.meta({ id: 'NewBatch' })) },
  responses: {
    201: { ...jsonAnswer(batchShape.meta({ id: 'Batch' }), 'The batch.'), headers: replayHeader },
    ...refusing(...gated, ...withBody, ...withKey, 'batch.invalid', 'batch.over-limit', 'batch.taken'),
  },
});

export const kitchenRoutes = new OpenAPIHono<HttpEnv>({ defaultHook: refuseShape })
  .openapi(trim, async (c) => c.json(orProblem(await readTrimPool(c.get('ctx'))), 200))
  .openapi(consent, async (c) => {
    const { orderId } = c.req.valid('param');
    orProblem(await sayPoolConsent(c.get('ctx'), orderId, c.req.valid('json').mayPool));
    return c.body(null, 204);
  })
  .openapi(list, async (c) => c.json({ batches: orProblem(await listBatches(c.get('ctx'))) }, 200))
  .openapi(make, async (c) => {
    const input = c.req.valid('json');
    const key = onceKey(c, `POST ${makePath}`, { body: input }, 201);
    return c.json(answerOnce(c, orProblem(await makeBatch(c.get('ctx'), input, key))), 201);
  });
