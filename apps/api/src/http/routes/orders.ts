import { newOrderShape, orderShape, ordersShape } from '@flitchbook/contracts';
import { createRoute, OpenAPIHono } from '@hono/zod-openapi';
import { cancelTaken } from '../../services/orders/cancel.ts';
import { listDayOrders } from '../../services/orders/list.ts';
import { takeOrder } from '../../services/orders/take.ts';
import {
  answerOnce,
  idempotencyHeader,
  ifMatchHeader,
  ifVersion,
  onceKey,
  versionETag,
} from '../edit-headers.ts';
import { forVerb } from '../gate.ts';
import type { HttpEnv } from '../http-env.ts';
import { orProblem } from '../problem.ts';
import { refuseShape } from '../refuse-shape.ts';
import {
  dayParam,
  gated,
  jsonAnswer,
  jsonBody,
  orderParam,
  refusing,
  replayHeader,
  taggedAnswer,
  withBody,
  withKey,
  withVersion,
} from '../route-parts.ts';

const path = '/api/days/{dayId}/orders';
const tags = ['orders'];
const order = orderShape.meta({ id: 'Order' });

const list = createRoute({
  method: 'get',
  path,
  operationId: 'orders.list',
  summary: 'The orders of a day, cancelled ones too.',
  tags,
  ...forVerb('orders.list'),
  request: { params: dayParam },
  responses: {
    200: jsonAnswer(ordersShape.meta({ id: 'Orders' }), 'The orders, by number.'),
    ...refusing(...gated, 'request.not-found', 'day.unknown'),
  },
});

const take = createRoute({
  method: 'post',
  path,
  operationId: 'orders.take',
  summary: 'Takes an order.',
  description:
    'Once it is acknowledged it is kept, even where the day cannot fill it. The day is planned again afterwards; the board then says what is short and why.',
  tags,
  ...forVerb('orders.take'),
  request: {
    params: dayParam,
    headers: idempotencyHeader,
    body: jsonBody(newOrderShape.meta({ id: 'NewOrder' })),
  },
  responses: {
    201: { ...taggedAnswer(order, 'The order with its number.'), headers: replayHeader },
    ...refusing(
      ...gated,
      ...withBody,
      ...withKey,
      'request.not-found',
      'day.unknown',
      'day.closed',
      'order.already-taken',
      'order.invalid',
    ),
  },
});

const cancel = createRoute({
  method: 'delete',
  path: '/api/orders/{orderId}',
  operationId: 'orders.cancel',
  summary:
    'Cancels an order. It keeps its number; the day is planned again afterwards. Customers cancel their own.',
  tags,
  ...forVerb('orders.cancel'),
  request: { params: orderParam, headers: ifMatchHeader },
  responses: {
    200: taggedAnswer(order, 'The order, cancelled.'),
    ...refusing(
      ...gated,
      ...withVersion,
      'request.not-found',
      'order.unknown',
      'order.already-cancelled',
      'day.closed',
      'day.closed-to-customers',
    ),
  },
});

export const orderRoutes = new OpenAPIHono<HttpEnv>({ defaultHook: refuseShape })
  .openapi(list, async (c) =>
    c.json({ orders: orProblem(await listDayOrders(c.get('ctx'), c.req.valid('param').dayId)) }, 200),
  )
  .openapi(take, async (c) => {
    const { dayId } = c.req.valid('param');
    const input = c.req.valid('json');
    const key = onceKey(c, `POST ${path}`, { dayId, body: input }, 201);
    const taken = answerOnce(c, orProblem(await takeOrder(c.get('ctx'), dayId, input, key)));
    c.header('ETag', versionETag(taken.version));
    return c.json(taken, 201);
  })
  .openapi(cancel, async (c) => {
    const { orderId } = c.req.valid('param');
    const cancelled = orProblem(await cancelTaken(c.get('ctx'), { orderId, ifVersion: ifVersion(c) }));
    c.header('ETag', versionETag(cancelled.version));
    return c.json(cancelled, 200);
  });
