/** @jsxImportSource hono/jsx */
import { createRoute, OpenAPIHono, z } from '@hono/zod-openapi';
import { arrangements, CutSheet, type SheetWish } from '../../print/cut-sheet/cut-sheet.tsx';
import { readCutList } from '../../services/plans/cut-list.ts';
import { cutListShape } from '../cut-list-shape.ts';
import { forVerb } from '../gate.ts';
import { htmlPage, styleSheet } from '../html-page.ts';
import type { HttpEnv } from '../http-env.ts';
import { orProblem } from '../problem.ts';
import { refuseShape } from '../refuse-shape.ts';
import { dayParam, gated, jsonAnswer, refusing } from '../route-parts.ts';

const tags = ['cut list'];
const refusals = refusing(...gated, 'request.not-found', 'day.unknown', 'plan.missing');

const asData = createRoute({
  method: 'get',
  path: '/api/days/{dayId}/cut-list',
  operationId: 'cut-list.read',
  summary: 'What to do with every side, step by step, from the stored plan.',
  tags,
  ...forVerb('plans.cut-list'),
  request: { params: dayParam },
  responses: { 200: jsonAnswer(cutListShape, 'The cut list.'), ...refusals },
});

const asSheet = createRoute({
  method: 'get',
  path: '/api/days/{dayId}/cut-list.html',
  operationId: 'cut-list.print',
  summary: 'The same as a sheet to print, A4 or Letter.',
  tags,
  ...forVerb('plans.cut-list'),
  request: {
    params: dayParam,
    query: z.object({
      by: z.string().optional().meta({ description: 'side, station or person; by side if left out.' }),
      print: z.string().optional().meta({ description: 'large: for reading from a step away.' }),
    }),
  },
  responses: {
    200: { description: 'The sheet.', content: { 'text/html': { schema: z.string() } } },
    ...refusals,
  },
});

function wishOf({
  by,
  print,
}: {
  readonly by?: string | undefined;
  readonly print?: string | undefined;
}): SheetWish {
  const known = arrangements.find((arrangement) => arrangement === by);
  return {
    by: known ?? 'side',
    isLarge: print === 'large',
    unknown: by === undefined || known ? null : by.slice(0, 40),
  };
}

const sheetStyle = new URL('../../print/cut-sheet/cut-sheet.css', import.meta.url);

export const cutListRoutes = new OpenAPIHono<HttpEnv>({ defaultHook: refuseShape })
  .openapi(asData, async (c) => {
    const { list, stale } = orProblem(await readCutList(c.get('ctx'), c.req.valid('param').dayId));
    return c.json(
      { dayId: list.dayId, date: list.date, stale, animals: list.animals } as z.infer<typeof cutListShape>,
      200,
    );
  })
  .openapi(asSheet, async (c) => {
    const bench = orProblem(await readCutList(c.get('ctx'), c.req.valid('param').dayId));
    return (await htmlPage(c, <CutSheet bench={bench} wish={wishOf(c.req.valid('query'))} />)) as never;
  });

export const cutSheetStyle = new OpenAPIHono<HttpEnv>().get('/api/cut-sheet.css', (c) =>
  styleSheet(c, sheetStyle),
);
