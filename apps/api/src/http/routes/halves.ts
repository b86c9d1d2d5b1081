import { dealsShape, halfAskedShape, halfPreviewShape } from '@flitchbook/contracts';
import { createRoute, OpenAPIHono } from '@hono/zod-openapi';
import { readDeals } from '../../services/halves/deal.ts';
import { previewHalves } from '../../services/halves/preview.ts';
import { forVerb } from '../gate.ts';
import type { HttpEnv } from '../http-env.ts';
import { orProblem } from '../problem.ts';
import { refuseShape } from '../refuse-shape.ts';
import { dayParam, gated, jsonAnswer, jsonBody, orderParam, refusing, withBody } from '../route-parts.ts';

const tags = ['halves'];

const preview = createRoute({
  method: 'post',
  path: '/api/days/{dayId}/half-previews',
  operationId: 'halves.preview',
  summary: 'What a half or a whole animal of the day would come to, cut as asked. Stores nothing.',
  tags,
  ...forVerb('halves.preview'),
  request: { params: dayParam, body: jsonBody(halfAskedShape.meta({ id: 'HalfAsked' })) },
  responses: {
    200: jsonAnswer(halfPreviewShape.meta({ id: 'HalfPreview' }), 'Primal by primal, and what goes home.'),
    ...refusing(
      ...gated,
      ...withBody,
      'request.not-found',
      'day.unknown',
      'day.closed',
      'day.closed-to-customers',
      'half.no-animal',
      'order.invalid',
    ),
  },
});

const deals = createRoute({
  method: 'get',
  path: '/api/orders/{orderId}/deals',
  operationId: 'deals.read',
  summary: 'Who gets which pieces of a half that two names share, by the plan as it stands.',
  tags,
  ...forVerb('deals.read'),
  request: { params: orderParam },
  responses: {
    200: jsonAnswer(dealsShape.meta({ id: 'Deals' }), 'One deal for each shared half.'),
    ...refusing(...gated, 'request.not-found', 'order.unknown', 'plan.missing'),
  },
});

export const halfRoutes = new OpenAPIHono<HttpEnv>({ defaultHook: refuseShape })
  .openapi(preview, async (c) => {
    const { dayId } = c.req.valid('param');
    return c.json(orProblem(await previewHalves(c.get('ctx'), dayId, c.req.valid('json'))), 200);
  })
  .openapi(deals, async (c) =>
    c.json(orProblem(await readDeals(c.get('ctx'), c.req.valid('param').orderId)), 200),
  );
