import { createMiddleware } from 'hono/factory';
import { refused } from '../refusals.ts';
import { Problem } from './problem.ts';

const safe = new Set(['GET', 'HEAD', 'OPTIONS']);

const crossSite = (says: string): Problem => new Problem(refused('request.cross-site', says));

/**
 * No other site may make a browser change anything here (OWASP ASVS 5.0.0, 3.5.1). A browser says where a request comes
 * from: Sec-Fetch-Site, or Origin where that is missing. A caller that sends neither is no browser and has no cookies
 * of one.
 */
export const guardOrigin = (publicOrigin: string | null) =>
  createMiddleware(async (c, next) => {
    if (safe.has(c.req.method)) return next();
    const site = c.req.header('sec-fetch-site');
    if (site !== undefined && site !== 'same-origin' && site !== 'none') {
      throw crossSite(`Changes are taken from this site's own pages only, not from a ${site} one.`);
    }
    const origin = c.req.header('origin');
    const own = publicOrigin ?? new URL(c.req.url).origin;
    if (origin !== undefined && origin !== own) {
      throw crossSite(`Changes are taken from ${own} only.`);
    }
    return next();
  });
