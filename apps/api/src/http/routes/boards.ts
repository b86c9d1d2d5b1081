import { boardShape, settledLocksShape, whatIfShape } from '@flitchbook/contracts';
import { createRoute, OpenAPIHono } from '@hono/zod-openapi';
import { readBoard } from '../../services/boards/read.ts';
import { settleLocks } from '../../services/locks/settle.ts';
import { makePlan } from '../../services/plans/make.ts';
import { tryLocks } from '../../services/plans/what-if.ts';
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
  refusing,
  replayHeader,
  taggedAnswer,
  withBody,
  withKey,
  withVersion,
} from '../route-parts.ts';

const tags = ['board'];
const board = boardShape.meta({ id: 'Board' });
const locks = settledLocksShape.meta({ id: 'SettledLocks' });
const planPath = '/api/days/{dayId}/plan';

const planned = ['plan.queue-full', 'plan.failed', 'plan.faulty'] as const;
const found = ['request.not-found', 'day.unknown'] as const;

const read = createRoute({
  method: 'get',
  path: '/api/days/{dayId}/board',
  operationId: 'boards.read',
  summary: 'The day with its animals, orders and plan.',
  description:
    'The plan is stale while plannedVersion is not version: the day has changed and is being planned again.',
  tags,
  ...forVerb('boards.read'),
  request: { params: dayParam },
  responses: { 200: taggedAnswer(board, 'The board.'), ...refusing(...gated, ...found) },
});

const settle = createRoute({
  method: 'put',
  path: '/api/days/{dayId}/locks',
  operationId: 'locks.settle',
  summary:
    'Settles choices: these locks and no others. The day is planned around them, and both are stored or neither.',
  tags,
  ...forVerb('locks.settle'),
  request: { params: dayParam, headers: ifMatchHeader, body: jsonBody(locks) },
  responses: {
    200: taggedAnswer(board, 'The board as it is now.'),
    ...refusing(...gated, ...withBody, ...withVersion, ...found, ...planned, 'day.closed', 'lock.invalid'),
  },
});

const plan = createRoute({
  method: 'post',
  path: planPath,
  operationId: 'plans.make',
  summary: 'Plans the day anew, whether or not it has a plan.',
  tags,
  ...forVerb('plans.make'),
  request: { params: dayParam, headers: idempotencyHeader },
  responses: {
    200: { ...taggedAnswer(board, 'The board as it is now.'), headers: replayHeader },
    ...refusing(
      ...gated,
      ...withKey,
      ...found,
      ...planned,
      'request.cross-site',
      'day.closed',
      'plan.overtaken',
    ),
  },
});

const whatIf = createRoute({
  method: 'post',
  path: '/api/days/{dayId}/what-if',
  operationId: 'plans.try',
  summary: 'What the day would come to with these locks. Stores nothing.',
  tags,
  ...forVerb('plans.try'),
  request: { params: dayParam, body: jsonBody(locks) },
  responses: {
    200: jsonAnswer(whatIfShape.meta({ id: 'WhatIf' }), 'The plan.'),
    ...refusing(...gated, ...withBody, ...found, ...planned, 'lock.invalid'),
  },
});

export const boardRoutes = new OpenAPIHono<HttpEnv>({ defaultHook: refuseShape })
  .openapi(read, async (c) => {
    const shown = orProblem(await readBoard(c.get('ctx'), c.req.valid('param').dayId));
    c.header('ETag', versionETag(shown.day.version));
    return c.json(shown, 200);
  })
  .openapi(settle, async (c) => {
    const { dayId } = c.req.valid('param');
    const settling = { dayId, ifVersion: ifVersion(c), locks: c.req.valid('json').locks };
    const shown = orProblem(await settleLocks(c.get('ctx'), settling));
    c.header('ETag', versionETag(shown.day.version));
    return c.json(shown, 200);
  })
  .openapi(plan, async (c) => {
    const { dayId } = c.req.valid('param');
    const key = onceKey(c, `POST ${planPath}`, { dayId }, 200);
    const shown = answerOnce(c, orProblem(await makePlan(c.get('ctx'), dayId, key)));
    c.header('ETag', versionETag(shown.day.version));
    return c.json(shown, 200);
  })
  .openapi(whatIf, async (c) => {
    const { dayId } = c.req.valid('param');
    return c.json({ plan: orProblem(await tryLocks(c.get('ctx'), dayId, c.req.valid('json').locks)) }, 200);
  });
