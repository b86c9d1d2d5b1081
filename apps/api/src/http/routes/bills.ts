import { newPaymentShape, orderAccountShape, settleShape } from '@flitchbook/contracts';
import { createRoute, OpenAPIHono } from '@hono/zod-openapi';
import { readOrderAccount } from '../../services/bills/read.ts';
import { settleOrder } from '../../services/bills/settle.ts';
import { takePayment } from '../../services/bills/take-payment.ts';
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

const tags = ['bills'];
const account = orderAccountShape.meta({ id: 'OrderAccount' });
const unread = ['request.not-found', 'order.unknown', 'day.unknown', 'plan.missing'] as const;

const read = createRoute({
  method: 'get',
  path: '/api/orders/{orderId}/account',
  operationId: 'accounts.read',
  summary: 'Where an order stands with the till: an estimate, a draft, or its bill and what moved.',
  tags,
  ...forVerb('accounts.read'),
  request: { params: orderParam },
  responses: { 200: jsonAnswer(account, 'The account.'), ...refusing(...gated, ...unread) },
});

const settlePath = '/api/orders/{orderId}/bill';
const settle = createRoute({
  method: 'post',
  path: settlePath,
  operationId: 'bills.settle',
  summary: 'Draws the one bill of an order, on what its packs weigh.',
  tags,
  ...forVerb('bills.settle'),
  request: {
    params: orderParam,
    headers: idempotencyHeader,
    body: jsonBody(settleShape.meta({ id: 'Settle' })),
  },
  responses: {
    201: { ...jsonAnswer(account, 'The account with its bill.'), headers: replayHeader },
    ...refusing(
      ...gated,
      ...withBody,
      ...withKey,
      ...unread,
      'bill.already-settled',
      'bill.too-early',
      'bill.invalid',
      'bill.needs-consent',
    ),
  },
});

const payPath = '/api/orders/{orderId}/payments';
const pay = createRoute({
  method: 'post',
  path: payPath,
  operationId: 'payments.take',
  summary: 'Records money that moved, or a debt that is let go. No payment network is asked.',
  tags,
  ...forVerb('payments.take'),
  request: {
    params: orderParam,
    headers: idempotencyHeader,
    body: jsonBody(newPaymentShape.meta({ id: 'NewPayment' })),
  },
  responses: {
    201: { ...jsonAnswer(account, 'The account after it.'), headers: replayHeader },
    ...refusing(...gated, ...withBody, ...withKey, ...unread, 'payment.invalid'),
  },
});

export const billRoutes = new OpenAPIHono<HttpEnv>({ defaultHook: refuseShape })
  .openapi(read, async (c) =>
    c.json(orProblem(await readOrderAccount(c.get('ctx'), c.req.valid('param').orderId)), 200),
  )
  .openapi(settle, async (c) => {
    const { orderId } = c.req.valid('param');
    const input = c.req.valid('json');
    const key = onceKey(c, `POST ${settlePath}`, { orderId, body: input }, 201);
    return c.json(answerOnce(c, orProblem(await settleOrder(c.get('ctx'), orderId, input, key))), 201);
  })
  .openapi(pay, async (c) => {
    const { orderId } = c.req.valid('param');
    const input = c.req.valid('json');
    const key = onceKey(c, `POST ${payPath}`, { orderId, body: input }, 201);
    return c.json(answerOnce(c, orProblem(await takePayment(c.get('ctx'), orderId, input, key))), 201);
  });
