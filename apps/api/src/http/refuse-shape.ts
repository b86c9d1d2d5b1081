import { shapeFaults } from '@flitchbook/contracts';
import type { Context } from 'hono';
import type { z } from 'zod';
import { refused } from '../refusals.ts';
import { missingKey, missingVersion } from './edit-headers.ts';
import { Problem } from './problem.ts';

/** The answer to what no shape fits: which field, what stood there, what is wrong with it. */
export async function refuseShape(
  result: {
    readonly success: boolean;
    readonly target?: string;
    readonly error?: { readonly issues: readonly z.core.$ZodIssue[] };
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
  const faults = shapeFaults(issues, await c.req.json());
  throw new Problem(
    refused('request.invalid', 'The body is not as it should be; errors says where.', { faults }),
  );
}
