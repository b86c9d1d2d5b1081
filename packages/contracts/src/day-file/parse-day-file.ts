import { openJson, withLines } from '../json-file.ts';
import type { FaultyDay, ParsedDay } from './parsed-day.ts';
import { readDayFile } from './read-day-file.ts';

/** Characters of a day file, and lists and objects inside each other: some hundred animals with all their orders. */
const dayFileLimits = { length: 1_000_000, depth: 32 } as const;

/**
 * Reads the text of a day file (docs/day-file.md).
 * @returns the day with what was remarked on the way, or every fault with its field, value and line; never throws
 */
export function parseDayFile(text: string): ParsedDay | FaultyDay {
  const json = openJson(text, dayFileLimits);
  if ('faults' in json) return json;
  const parsed = readDayFile(json.value);
  if ('faults' in parsed) return { faults: withLines(json, parsed.faults) };
  return { ...parsed, warnings: withLines(json, parsed.warnings) };
}
