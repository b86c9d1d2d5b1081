import { z } from '@hono/zod-openapi';
import type { Context } from 'hono';
import { refused } from '../refusals.ts';
import type { OnceAnswer, OnceKey } from '../services/once.ts';
import { Problem } from './problem.ts';

/** A structured-field string (RFC 9651) as the draft asks, or the bare text. */
const keyForm = /^(?:"([\x21\x23-\x5b\x5d-\x7e]{1,255})"|([\x21\x23-\x5b\x5d-\x7e]{1,255}))$/;

export const idempotencyHeader = z.object({
  'idempotency-key': z.string().regex(keyForm).meta({
    description:
      'Made by the caller, new for each new request; sent again with the same request it gets the same answer. Kept 30 days.',
    example: '"0190f1d2-6b7e-7c3a-9f00-2d6c1c7a4e51"',
  }),
});

export const ifMatchHeader = z.object({
  'if-match': z
    .string()
    .meta({ description: 'ETag of what is being changed, as last read.', example: '"12"' }),
});

/** The caller's key with what it belongs to. */
export function onceKey(c: Context, route: string, request: unknown, status: OnceKey['status']): OnceKey {
  const [, quoted, bare] = keyForm.exec(c.req.header('idempotency-key') ?? '') ?? [];
  const key = quoted ?? bare;
  if (key === undefined) throw missingKey();
  return { key, route, request, status };
}

/** The body of an answer given once; a header says where it was given before. */
export function answerOnce<T>(c: Context, { body, replayed }: OnceAnswer<T>): T {
  if (replayed) c.header('Idempotency-Replayed', 'true');
  return body;
}

export const missingKey = (): Problem =>
  new Problem(
    refused(
      'idempotency.key-missing',
      'Send an Idempotency-Key of 1 to 255 visible characters, new for each new request. See /api/reference.',
    ),
  );

export const missingVersion = (): Problem =>
  new Problem(refused('edit.version-missing', 'Send If-Match with the ETag of what you are changing.'));

const versionTag = /^"([1-9]\d{0,8})"$/;

/** The version in If-Match. An ETag that is none of ours matches nothing (RFC 9110, 13.1.1). */
export function ifVersion(c: Context): number {
  const header = c.req.header('if-match');
  if (header === undefined) throw missingVersion();
  const [, version] = versionTag.exec(header) ?? [];
  if (version === undefined) {
    throw new Problem(
      refused('edit.version-stale', 'If-Match names no version of this. Read it again, then decide.'),
    );
  }
  return Number(version);
}

export const versionETag = (version: number): string => `"${version}"`;
