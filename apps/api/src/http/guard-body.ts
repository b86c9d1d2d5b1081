import { readJson } from '@flitchbook/contracts';
import { bodyLimit } from 'hono/body-limit';
import { createMiddleware } from 'hono/factory';
import { refused } from '../refusals.ts';
import { Problem } from './problem.ts';

const bodyBytesMax = 1_000_000;
const depthMax = 20;

/** 413 above a megabyte, counted while it arrives where the length is not given. */
export const limitBody = bodyLimit({
  maxSize: bodyBytesMax,
  onError: () => {
    throw new Problem(
      refused('request.too-large', `A request may have ${bodyBytesMax} bytes at most.`),
      // What is still on its way is not read.
      { Connection: 'close' },
    );
  },
});

const json = /^application\/json\s*(?:;\s*charset=(?:utf-8|"utf-8")\s*)?$/i;

const malformed = (says: string): Problem => new Problem(refused('request.malformed', says));

function decode(bytes: ArrayBuffer): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw malformed('The body is not UTF-8.');
  }
}

/**
 * A body is JSON and means one thing only: no key twice, no NUL, no half of a letter (OWASP ASVS 5.0.0, 1.5.3). Other
 * types are refused, so that no form of another site fits (3.5.2).
 */
export const guardBody = createMiddleware(async (c, next) => {
  if (c.req.method === 'GET' || c.req.method === 'HEAD') return next();
  const type = c.req.header('content-type');
  const bytes = await c.req.arrayBuffer();
  if (bytes.byteLength === 0 && type === undefined) return next();
  if (type === undefined || !json.test(type)) {
    throw new Problem(refused('request.not-json', 'Send the body as application/json.'));
  }
  const read = readJson(decode(bytes), { length: bodyBytesMax, depth: depthMax });
  if ('fault' in read) {
    const { line, column, found, says } = read.fault;
    throw malformed(`Line ${line}, column ${column}: ${JSON.stringify(found)} ${says}.`);
  }
  return next();
});
