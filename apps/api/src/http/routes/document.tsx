/** @jsxImportSource hono/jsx */
import { Hono } from 'hono';
import { type RefusalType, refusals } from '../../refusals.ts';
import { htmlPage, styleSheet } from '../html-page.ts';
import type { HttpEnv } from '../http-env.ts';
import type { OpenApiDocument } from '../open-api-shape.ts';
import { ProblemPage, ReferencePage } from '../reference-page.tsx';

const isRefusalType = (type: string): type is RefusalType => Object.hasOwn(refusals, type);

const style = new URL('../reference.css', import.meta.url);

/** The description of the API for machines and for people, and a page for each problem type. */
export const documentRoutes = (read: () => OpenApiDocument) =>
  new Hono<HttpEnv>()
    .get('/api/openapi.json', (c) => c.json(read()))
    .get('/api/reference', (c) => htmlPage(c, <ReferencePage document={read()} />))
    .get('/api/reference.css', (c) => styleSheet(c, style))
    .get('/problems/:type', async (c, next) => {
      const type = c.req.param('type');
      if (isRefusalType(type)) return htmlPage(c, <ProblemPage type={type} />);
      return next();
    });
