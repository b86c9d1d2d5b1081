import {
  lastCallSetShape,
  lastCallShape,
  newHoldShape,
  offeredDaysShape,
  orderShape,
  ordersShape,
  quoteShape,
  shortagesShape,
} from '@flitchbook/contracts';
import { createRoute, OpenAPIHono } from '@hono/zod-openapi';
import { listOfferedDays } from '../../services/days/offered.ts';
import { setLastCall } from '../../services/days/set-last-call.ts';
import { listOwnOrders } from '../../services/orders/own.ts';
import { listShortages } from '../../services/plans/shortages.ts';
import { holdOrder } from '../../services/reservations/hold.ts';
import { quoteOrder } from '../../services/reservations/quote.ts';
import { releaseOrder } from '../../services/reservations/release.ts';
import { reserveOrder } from '../../services/reservations/reserve.ts';
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
import { shortageOnWire } from '../shortage-on-wire.ts';

const tags = ['reservations'];
const order = orderShape.meta({ id: 'Order' });
const newHold = newHoldShape.meta({ id: 'NewHold' });
const foundDay = ['request.not-found', 'day.unknown'] as const;
const foundOrder = ['request.not-found', 'order.unknown'] as const;
const planned = ['plan.queue-full', 'plan.failed', 'plan.undecided'] as const;
const asked = ['day.closed', 'day.closed-to-customers', 'order.invalid'] as const;
const onceTagged = (says: string) => ({ ...taggedAnswer(order, says), headers: replayHeader });

const quote = createRoute({
  method: 'post',
  path: '/api/days/{dayId}/quotes',
  operationId: 'reservations.quote',
  summary: 'What an order would come to, and whether the day has room for it. Stores nothing.',
  tags,
  ...forVerb('reservations.quote'),
  request: { params: dayParam, body: jsonBody(newHold) },
  responses: {
    200: jsonAnswer(quoteShape.meta({ id: 'Quote' }), 'The quote.'),
    ...refusing(...gated, ...withBody, ...foundDay, ...asked, ...planned),
  },
});

const holdPath = '/api/days/{dayId}/holds';
const hold = createRoute({
  method: 'post',
  path: holdPath,
  operationId: 'reservations.hold',
  summary: 'Holds a whole order for a while: every piece of it stands in the plan, or nothing is held.',
  description:
    'What the day cannot give beside what it has promised is refused with what it could, or waits in the queue where orQueue says so. Who waits longest and fits gets room that comes free.',
  tags,
  ...forVerb('reservations.hold'),
  request: { params: dayParam, headers: idempotencyHeader, body: jsonBody(newHold) },
  responses: {
    201: onceTagged('The order: held until heldUntil, or queued.'),
    ...refusing(
      ...gated,
      ...withBody,
      ...withKey,
      ...foundDay,
      ...asked,
      ...planned,
      'order.already-taken',
      'reservation.not-possible',
      'reservation.not-yours-to-hold',
      'reservation.contended',
    ),
  },
});

const reservePath = '/api/orders/{orderId}/reserve';
const reserve = createRoute({
  method: 'post',
  path: reservePath,
  operationId: 'reservations.reserve',
  summary: 'Makes a hold lasting, as long as the database says that it stands.',
  tags,
  ...forVerb('reservations.reserve'),
  request: { params: orderParam, headers: idempotencyHeader },
  responses: {
    200: onceTagged('The order, reserved: standing and assured.'),
    ...refusing(
      ...gated,
      ...withKey,
      ...foundOrder,
      'request.cross-site',
      'day.closed',
      'reservation.lapsed',
      'reservation.not-held',
    ),
  },
});

const releasePath = '/api/orders/{orderId}/release';
const release = createRoute({
  method: 'post',
  path: releasePath,
  operationId: 'reservations.release',
  summary: 'Gives a hold or a place in the queue back.',
  tags,
  ...forVerb('reservations.release'),
  request: { params: orderParam, headers: idempotencyHeader },
  responses: {
    200: onceTagged('The order, released.'),
    ...refusing(
      ...gated,
      ...withKey,
      ...foundOrder,
      'request.cross-site',
      'reservation.not-held',
      'reservation.contended',
    ),
  },
});

const own = createRoute({
  method: 'get',
  path: '/api/my/orders',
  operationId: 'orders.own',
  summary: 'The orders of whoever asks.',
  tags,
  ...forVerb('orders.own'),
  responses: { 200: jsonAnswer(ordersShape.meta({ id: 'Orders' }), 'By number.'), ...refusing(...gated) },
});

const offered = createRoute({
  method: 'get',
  path: '/api/my/days',
  operationId: 'days.offered',
  summary: 'Days that customers may ask for something of.',
  tags,
  ...forVerb('days.offered'),
  responses: {
    200: jsonAnswer(offeredDaysShape.meta({ id: 'OfferedDays' }), 'By date.'),
    ...refusing(...gated),
  },
});

const lastCall = createRoute({
  method: 'put',
  path: '/api/days/{dayId}/last-call',
  operationId: 'days.set-last-call',
  summary: 'Sets until when customers may ask for something of the day. Staff may until it is closed.',
  tags,
  ...forVerb('days.set-last-call'),
  request: {
    params: dayParam,
    headers: ifMatchHeader,
    body: jsonBody(lastCallShape.meta({ id: 'LastCall' })),
  },
  responses: {
    200: taggedAnswer(lastCallSetShape.meta({ id: 'LastCallSet' }), 'The day as it is now.'),
    ...refusing(...gated, ...withBody, ...withVersion, ...foundDay, 'day.closed'),
  },
});

const shortages = createRoute({
  method: 'get',
  path: '/api/days/{dayId}/shortages',
  operationId: 'shortages.list',
  summary:
    'Promises that could not be kept when the day was planned again, what was given up first coming first.',
  tags,
  ...forVerb('shortages.list'),
  request: { params: dayParam },
  responses: {
    200: jsonAnswer(shortagesShape.meta({ id: 'Shortages' }), 'The list.'),
    ...refusing(...gated, ...foundDay),
  },
});

export const reservationRoutes = new OpenAPIHono<HttpEnv>({ defaultHook: refuseShape })
  .openapi(quote, async (c) => {
    const { dayId } = c.req.valid('param');
    return c.json(orProblem(await quoteOrder(c.get('ctx'), dayId, c.req.valid('json'))), 200);
  })
  .openapi(hold, async (c) => {
    const { dayId } = c.req.valid('param');
    const input = c.req.valid('json');
    const key = onceKey(c, `POST ${holdPath}`, { dayId, body: input }, 201);
    const held = answerOnce(c, orProblem(await holdOrder(c.get('ctx'), { dayId, input, key })));
    c.header('ETag', versionETag(held.version));
    return c.json(held, 201);
  })
  .openapi(reserve, async (c) => {
    const { orderId } = c.req.valid('param');
    const key = onceKey(c, `POST ${reservePath}`, { orderId }, 200);
    const reserved = answerOnce(c, orProblem(await reserveOrder(c.get('ctx'), orderId, key)));
    c.header('ETag', versionETag(reserved.version));
    return c.json(reserved, 200);
  })
  .openapi(release, async (c) => {
    const { orderId } = c.req.valid('param');
    const key = onceKey(c, `POST ${releasePath}`, { orderId }, 200);
    const released = answerOnce(c, orProblem(await releaseOrder(c.get('ctx'), orderId, key)));
    c.header('ETag', versionETag(released.version));
    return c.json(released, 200);
  })
  .openapi(own, async (c) => c.json({ orders: orProblem(await listOwnOrders(c.get('ctx'))) }, 200))
  .openapi(offered, async (c) => c.json({ days: orProblem(await listOfferedDays(c.get('ctx'))) }, 200))
  .openapi(lastCall, async (c) => {
    const { dayId } = c.req.valid('param');
    const call = { dayId, ifVersion: ifVersion(c), ...c.req.valid('json') };
    const { version, customersUntil } = orProblem(await setLastCall(c.get('ctx'), call));
    c.header('ETag', versionETag(version));
    return c.json({ dayId, customersUntil, version }, 200);
  })
  .openapi(shortages, async (c) => {
    const listed = orProblem(await listShortages(c.get('ctx'), c.req.valid('param').dayId));
    return c.json({ shortages: listed.flatMap((entry) => shortageOnWire(entry) ?? []) }, 200);
  });
