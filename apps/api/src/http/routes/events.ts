import { createRoute, OpenAPIHono, z } from '@hono/zod-openapi';
import { streamSSE } from 'hono/streaming';
import { lastEntry } from '../../services/events/last-entry.ts';
import { LedgerTails } from '../../services/events/ledger-tail.ts';
import { readSession } from '../../services/sessions/read.ts';
import { forVerb } from '../gate.ts';
import type { HttpEnv } from '../http-env.ts';
import { orProblem } from '../problem.ts';
import { refuseShape } from '../refuse-shape.ts';
import { gated, refusing } from '../route-parts.ts';

/** A session that is over ends its streams within so many seconds (OWASP ASVS 5.0.0, 7.4.1). */
const sessionLookMs = 4000;

const follow = createRoute({
  method: 'get',
  path: '/api/events',
  operationId: 'events.follow',
  summary: 'What happens in the shop, as it happens: Server-Sent Events.',
  description:
    'The id of an event is its number in the ledger. Send it back as Last-Event-ID, as browsers do, and nothing in between is missed; without it the stream begins with what comes next. A stream ends after a while: connect again. The data is JSON: seq, at, kind, dayId, orderId.',
  tags: ['events'],
  ...forVerb('events.follow'),
  responses: {
    200: {
      description: 'The stream.',
      content: { 'text/event-stream': { schema: z.string() } },
    },
    ...refusing(...gated),
  },
});

const tails = new LedgerTails();

export const eventRoutes = new OpenAPIHono<HttpEnv>({ defaultHook: refuseShape }).openapi(
  follow,
  async (c) => {
    const { streams, cookie, nowMs } = c.get('transport');
    const ctx = c.get('ctx');
    const services = c.get('services');
    const token = cookie.read(c) ?? '';
    const { shopId } = ctx.actor;
    const newest = orProblem(await lastEntry(ctx));
    const [, told] = /^(\d{1,15})$/.exec(c.req.header('last-event-id') ?? '') ?? [];
    let last = told === undefined ? newest : Math.min(Number(told), newest);
    return streamSSE(c, async (stream) => {
      const tail = tails.follow(services, shopId, newest);
      const endsMs = nowMs() + streams.maxSeconds * 1000;
      let lookMs = nowMs() + sessionLookMs;
      let gone = false;
      stream.onAbort(() => {
        gone = true;
      });
      try {
        await stream.writeSSE({ event: 'hello', data: '', id: String(last), retry: 2000 });
        while (!gone && !streams.stopping() && (last < newest || nowMs() < endsMs)) {
          for (const { seq, at, kind, dayId, orderId } of await tail.after(last)) {
            await stream.writeSSE({
              id: String(seq),
              event: kind,
              data: JSON.stringify({ seq, at, kind, dayId, orderId }),
            });
            last = seq;
          }
          if (nowMs() < lookMs) continue;
          lookMs = nowMs() + sessionLookMs;
          const session = await readSession(services, token);
          if (session.ok && session.value?.person.role !== ctx.actor.role) break;
          // Keeps the wire open, and finds out that nobody listens.
          await stream.write(': still here\n\n');
        }
      } finally {
        tail.leave();
      }
    });
  },
);
