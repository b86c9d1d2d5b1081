import { splitAdviceShape, splitQuestionShape } from '@flitchbook/contracts';
import { createRoute, OpenAPIHono } from '@hono/zod-openapi';
import { adviseSplit } from '../../services/advice/split.ts';
import { forVerb } from '../gate.ts';
import type { HttpEnv } from '../http-env.ts';
import { orProblem } from '../problem.ts';
import { refuseShape } from '../refuse-shape.ts';
import { dayParam, gated, jsonAnswer, jsonBody, refusing, withBody } from '../route-parts.ts';

const split = createRoute({
  method: 'post',
  path: '/api/days/{dayId}/split-advice',
  operationId: 'advice.split',
  summary: 'Every way to break one part of a side, each planned to its best, side by side. Stores nothing.',
  tags: ['advice'],
  ...forVerb('advice.split'),
  request: { params: dayParam, body: jsonBody(splitQuestionShape.meta({ id: 'SplitQuestion' })) },
  responses: {
    200: jsonAnswer(splitAdviceShape.meta({ id: 'SplitAdvice' }), 'The ways, best first.'),
    ...refusing(
      ...gated,
      ...withBody,
      'request.not-found',
      'day.unknown',
      'plan.missing',
      'plan.queue-full',
      'plan.failed',
      'advice.invalid',
    ),
  },
});

export const adviceRoutes = new OpenAPIHono<HttpEnv>({ defaultHook: refuseShape }).openapi(
  split,
  async (c) => {
    const { dayId } = c.req.valid('param');
    return c.json(orProblem(await adviseSplit(c.get('ctx'), dayId, c.req.valid('json'))), 200);
  },
);
