import type { Context } from 'hono';
import type { z } from 'zod';
import { type FieldFault, refused } from '../refusals.ts';
import { missingKey, missingVersion } from './edit-headers.ts';
import { Problem } from './problem.ts';

type Issue = z.core.$ZodIssue;

const pathText = (path: readonly PropertyKey[]): string =>
  path.reduce<string>((text, key) => {
    if (typeof key === 'number') return `${text}[${key}]`;
    return text === '' ? String(key) : `${text}.${String(key)}`;
  }, '');

function valueAt(value: unknown, path: readonly PropertyKey[]): unknown {
  let here = value;
  for (const key of path) {
    if (typeof here !== 'object' || here === null || !Object.hasOwn(here, key)) return undefined;
    here = (here as Record<PropertyKey, unknown>)[key];
  }
  return here;
}

function faultsOf(body: unknown, issues: readonly Issue[]): readonly FieldFault[] {
  return issues.flatMap((issue) => {
    if (issue.code === 'unrecognized_keys') {
      return issue.keys.map((key) => ({
        at: pathText([...issue.path, key]),
        value: valueAt(body, [...issue.path, key]),
        says: 'is not a field here',
      }));
    }
    return [{ at: pathText(issue.path), value: valueAt(body, issue.path), says: issue.message }];
  });
}

/** The answer to what no shape fits: which field, what stood there, what is wrong with it. */
export async function refuseShape(
  result: {
    readonly success: boolean;
    readonly target?: string;
    readonly error?: { readonly issues: readonly Issue[] };
  },
  c: Context,
): Promise<void> {
  if (result.success) return;
  const issues = result.error?.issues ?? [];
  if (result.target === 'param')
    throw new Problem(refused('request.not-found', 'The id in the address is none.'));
  if (result.target === 'header') {
    throw issues.some(({ path }) => path[0] === 'if-match') ? missingVersion() : missingKey();
  }
  const faults = faultsOf(await c.req.json(), issues);
  throw new Problem(
    refused('request.invalid', 'The body is not as it should be; errors says where.', { faults }),
  );
}
