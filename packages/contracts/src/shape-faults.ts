import type { z } from 'zod';
import { pathText, sentence, valueAt } from './field-path.ts';
import { maybeName } from './near-name.ts';
import type { FieldFault } from './wire/problems.ts';

type Issue = z.core.$ZodIssue;
type Path = readonly PropertyKey[];

const kinds: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list [...]',
  object: 'an object {...}',
  record: 'an object {...}',
};

const listed = (values: readonly unknown[]): string => {
  const names = values.map((value) => JSON.stringify(value));
  const last = names.pop() ?? '';
  return names.length === 0 ? last : `${names.join(', ')} or ${last}`;
};

function oneOf(options: readonly unknown[], value: unknown): string {
  const near = typeof value === 'string' ? maybeName(value, options.map(String)) : '';
  return `must be ${listed(options)}${near === '' ? '' : `.${near}`}`;
}

function sizeText(issue: Issue & { code: 'too_small' | 'too_big' }): string {
  const small = issue.code === 'too_small';
  const bound = small ? issue.minimum : issue.maximum;
  const beyond = small ? 'at least' : 'at most';
  switch (issue.origin) {
    case 'string':
      return small && bound === 1 ? 'must not be empty' : `must have ${beyond} ${bound} characters`;
    case 'array':
      return `must list ${beyond} ${bound}`;
    default:
      return `must be ${beyond} ${bound}`;
  }
}

const formats: Readonly<Record<string, string>> = {
  date: 'must be a date that exists, as yyyy-mm-dd',
  datetime: 'must be an instant, as yyyy-mm-ddThh:mm:ssZ',
  uuid: 'must be a UUID',
};

function saysOf(issue: Issue, value: unknown): string {
  switch (issue.code) {
    case 'invalid_type':
      if (value === undefined) return 'is missing';
      if (!issue.message.startsWith('Invalid input')) return issue.message;
      if (issue.expected === 'int' || issue.expected === 'number') return `must be ${kinds[issue.expected]}`;
      return `must be ${kinds[issue.expected] ?? issue.expected}`;
    case 'invalid_value':
      return value === undefined ? 'is missing' : oneOf(issue.values, value);
    case 'too_small':
    case 'too_big':
      return sizeText(issue);
    case 'invalid_format':
      return formats[issue.format] ?? issue.message;
    case 'not_multiple_of':
      return `must be a multiple of ${issue.divisor}`;
    default:
      return issue.message;
  }
}

/** Of a union, the branch that the value comes nearest to: the one whose faults lie deepest, then the fewest. */
function nearestBranch(branches: readonly (readonly Issue[])[]): readonly Issue[] {
  const depth = (issues: readonly Issue[]): number => Math.max(0, ...issues.map(({ path }) => path.length));
  const [nearest = []] = [...branches].sort((a, b) => depth(b) - depth(a) || a.length - b.length);
  return nearest;
}

function unionFaults(issue: Issue & { code: 'invalid_union' }, input: unknown, base: Path): FieldFault[] {
  const at = pathText(base);
  const value = valueAt(input, at);
  if (value === undefined) return [{ at, value, says: 'is missing' }];
  const { options } = issue as { readonly options?: readonly unknown[] };
  if (options) return [{ at, value, says: oneOf(options, value) }];
  const structural = issue.errors.some((branch) => branch.some(({ path }) => path.length > 0));
  if (!structural && issue.message !== 'Invalid input') return [{ at, value, says: issue.message }];
  return nearestBranch(issue.errors).flatMap((inner) => issueFaults(inner, input, base, new Map()));
}

function issueFaults(issue: Issue, input: unknown, base: Path, known: KnownFields): FieldFault[] {
  const path = [...base, ...issue.path];
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => {
      const names = known.get(pathText(path)) ?? [];
      const near = maybeName(key, names);
      const at = pathText([...path, key]);
      return { at, value: valueAt(input, at), says: `is not a field here${near === '' ? '' : `.${near}`}` };
    });
  }
  if (issue.code === 'invalid_union') return unionFaults(issue, input, path);
  if (issue.code === 'invalid_key')
    return [{ at: pathText(path), value: issue.path.at(-1), says: 'is not a name that can stand here' }];
  const at = pathText(path);
  const value = valueAt(input, at);
  return [{ at, value, says: saysOf(issue, value) }];
}

/** Fields of the object that stands at a path. */
type KnownFields = Map<string, readonly string[]>;

/** Issues of a shape as faults of the value, in the words of the one who wrote it. */
export const shapeFaults = (
  issues: readonly Issue[],
  input: unknown,
  known: KnownFields = new Map(),
): readonly FieldFault[] =>
  issues
    .flatMap((issue) => issueFaults(issue, input, [], known))
    .map((fault) => ({ ...fault, says: sentence(fault.says) }));

/**
 * Reads a value by a shape.
 * @returns the value as the shape makes it, or every fault in the words of the one who wrote it; never throws
 */
export function readShape<Shape extends z.ZodType>(
  shape: Shape,
  input: unknown,
): { readonly value: z.output<Shape> } | { readonly faults: readonly FieldFault[] } {
  const known: KnownFields = new Map();
  const result = shape.safeParse(input, {
    error: (issue) => {
      const owner = issue.inst?._zod.def as
        | { readonly shape?: Readonly<Record<string, unknown>> }
        | undefined;
      if (issue.code === 'unrecognized_keys' && owner?.shape)
        known.set(pathText(issue.path ?? []), Object.keys(owner.shape));
      return undefined;
    },
  });
  if (result.success) return { value: result.data };
  return { faults: shapeFaults(result.error.issues, input, known) };
}
