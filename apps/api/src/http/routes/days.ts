import { daySummaryShape, daysShape, newDayShape } from '@flitchbook/contracts';
import { createRoute, OpenAPIHono } from '@hono/zod-openapi';
import { listCuttingDays } from '../../services/days/list.ts';
import { openDay } from '../../services/days/open.ts';
import { answerOnce, idempotencyHeader, onceKey } from '../edit-headers.ts';
import { forVerb } from '../gate.ts';
import type { HttpEnv } from '../http-env.ts';
import { orProblem } from '../problem.ts';
import { refuseShape } from '../refuse-shape.ts';
import { gated, jsonAnswer, jsonBody, refusing, replayHeader, withBody, withKey } from '../route-parts.ts';

const path = '/api/days';
const tags = ['days'];
const day = daySummaryShape.meta({ id: 'DaySummary' });

const list = createRoute({
  method: 'get',
  path,
  operationId: 'days.list',
  summary: 'The cutting days of the shop, by date.',
  tags,
  ...forVerb('days.list'),
  responses: { 200: jsonAnswer(daysShape.meta({ id: 'Days' }), 'The days.'), ...refusing(...gated) },
});

const openRoute = createRoute({
  method: 'post',
  path,
  operationId: 'days.open',
  summary: 'Opens a cutting day for orders.',
  tags,
  ...forVerb('days.open'),
  request: { headers: idempotencyHeader, body: jsonBody(newDayShape.meta({ id: 'NewDay' })) },
  responses: {
    201: { ...jsonAnswer(day, 'The day.'), headers: replayHeader },
    ...refusing(...gated, ...withBody, ...withKey, 'day.already-open'),
  },
});

export const dayRoutes = new OpenAPIHono<HttpEnv>({ defaultHook: refuseShape })
  .openapi(list, async (c) => c.json({ days: orProblem(await listCuttingDays(c.get('ctx'))) }, 200))
  .openapi(openRoute, async (c) => {
    const input = c.req.valid('json');
    const key = onceKey(c, `POST ${path}`, { body: input }, 201);
    return c.json(answerOnce(c, orProblem(await openDay(c.get('ctx'), input, key))), 201);
  });
