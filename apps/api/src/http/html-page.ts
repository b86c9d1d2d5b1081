import { readFileSync } from 'node:fs';
import type { Context } from 'hono';

/** A whole page: without the doctype browsers fall back to the layout of the nineties. */
export const htmlPage = (c: Context, page: { toString(): string | Promise<string> }) =>
  c.html(Promise.resolve(page.toString()).then((text) => `<!doctype html>${text}`));

/** A style sheet that lies beside the sheet it belongs to. */
export const styleSheet = (c: Context, file: URL) =>
  c.body(readFileSync(file, 'utf8'), 200, { 'Content-Type': 'text/css; charset=utf-8' });
