import { closingShape, newClosingShape } from '@flitchbook/contracts';
import { createRoute, OpenAPIHono } from '@hono/zod-openapi';
import { closeAnimal } from '../../services/closings/close.ts';
import { readClosing } from '../../services/closings/read.ts';
import { answerOnce, idempotencyHeader, onceKey } from '../edit-headers.ts';
import { forVerb } from '../gate.ts';
import type { HttpEnv } from '../http-env.ts';
import { orProblem } from '../problem.ts';
import { refuseShape } from '../refuse-shape.ts';
import {
  animalParam,
  gated,
  jsonAnswer,
  jsonBody,
  refusing,
  replayHeader,
  withBody,
  withKey,
} from '../route-parts.ts';

const path = '/api/animals/{animalId}/closing';
const tags = ['closing'];
const closing = closingShape.meta({ id: 'Closing' });
const unread = ['request.not-found', 'animal.unknown', 'plan.missing'] as const;

const read = createRoute({
  method: 'get',
  path,
  operationId: 'closings.read',
  summary: 'Where an animal’s meat went, planned against packed, and what it brought.',
  tags,
  ...forVerb('closings.read'),
  request: { params: animalParam },
  responses: { 200: jsonAnswer(closing, 'The balance.'), ...refusing(...gated, ...unread) },
});

const close = createRoute({
  method: 'post',
  path,
  operationId: 'closings.close',
  summary: 'Closes an animal: in equals out to the gram. Its packs stand as they are from then on.',
  tags,
  ...forVerb('closings.close'),
  request: {
    params: animalParam,
    headers: idempotencyHeader,
    body: jsonBody(newClosingShape.meta({ id: 'NewClosing' })),
  },
  responses: {
    201: { ...jsonAnswer(closing, 'The closed animal.'), headers: replayHeader },
    ...refusing(...gated, ...withBody, ...withKey, ...unread, 'animal.closed', 'animal.unbalanced'),
  },
});

export const closingRoutes = new OpenAPIHono<HttpEnv>({ defaultHook: refuseShape })
  .openapi(read, async (c) =>
    c.json(orProblem(await readClosing(c.get('ctx'), c.req.valid('param').animalId)), 200),
  )
  .openapi(close, async (c) => {
    const { animalId } = c.req.valid('param');
    const input = c.req.valid('json');
    const key = onceKey(c, `POST ${path}`, { animalId, body: input }, 201);
    return c.json(answerOnce(c, orProblem(await closeAnimal(c.get('ctx'), animalId, input, key))), 201);
  });
