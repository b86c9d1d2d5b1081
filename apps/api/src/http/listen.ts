import { once } from 'node:events';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { getRequestListener } from '@hono/node-server';

type Answerer = (request: Request, env: object) => Response | Promise<Response>;

export interface Listening {
  readonly port: number;
  /** who answers from now on */
  answerWith(answerer: Answerer): void;
  /** Stops accepting at once, lets running requests finish within `seconds`, then cuts them off. */
  stop(seconds: number): Promise<void>;
}

/** The port belongs to another process. */
class PortTaken extends Error {}

const connectionsMax = 2_000;

// Without them one slow sender holds a connection for ever.
const timeouts = { headersTimeout: 10_000, requestTimeout: 30_000, connectionsCheckingInterval: 5_000 };

const notYet: Answerer = () =>
  new Response('{"type":"/problems/server.busy","title":"The service is starting","status":503}', {
    status: 503,
    headers: { 'Content-Type': 'application/problem+json', 'Retry-After': '1' },
  });

async function listening(server: Server, port: number, host: string): Promise<number> {
  server.listen(port, host);
  try {
    await once(server, 'listening');
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'EADDRINUSE') throw new PortTaken(`Port ${port} on ${host} is taken by another program.`);
    throw error;
  }
  return (server.address() as AddressInfo).port;
}

/**
 * Listens at once, so that a taken port is known before anything else is opened. Until somebody answers, requests get
 * 503. @throws PortTaken
 */
export async function listen(port: number, host: string): Promise<Listening> {
  let answerer = notYet;
  const server = createServer(
    timeouts,
    getRequestListener((request, env) => answerer(request, env)),
  );
  server.maxConnections = connectionsMax;
  const taken = await listening(server, port, host);
  return {
    port: taken,
    answerWith(next) {
      answerer = next;
    },
    async stop(seconds) {
      const closed = once(server, 'close');
      server.close();
      server.closeIdleConnections();
      const late = setTimeout(() => server.closeAllConnections(), seconds * 1000);
      await closed;
      clearTimeout(late);
    },
  };
}
