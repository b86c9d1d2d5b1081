import { z } from 'zod';
import { count, listOf, maybe } from './parts.ts';

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

/** What could be promised of a line that was refused: pieces, or grams of loose meat. */
export const insteadShape = z.strictObject({
  lineId: z.string(),
  asked: count,
  possible: count,
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
    instead: maybe(listOf(insteadShape, 500)),
  })
  .meta({ description: 'A refusal (RFC 9457).' });
export type Problem = z.infer<typeof problemShape>;
