import { dayPacksShape, newPackShape, packShape } from '@flitchbook/contracts';
import { createRoute, OpenAPIHono } from '@hono/zod-openapi';
import { listDayPacks } from '../../services/packs/list.ts';
import { undoWeighed } from '../../services/packs/undo.ts';
import { weighPack } from '../../services/packs/weigh.ts';
import { answerOnce, idempotencyHeader, onceKey } from '../edit-headers.ts';
import { forVerb } from '../gate.ts';
import type { HttpEnv } from '../http-env.ts';
import { orProblem } from '../problem.ts';
import { refuseShape } from '../refuse-shape.ts';
import {
  dayParam,
  gated,
  jsonAnswer,
  jsonBody,
  packParam,
  refusing,
  replayHeader,
  withBody,
  withKey,
} from '../route-parts.ts';

const path = '/api/days/{dayId}/packs';
const tags = ['packs'];
const pack = packShape.meta({ id: 'Pack' });

const list = createRoute({
  method: 'get',
  path,
  operationId: 'packs.list',
  summary: 'What is left to weigh of a day, and what is weighed.',
  tags,
  ...forVerb('packs.list'),
  request: { params: dayParam },
  responses: {
    200: jsonAnswer(dayPacksShape.meta({ id: 'DayPacks' }), 'Packs to make and packs made.'),
    ...refusing(...gated, 'request.not-found', 'day.unknown', 'plan.missing'),
  },
});

const weigh = createRoute({
  method: 'post',
  path,
  operationId: 'packs.weigh',
  summary: 'Weighs a pack that the plan foresees.',
  description:
    'It gets its serial, its price and its lot. The first pack of a day ends the taking of orders on it.',
  tags,
  ...forVerb('packs.weigh'),
  request: {
    params: dayParam,
    headers: idempotencyHeader,
    body: jsonBody(newPackShape.meta({ id: 'NewPack' })),
  },
  responses: {
    201: { ...jsonAnswer(pack, 'The pack.'), headers: replayHeader },
    ...refusing(
      ...gated,
      ...withBody,
      ...withKey,
      'request.not-found',
      'day.unknown',
      'plan.missing',
      'pack.plan-stale',
      'pack.unknown',
      'pack.already-made',
      'pack.invalid',
      'pack.not-for-sale',
      'animal.closed',
    ),
  },
});

const undo = createRoute({
  method: 'delete',
  path: '/api/packs/{packId}',
  operationId: 'packs.undo',
  summary: 'Opens a pack again: its pieces may be packed anew, under a new serial.',
  tags,
  ...forVerb('packs.undo'),
  request: { params: packParam },
  responses: {
    200: jsonAnswer(pack, 'The pack as it was.'),
    ...refusing(
      ...gated,
      'request.cross-site',
      'request.not-found',
      'pack.unknown',
      'pack.gone',
      'pack.billed',
      'animal.closed',
    ),
  },
});

export const packRoutes = new OpenAPIHono<HttpEnv>({ defaultHook: refuseShape })
  .openapi(list, async (c) =>
    c.json(orProblem(await listDayPacks(c.get('ctx'), c.req.valid('param').dayId)), 200),
  )
  .openapi(weigh, async (c) => {
    const { dayId } = c.req.valid('param');
    const input = c.req.valid('json');
    const key = onceKey(c, `POST ${path}`, { dayId, body: input }, 201);
    return c.json(answerOnce(c, orProblem(await weighPack(c.get('ctx'), dayId, input, key))), 201);
  })
  .openapi(undo, async (c) =>
    c.json(orProblem(await undoWeighed(c.get('ctx'), c.req.valid('param').packId)), 200),
  );
