const plainKey = /^[A-Za-z_][A-Za-z0-9_-]*$/;

/** Path of a field: "a.b", or a["odd key"] where the key is not a plain word. */
export const fieldPath = (path: string, key: string): string => {
  if (!plainKey.test(key)) return `${path}[${JSON.stringify(key)}]`;
  return path === '' ? key : `${path}.${key}`;
};

/** "lines[3].portion.um" of its steps. */
export const pathText = (path: readonly PropertyKey[]): string =>
  path.reduce<string>(
    (text, key) => (typeof key === 'number' ? `${text}[${key}]` : fieldPath(text, String(key))),
    '',
  );

const steps = /\["(?:[^"\\]|\\.)*"\]|[^.[\]]+/g;

/** What stands at a path of a value; undefined where nothing does. */
export function valueAt(value: unknown, path: string): unknown {
  let here = value;
  for (const [step] of path.matchAll(steps)) {
    const key = step.startsWith('[') ? (JSON.parse(step.slice(1, -1)) as string) : step;
    if (typeof here !== 'object' || here === null || !Object.hasOwn(here, key)) return undefined;
    here = (here as Readonly<Record<string, unknown>>)[key];
  }
  return here;
}

/** Capital letter and full stop, as every message has them. */
export const sentence = (says: string): string => {
  const text = says.charAt(0).toUpperCase() + says.slice(1);
  return /[.?!]$/.test(text) ? text : `${text}.`;
};
