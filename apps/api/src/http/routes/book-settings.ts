import { bookSettingsShape, setBooksShape } from '@flitchbook/contracts';
import { createRoute, OpenAPIHono, z } from '@hono/zod-openapi';
import { readBookSettings, setBookSettings } from '../../services/book-settings/set.ts';
import { forVerb } from '../gate.ts';
import type { HttpEnv } from '../http-env.ts';
import { orProblem } from '../problem.ts';
import { refuseShape } from '../refuse-shape.ts';
import { gated, jsonAnswer, jsonBody, refusing, withBody } from '../route-parts.ts';

const path = '/api/book-settings';
const tags = ['book settings'];
const set = setBooksShape.meta({ id: 'SetBooks' });

const read = createRoute({
  method: 'get',
  path,
  operationId: 'book-settings.read',
  summary: 'What the shop has set for labels, bills and pick-ups.',
  tags,
  ...forVerb('book-settings.read'),
  responses: { 200: jsonAnswer(set, 'The settings.'), ...refusing(...gated) },
});

const write = createRoute({
  method: 'put',
  path,
  operationId: 'book-settings.set',
  summary:
    'Replaces the settings whole. Limits and wordings are the shop’s: local codes and the inspector decide.',
  tags,
  ...forVerb('book-settings.set'),
  request: {
    query: z.object({
      version: z.coerce.number().int().min(0).meta({ description: 'Of the settings that were read.' }),
    }),
    body: jsonBody(bookSettingsShape.meta({ id: 'BookSettings' })),
  },
  responses: {
    200: jsonAnswer(set, 'The settings as they are now.'),
    ...refusing(...gated, ...withBody, 'book-settings.invalid', 'edit.version-stale'),
  },
});

export const bookSettingsRoutes = new OpenAPIHono<HttpEnv>({ defaultHook: refuseShape })
  .openapi(read, async (c) => c.json(orProblem(await readBookSettings(c.get('ctx'))), 200))
  .openapi(write, async (c) => {
    const { version } = c.req.valid('query');
    return c.json(orProblem(await setBookSettings(c.get('ctx'), c.req.valid('json'), version)), 200);
  });
