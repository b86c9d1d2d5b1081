import { z } from 'zod';
import { readingShape } from '../wire/carcass.ts';
import { type Read, readLength, readReading, readWeight, readWeightRange } from './quantities.ts';

/** A text that is read into something else; a remark travels with it. */
const readAs = <T>(read: (text: string) => Read<T>, example: string) =>
  z
    .string(`must be text in quotes, such as "${example}"`)
    .max(100)
    .transform((text, context) => {
      const result = read(text);
      if ('value' in result) return result;
      context.addIssue(result.says);
      return z.NEVER;
    });

export const length = readAs(readLength, '1 1/4 in');
export const weight = readAs(readWeight, '5 lb');
export const weightRange = readAs(readWeightRange, '3-4 lb');
/** A weight as the scale showed it, written in one or as an object. */
export const reading = z
  .union([readAs(readReading, '184 lb'), readingShape.transform((value) => ({ value }))], {
    error: 'must be a weight such as "184 lb", or {"text": "184", "unit": "lb"}',
  })
  .transform(({ value }) => value);
