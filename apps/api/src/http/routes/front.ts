import { comingShape, orderShape, promiseShape } from '@flitchbook/contracts';
import { createRoute, OpenAPIHono, z } from '@hono/zod-openapi';
import { compress } from 'hono/compress';
import { readComing } from '../../services/days/coming.ts';
import { readPickUpCalendar, readPromise } from '../../services/orders/promise.ts';
import { holdOrderLonger } from '../../services/reservations/hold-longer.ts';
import { answerOnce, idempotencyHeader, onceKey, versionETag } from '../edit-headers.ts';
import { forVerb, open } from '../gate.ts';
import type { HttpEnv } from '../http-env.ts';
import { orProblem } from '../problem.ts';
import { refuseShape } from '../refuse-shape.ts';
import {
  gated,
  jsonAnswer,
  orderParam,
  refusing,
  replayHeader,
  taggedAnswer,
  withKey,
} from '../route-parts.ts';

const tags = ['customers'];
const order = orderShape.meta({ id: 'Order' });

const coming = createRoute({
  method: 'get',
  path: '/api/coming',
  operationId: 'days.coming',
  summary: 'Cutting days that take orders from customers, with what is still free of each cut.',
  description:
    'What is free is what the plan of the moment has room for without moving anything: the first thing that a reservation is decided by. Kept until the day changes.',
  tags,
  ...open,
  // Long, the same for everyone, and nothing in it is a secret.
  middleware: [compress()],
  responses: {
    200: jsonAnswer(comingShape.meta({ id: 'Coming' }), 'By date.'),
    ...refusing('server.busy', 'server.fault'),
  },
});

const promise = createRoute({
  method: 'get',
  path: '/api/orders/{orderId}/promise',
  operationId: 'orders.promise',
  summary: 'What a customer was promised with an order, and what the scale has said since.',
  tags,
  ...forVerb('orders.promise'),
  request: { params: orderParam },
  responses: {
    200: taggedAnswer(promiseShape.meta({ id: 'OrderPromise' }), 'The order; its version is in the ETag.'),
    ...refusing(...gated, 'request.not-found', 'order.unknown'),
  },
});

const longerPath = '/api/orders/{orderId}/hold-longer';
const longer = createRoute({
  method: 'post',
  path: longerPath,
  operationId: 'reservations.hold-longer',
  summary: 'Gives a hold its full time anew, ten times at most; then the answer is the hold as it is.',
  tags,
  ...forVerb('reservations.hold-longer'),
  request: { params: orderParam, headers: idempotencyHeader },
  responses: {
    200: { ...taggedAnswer(order, 'The order, held until heldUntil.'), headers: replayHeader },
    ...refusing(
      ...gated,
      ...withKey,
      'request.not-found',
      'order.unknown',
      'request.cross-site',
      'day.closed',
      'reservation.lapsed',
      'reservation.not-held',
    ),
  },
});

const calendar = createRoute({
  method: 'get',
  path: '/api/orders/{orderId}/pick-up.ics',
  operationId: 'orders.calendar',
  summary: 'The pick-up of one’s own order as a calendar file.',
  tags,
  ...forVerb('orders.promise'),
  request: { params: orderParam },
  responses: {
    200: { description: 'RFC 5545.', content: { 'text/calendar': { schema: z.string() } } },
    ...refusing(...gated, 'request.not-found', 'order.unknown', 'pick-up.missing'),
  },
});

export const frontRoutes = new OpenAPIHono<HttpEnv>({ defaultHook: refuseShape })
  .openapi(coming, async (c) => c.json(orProblem(await readComing(c.get('services'))), 200))
  .openapi(promise, async (c) => {
    const promised = orProblem(await readPromise(c.get('ctx'), c.req.valid('param').orderId));
    c.header('ETag', versionETag(promised.order.version));
    return c.json(promised, 200);
  })
  .openapi(longer, async (c) => {
    const { orderId } = c.req.valid('param');
    const key = onceKey(c, `POST ${longerPath}`, { orderId }, 200);
    const held = answerOnce(c, orProblem(await holdOrderLonger(c.get('ctx'), orderId, key)));
    c.header('ETag', versionETag(held.version));
    return c.json(held, 200);
  })
  .openapi(calendar, async (c) => {
    const file = orProblem(await readPickUpCalendar(c.get('ctx'), c.req.valid('param').orderId));
    return c.body(file, 200, {
      'Content-Type': 'text/calendar; charset=utf-8',
      'Content-Disposition': 'attachment; filename="pick-up.ics"',
    }) as never;
  });
