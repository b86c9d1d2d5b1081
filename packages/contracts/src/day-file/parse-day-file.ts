import type { DayFileFault, FaultyDay, ParsedDay } from './parsed-day.ts';
import { readDayFile } from './read-day-file.ts';
import { type JsonText, readJson } from './read-json.ts';

/** Characters of a day file, and lists and objects inside each other: some hundred animals with all their orders. */
const dayFileLimits = { length: 1_000_000, depth: 32 } as const;

/** The line where the field stands, or the nearest thing around it. */
function lineOf(text: JsonText, at: string): number | undefined {
  for (
    let path = at;
    path !== '';
    path = path.slice(0, Math.max(0, path.lastIndexOf('.'), path.lastIndexOf('[')))
  ) {
    const place = text.placeOf(path);
    if (place) return place.line;
  }
  return undefined;
}

function withLine(text: JsonText, fault: DayFileFault): DayFileFault {
  const line = lineOf(text, fault.at);
  return line === undefined ? fault : { ...fault, line };
}

/**
 * Reads the text of a day file (docs/day-file.md).
 * @returns the day with what was remarked on the way, or every fault with its field, value and line; never throws
 */
export function parseDayFile(text: string): ParsedDay | FaultyDay {
  const json = readJson(text, dayFileLimits);
  if ('fault' in json) {
    const { line, column, found, says } = json.fault;
    return { faults: [{ at: `line ${line}, column ${column}`, value: found, says, line }] };
  }
  const parsed = readDayFile(json.value);
  if ('faults' in parsed) return { faults: parsed.faults.map((fault) => withLine(json, fault)) };
  return { ...parsed, warnings: parsed.warnings.map((warning) => withLine(json, warning)) };
}
