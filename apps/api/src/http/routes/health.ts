import { createRoute, OpenAPIHono, z } from '@hono/zod-openapi';
import { open } from '../gate.ts';
import type { HttpEnv } from '../http-env.ts';
import { jsonAnswer } from '../route-parts.ts';

const state = z.strictObject({ state: z.enum(['ok', 'not-ready']) }).meta({ id: 'ServiceState' });
const tags = ['service'];

const health = createRoute({
  method: 'get',
  path: '/health',
  operationId: 'service.health',
  summary: 'Does the process live? Asks nothing else.',
  tags,
  ...open,
  responses: { 200: jsonAnswer(state, 'It lives.') },
});

const ready = createRoute({
  method: 'get',
  path: '/ready',
  operationId: 'service.ready',
  summary: 'May requests be sent here? The database answers and the service is not stopping.',
  tags,
  ...open,
  responses: { 200: jsonAnswer(state, 'Yes.'), 503: jsonAnswer(state, 'Not now.') },
});

export const healthRoutes = new OpenAPIHono<HttpEnv>()
  .openapi(health, (c) => c.json({ state: 'ok' as const }, 200))
  .openapi(ready, async (c) =>
    (await c.get('transport').isReady())
      ? c.json({ state: 'ok' as const }, 200)
      : c.json({ state: 'not-ready' as const }, 503),
  );
