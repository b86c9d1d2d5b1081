import { z } from 'zod';

/** A list that is not changed by whoever reads it, with a bound on its length. */
export const listOf = <T extends z.ZodType>(item: T, max: number) =>
  z.array(item).max(max) as unknown as z.ZodType<readonly z.output<T>[], readonly z.input<T>[]>;

// At run time a plain optional: the OpenAPI generator takes an exact one for required. JSON knows no undefined.
/** A field that may be left out. */
export const maybe = <T extends z.ZodType>(shape: T) => shape.optional() as unknown as z.ZodExactOptional<T>;

const oneLine = /^[^\p{Cc}\p{Cs}]*$/u;
const manyLines = /^(?:[^\p{Cc}\p{Cs}]|[\n\t])*$/u;
const sayOneLine = 'must be one line of text, without control characters or broken letters';

/** An id as the domain has it: any short text. */
export const anyId = z.string().min(1).max(200).regex(oneLine, sayOneLine);
/** An id that the service stores. Clients make it where they may send twice. */
export const storedId = z.uuid();
/** A name that people read. */
export const nameText = z.string().regex(oneLine, sayOneLine).trim().min(1).max(200);
export const noteText = z
  .string()
  .max(2000)
  .regex(manyLines, 'must be text, without control characters or broken letters');
/** Whole number within what every part of the program counts exactly. */
export const count = z.int().min(0);
/** yyyy-mm-dd, and a day that exists. */
export const localDate = z.iso.date();
/** An instant in ISO form, with its offset. */
export const instant = z.iso.datetime({ offset: true });
