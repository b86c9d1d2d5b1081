import { connect, createServer, type Server, type Socket } from 'node:net';

/** A wire to a Postgres server that holds each packet back for a while, so that races that hide on one machine show. */
export interface SlowWire {
  readonly url: string;
  close(): Promise<void>;
}

function pipeSlowly(from: Socket, to: Socket, delayMs: () => number): void {
  let before = Promise.resolve();
  from.on('data', (bytes) => {
    const wait = delayMs();
    // Packets of one direction stay in order.
    before = before
      .then(() => new Promise<void>((resolve) => (wait > 0 ? setTimeout(resolve, wait) : resolve())))
      .then(() => {
        if (!to.destroyed) to.write(bytes);
      });
  });
  from.on('close', () => void before.then(() => to.destroy()));
  from.on('error', () => to.destroy());
}

/** @param delayMs called for each packet; 0 lets it pass at once */
export async function stretchWire(url: string, delayMs: () => number): Promise<SlowWire> {
  const target = new URL(url);
  const sockets = new Set<Socket>();
  const server: Server = createServer((client) => {
    const upstream = connect(Number(target.port || 5432), target.hostname);
    for (const socket of [client, upstream]) {
      socket.setNoDelay(true);
      sockets.add(socket);
      socket.on('close', () => sockets.delete(socket));
    }
    pipeSlowly(client, upstream, delayMs);
    pipeSlowly(upstream, client, delayMs);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error('no port');
  const slow = new URL(url);
  slow.hostname = '127.0.0.1';
  slow.port = String(address.port);
  return {
    url: slow.href,
    async close() {
      for (const socket of sockets) socket.destroy();
      await new Promise<void>((resolve) => server.close(() => resolve()));
    },
  };
}
