const indented = (text: string, by: number): string => ' '.repeat(by) + text;

function oneLine(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(oneLine).join(', ')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const fields = Object.entries(value).map(([key, field]) => `${JSON.stringify(key)}: ${oneLine(field)}`);
  return fields.length === 0 ? '{}' : `{ ${fields.join(', ')} }`;
}

interface Place {
  /** levels around it */
  readonly depth: number;
  /** columns taken on the line where it begins, and after it on the line where it ends */
  readonly before: number;
  readonly after: number;
}

function text(value: unknown, width: number, { depth, before, after }: Place): string {
  const flat = oneLine(value);
  const fits = depth * 2 + before + flat.length + after <= width;
  if (typeof value !== 'object' || value === null || fits) return flat;
  const isList = Array.isArray(value);
  const entries = Object.entries(value).map(([key, entry], index, all) => {
    const name = isList ? '' : `${JSON.stringify(key)}: `;
    const comma = index === all.length - 1 ? 0 : 1;
    return name + text(entry, width, { depth: depth + 1, before: name.length, after: comma });
  });
  const lines = entries.map((entry) => indented(entry, (depth + 1) * 2)).join(',\n');
  const [open, close] = isList ? ['[', ']'] : ['{', '}'];
  return `${open}\n${lines}\n${indented(close, depth * 2)}`;
}

/** JSON as the formatter of this repository leaves it: what fits on a line stands on one. */
export const jsonText = (value: unknown, width: number): string =>
  `${text(value, width, { depth: 0, before: 0, after: 0 })}\n`;
