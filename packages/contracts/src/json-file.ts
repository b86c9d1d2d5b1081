import { type JsonLimits, type JsonText, readJson } from './day-file/read-json.ts';
import type { FieldFault } from './wire/problems.ts';

/** What is wrong in a file: the field as the file calls it, its value, a sentence, and the line of the text. */
export interface FileFault extends FieldFault {
  readonly line?: number;
}

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

/** The faults, each with the line of the text where its field stands. */
export const withLines = (text: JsonText, faults: readonly FieldFault[]): FileFault[] =>
  faults.map((fault) => {
    const line = lineOf(text, fault.at);
    return line === undefined ? fault : { ...fault, line };
  });

/** The JSON of a file, or the one fault for which it is none; never throws. */
export function openJson(
  text: string,
  limits: JsonLimits,
): JsonText | { readonly faults: readonly FileFault[] } {
  const json = readJson(text, limits);
  if (!('fault' in json)) return json;
  const { line, column, found, says } = json.fault;
  return { faults: [{ at: `line ${line}, column ${column}`, value: found, says, line }] };
}
