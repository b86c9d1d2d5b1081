import { OpenAPIHono } from '@hono/zod-openapi';
import { createMiddleware } from 'hono/factory';
import { methodNotAllowed } from 'hono/method-not-allowed';
import { refused } from '../refusals.ts';
import type { Services } from '../services/ctx.ts';
import { answerErrors } from './answer-errors.ts';
import { apiRoutes, openApiDocument } from './api-routes.ts';
import { guardBody, limitBody } from './guard-body.ts';
import { guardOrigin } from './guard-origin.ts';
import type { HttpEnv, Transport } from './http-env.ts';
import { problemResponse } from './problem.ts';
import { requestLog } from './request-log.ts';
import { cutSheetStyle } from './routes/cut-lists.tsx';
import { documentRoutes } from './routes/document.tsx';
import { securityHeaders } from './security-headers.ts';
import { webFiles } from './web-files.ts';

const give = (services: Services, transport: Transport) =>
  createMiddleware<HttpEnv>(async (c, next) => {
    c.set('services', services);
    c.set('transport', transport);
    await next();
  });

/** Answers of the API belong to one person and one moment. */
const notKept = createMiddleware(async (c, next) => {
  await next();
  if (!c.res.headers.has('Cache-Control')) c.res.headers.set('Cache-Control', 'no-store');
});

/** The whole service as one function from request to answer. Tests call its `request`. */
export function createApp(services: Services, transport: Transport) {
  const app = new OpenAPIHono<HttpEnv>();
  app.onError(answerErrors(transport.log));
  app.notFound((c) => problemResponse(c, refused('request.not-found', 'There is nothing at this address.')));
  app.use(requestLog(transport));
  app.use(securityHeaders());
  app.use(give(services, transport));
  app.use('/api/*', notKept);
  app.use(
    methodNotAllowed({
      app,
      onMethodNotAllowed: (c, methods) => {
        const allow = methods.join(', ');
        return problemResponse(c, refused('request.method-not-allowed', `Only ${allow} is answered here.`), {
          Allow: allow,
        });
      },
    }),
  );
  app.use(guardOrigin(transport.publicOrigin));
  app.use(limitBody);
  app.use(guardBody);
  app.route('/', apiRoutes);
  app.route('/', documentRoutes(openApiDocument));
  app.route('/', cutSheetStyle);
  if (transport.webFolder !== null) app.use(webFiles(transport.webFolder));
  return app;
}
