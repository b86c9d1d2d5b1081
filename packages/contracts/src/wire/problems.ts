import { z } from 'zod';
import { listOf, maybe } from './parts.ts';

/** One field at fault: where it stands ("lines[3].portion.um"), what was there, and what is wrong with it. */
export interface FieldFault {
  readonly at: string;
  readonly value: unknown;
  readonly says: string;
}

export const fieldFaultShape = z.strictObject({
  at: z.string(),
  value: maybe(z.unknown()),
  says: z.string(),
});

/** A refusal: RFC 9457, application/problem+json. Its type is /problems/<noun.reason>. */
export const problemShape = z
  .strictObject({
    type: z.string(),
    title: z.string(),
    status: z.int(),
    detail: z.string(),
    instance: maybe(z.string()),
    errors: maybe(listOf(fieldFaultShape, 100_000)),
  })
  .meta({ description: 'A refusal (RFC 9457).' });
export type Problem = z.infer<typeof problemShape>;
