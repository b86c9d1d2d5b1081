import { createMiddleware } from 'hono/factory';
import { routePath } from 'hono/route';
import type { HttpEnv, Transport } from './http-env.ts';

/** Gives each request its id and writes one line about it: the route's pattern, never the address itself. */
export const requestLog = ({ log, newRequestId, nowMs }: Pick<Transport, 'log' | 'newRequestId' | 'nowMs'>) =>
  createMiddleware<HttpEnv>(async (c, next) => {
    const startMs = nowMs();
    const requestId = newRequestId();
    c.set('requestId', requestId);
    await next();
    c.res.headers.set('X-Request-Id', requestId);
    const person = c.get('session')?.person;
    log({
      level: c.res.status >= 500 ? 'error' : 'info',
      event: 'request',
      requestId,
      method: c.req.method,
      route: routePath(c, -1),
      status: c.res.status,
      refusal: c.get('refusal'),
      ms: Math.round(nowMs() - startMs),
      shopId: person?.shopId,
      role: person?.role,
    });
  });
