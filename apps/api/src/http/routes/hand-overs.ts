import { handOverListShape, newHandOverShape, newPickUpShape, pickUpStepShape } from '@flitchbook/contracts';
import { createRoute, OpenAPIHono, z } from '@hono/zod-openapi';
import { handOver } from '../../services/hand-overs/give.ts';
import { agreePickUp, stepPickUp } from '../../services/hand-overs/pick-up.ts';
import { readHandOverList } from '../../services/hand-overs/read.ts';
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

const path = '/api/orders/{orderId}/hand-over';
const tags = ['hand-over'];
const checked = handOverListShape.meta({ id: 'HandOverList' });
const unread = ['request.not-found', 'order.unknown', 'day.unknown', 'plan.missing'] as const;

const read = createRoute({
  method: 'get',
  path,
  operationId: 'hand-overs.read',
  summary: 'The order against what is packed for it, line by line.',
  tags,
  ...forVerb('hand-overs.read'),
  request: { params: orderParam },
  responses: { 200: jsonAnswer(checked, 'The checklist.'), ...refusing(...gated, ...unread) },
});

const give = createRoute({
  method: 'post',
  path,
  operationId: 'hand-overs.give',
  summary: 'Packs leave with the order that they were packed for: all of them, or some now and some later.',
  tags,
  ...forVerb('hand-overs.give'),
  request: {
    params: orderParam,
    headers: idempotencyHeader,
    body: jsonBody(newHandOverShape.meta({ id: 'NewHandOver' })),
  },
  responses: {
    201: { ...jsonAnswer(checked, 'The checklist after it.'), headers: replayHeader },
    ...refusing(...gated, ...withBody, ...withKey, ...unread, 'hand-over.invalid', 'pack.gone'),
  },
});

const agree = createRoute({
  method: 'put',
  path: '/api/orders/{orderId}/pick-up',
  operationId: 'pick-ups.agree',
  summary: 'Agrees when and where an order is fetched, in the shop’s own clock.',
  tags,
  ...forVerb('pick-ups.choose'),
  request: {
    params: orderParam,
    query: z.object({
      version: z.coerce
        .number()
        .int()
        .min(0)
        .meta({ description: 'Of the pick-up that is changed; 0 where none was agreed.' }),
    }),
    body: jsonBody(newPickUpShape.meta({ id: 'NewPickUp' })),
  },
  responses: {
    200: jsonAnswer(checked, 'The checklist with its pick-up.'),
    ...refusing(...gated, ...withBody, ...unread, 'pick-up.invalid', 'edit.version-stale'),
  },
});

const step = createRoute({
  method: 'post',
  path: '/api/orders/{orderId}/pick-up/steps',
  operationId: 'pick-ups.step',
  summary: 'Takes the next step with goods that nobody fetched, once it is due. Each is taken once.',
  tags,
  ...forVerb('pick-ups.set'),
  request: { params: orderParam, body: jsonBody(pickUpStepShape.meta({ id: 'PickUpStep' })) },
  responses: {
    200: jsonAnswer(checked, 'The checklist after it.'),
    ...refusing(...gated, ...withBody, ...unread, 'pick-up.missing', 'pick-up.not-due'),
  },
});

export const handOverRoutes = new OpenAPIHono<HttpEnv>({ defaultHook: refuseShape })
  .openapi(read, async (c) =>
    c.json(orProblem(await readHandOverList(c.get('ctx'), c.req.valid('param').orderId)), 200),
  )
  .openapi(give, async (c) => {
    const { orderId } = c.req.valid('param');
    const input = c.req.valid('json');
    const key = onceKey(c, `POST ${path}`, { orderId, body: input }, 201);
    return c.json(answerOnce(c, orProblem(await handOver(c.get('ctx'), orderId, input, key))), 201);
  })
  .openapi(agree, async (c) => {
    const { version } = c.req.valid('query');
    const agreed = await agreePickUp(
      c.get('ctx'),
      c.req.valid('param').orderId,
      c.req.valid('json'),
      version,
    );
    return c.json(orProblem(agreed), 200);
  })
  .openapi(step, async (c) =>
    c.json(
      orProblem(await stepPickUp(c.get('ctx'), c.req.valid('param').orderId, c.req.valid('json').step)),
      200,
    ),
  );
