import { counterShape, newSaleShape, saleShape, traceShape } from '@flitchbook/contracts';
import { createRoute, OpenAPIHono, z } from '@hono/zod-openapi';
import { refused } from '../../refusals.ts';
import { readCounter } from '../../services/counter/read.ts';
import { sellOverCounter } from '../../services/counter/sell.ts';
import { readTrace } from '../../services/traces/read.ts';
import { answerOnce, idempotencyHeader, onceKey } from '../edit-headers.ts';
import { forVerb } from '../gate.ts';
import type { HttpEnv } from '../http-env.ts';
import { orProblem, Problem } from '../problem.ts';
import { refuseShape } from '../refuse-shape.ts';
import { gated, jsonAnswer, jsonBody, refusing, replayHeader, withBody, withKey } from '../route-parts.ts';

const tags = ['counter'];

const read = createRoute({
  method: 'get',
  path: '/api/counter',
  operationId: 'counter.read',
  summary: 'Everything in the house, oldest first: what is free to sell, and what waits for somebody.',
  tags,
  ...forVerb('counter.read'),
  responses: { 200: jsonAnswer(counterShape.meta({ id: 'Counter' }), 'The packs.'), ...refusing(...gated) },
});

const salesPath = '/api/counter/sales';
const sell = createRoute({
  method: 'post',
  path: salesPath,
  operationId: 'counter.sell',
  summary: 'Sells packs that are free.',
  tags,
  ...forVerb('counter.sell'),
  request: { headers: idempotencyHeader, body: jsonBody(newSaleShape.meta({ id: 'NewSale' })) },
  responses: {
    201: { ...jsonAnswer(saleShape.meta({ id: 'Sale' }), 'The sale.'), headers: replayHeader },
    ...refusing(...gated, ...withBody, ...withKey, 'hand-over.invalid', 'pack.gone'),
  },
});

const traced = createRoute({
  method: 'get',
  path: '/api/trace',
  operationId: 'traces.read',
  summary:
    'One step back and one forward for a pack, a lot, an animal, or a farm’s animals: also the list of a recall.',
  tags: ['trace'],
  ...forVerb('traces.read'),
  request: {
    query: z.object({
      pack: z.uuid().optional(),
      serial: z.coerce.number().int().min(1).max(2_147_483_647).optional(),
      lot: z.string().min(1).max(20).optional(),
      animal: z.uuid().optional(),
      farm: z.uuid().optional(),
      from: z.iso.date().optional(),
      to: z.iso.date().optional(),
    }),
  },
  responses: {
    200: jsonAnswer(traceShape.meta({ id: 'Trace' }), 'The packs that it reaches.'),
    ...refusing(...gated, 'request.invalid'),
  },
});

export const counterRoutes = new OpenAPIHono<HttpEnv>({ defaultHook: refuseShape })
  .openapi(read, async (c) => c.json(orProblem(await readCounter(c.get('ctx'))), 200))
  .openapi(sell, async (c) => {
    const input = c.req.valid('json');
    const key = onceKey(c, `POST ${salesPath}`, { body: input }, 201);
    return c.json(answerOnce(c, orProblem(await sellOverCounter(c.get('ctx'), input, key))), 201);
  })
  .openapi(traced, async (c) => {
    const { pack, serial, lot, animal, farm, from = '2000-01-01', to = '2199-12-31' } = c.req.valid('query');
    const starts = [
      ...(pack === undefined ? [] : [{ packId: pack }]),
      ...(serial === undefined ? [] : [{ serial }]),
      ...(lot === undefined ? [] : [{ lot }]),
      ...(animal === undefined ? [] : [{ animalId: animal }]),
      ...(farm === undefined ? [] : [{ farmId: farm, from, to }]),
    ];
    const [start, ...more] = starts;
    if (!start || more.length > 0)
      throw new Problem(
        refused('request.invalid', 'Name one of: pack, serial, lot, animal, farm (with from and to).'),
      );
    return c.json({ packs: orProblem(await readTrace(c.get('ctx'), start)) }, 200);
  });
