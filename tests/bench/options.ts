import { parseArgs } from 'node:util';

/** Whole numbers from the command line by name, each with what it is if left out, and whether JSON is wanted. */
export function readOptions<Name extends string>(usual: Readonly<Record<Name, number>>) {
  const names = Object.keys(usual) as Name[];
  const { values } = parseArgs({
    options: {
      json: { type: 'boolean' },
      ...Object.fromEntries(names.map((name) => [name, { type: 'string' }])),
    },
  });
  const numbers = { ...usual } as Record<Name, number>;
  const given = values as Readonly<Record<string, unknown>>;
  for (const name of names) {
    if (given[name] === undefined) continue;
    const number = Number(given[name]);
    if (!Number.isSafeInteger(number) || number < 0)
      throw new RangeError(`--${name} must be a whole number of 0 or more, got "${String(given[name])}"`);
    numbers[name] = number;
  }
  return { ...numbers, json: given['json'] === true };
}

/** The figure that so large a part of the figures is not above. */
export function quantile(figures: readonly number[], part: number): number {
  const sorted = figures.toSorted((left, right) => left - right);
  return sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? Number.NaN;
}

export const median = (figures: readonly number[]): number => quantile(figures, 0.5);
