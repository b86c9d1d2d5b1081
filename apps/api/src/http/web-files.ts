import { serveStatic } from '@hono/node-server/serve-static';
import { createMiddleware } from 'hono/factory';

/** A last part with a dot is a file: it is there or it is not. Everything else is an address inside the web app. */
const fileLike = /\.[^/]*$/;

/** Addresses of the service itself never show a page of the web app. */
const ownAddress = /^\/(?:api|problems|health|ready)(?:\/|$)/;

/** The built web app: hashed files for ever, its page never from a cache, and the page for every address inside the app. */
export function webFiles(folder: string) {
  const files = serveStatic({
    root: folder,
    precompressed: true,
    onFound: (path, c) => {
      const hashed = /[\\/]assets[\\/]/.test(path);
      c.header('Cache-Control', hashed ? 'public, max-age=31536000, immutable' : 'no-cache');
    },
  });
  const page = serveStatic({
    root: folder,
    path: 'index.html',
    onFound: (_, c) => c.header('Cache-Control', 'no-cache'),
  });
  return createMiddleware(async (c, next) => {
    if (ownAddress.test(c.req.path)) return next();
    const found = await files(c, async () => undefined);
    if (found) return found;
    return fileLike.test(c.req.path) ? next() : page(c, next);
  });
}
