import type { AuditEntry, AuditInput, AuditSheet, ScaleReading } from '@flitchbook/carcass';
import { z } from 'zod';
import { reading } from '../day-file/quantity-shapes.ts';
import { type FileFault, openJson, withLines } from '../json-file.ts';
import { readShape } from '../shape-faults.ts';
import { listOf, maybe, nameText } from '../wire/parts.ts';

interface EntryParts {
  readonly name: string;
  readonly weight: ScaleReading;
  readonly percent?: string | undefined;
  readonly parts?: readonly EntryParts[] | undefined;
}

const percent = z
  .string('must be text in quotes, such as "24" or "24.5"')
  .regex(/^\d{1,4}(\.\d{1,4})?$/, 'must be a plain decimal number, such as "24.5"');

const line = { name: nameText, weight: reading, percent: maybe(percent) };

const entry: z.ZodType<EntryParts> = z.lazy(() =>
  z.strictObject({ ...line, parts: maybe(listOf(entry, 1000)) }),
);

const input = z.strictObject({ ...line, from: z.enum(['carcass', 'other']).default('carcass') });

const auditFileShape = z.strictObject({
  audit: z.literal(1),
  name: nameText.default('Audit'),
  in: z.array(input).min(1).max(1000),
  out: listOf(entry, 10_000),
});

export interface ParsedAudit {
  readonly name: string;
  readonly sheet: AuditSheet;
}

function entryOf({ name, weight, percent: printed, parts }: EntryParts): AuditEntry {
  return {
    name,
    reading: weight,
    ...(printed === undefined ? {} : { percent: printed }),
    ...(parts === undefined ? {} : { parts: parts.map(entryOf) }),
  };
}

/**
 * Reads the text of an audit file (docs/yields.md).
 * @returns the list of what goes in and comes out, or every fault with its field, value and line; never throws
 */
export function parseAuditFile(text: string): ParsedAudit | { readonly faults: readonly FileFault[] } {
  const json = openJson(text, { length: 1_000_000, depth: 32 });
  if ('faults' in json) return json;
  const shaped = readShape(auditFileShape, json.value);
  if ('faults' in shaped) return { faults: withLines(json, shaped.faults) };
  const { name, in: ins, out } = shaped.value;
  const inputs = ins.map((each): AuditInput => ({ ...entryOf(each), from: each.from }));
  return { name, sheet: { ins: inputs, outs: out.map(entryOf) } };
}
