import { problemShape } from '@flitchbook/contracts';
import { z } from '@hono/zod-openapi';
import { type RefusalType, refusals } from '../refusals.ts';
import { problemMediaType } from './problem.ts';

const problem = problemShape.meta({ id: 'Problem' });

/** Refusals that a route promises, by status. The routes' types know the good answers only: refusals are thrown. */
export function refusing(...types: RefusalType[]): Record<never, never> {
  const byStatus: Record<number, { description: string; content: unknown }> = {};
  for (const type of types) {
    const { status, title } = refusals[type];
    const before = byStatus[status]?.description;
    byStatus[status] = {
      description: before === undefined ? `${type}: ${title}.` : `${before} ${type}: ${title}.`,
      content: { [problemMediaType]: { schema: problem } },
    };
  }
  return byStatus;
}

export const gated = ['session.required', 'session.not-allowed', 'server.busy', 'server.fault'] as const;

export const withBody = [
  'request.malformed',
  'request.invalid',
  'request.too-large',
  'request.not-json',
  'request.cross-site',
] as const;

export const withKey = [
  'idempotency.key-missing',
  'idempotency.still-running',
  'idempotency.key-reused',
] as const;

export const withVersion = ['edit.version-missing', 'edit.version-stale', 'request.cross-site'] as const;

export const jsonAnswer = <T extends z.ZodType>(schema: T, description: string) => ({
  description,
  content: { 'application/json': { schema } },
});

export const jsonBody = <T extends z.ZodType>(schema: T) => ({
  required: true,
  content: { 'application/json': { schema } },
});

/** An answer that bears the ETag to change it by. */
export const taggedAnswer = <T extends z.ZodType>(schema: T, description: string) => ({
  ...jsonAnswer(schema, description),
  headers: { ETag: { description: 'Version, for If-Match.', schema: { type: 'string' as const } } },
});

export const replayHeader = {
  'Idempotency-Replayed': {
    description: 'true where this is the answer given before to the same key.',
    schema: { type: 'string' as const, enum: ['true'] },
  },
};

export const dayParam = z.object({ dayId: z.uuid() });
export const animalParam = z.object({ animalId: z.uuid() });
export const packParam = z.object({ packId: z.uuid() });
export const orderParam = z.object({ orderId: z.uuid() });
