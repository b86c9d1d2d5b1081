/** What a command may touch. */
export interface Surroundings {
  /** "-" is standard input. @throws Error when there is no such file */
  readonly readFile: (name: string) => string;
  readonly print: (text: string) => void;
  readonly complain: (text: string) => void;
}

/** All is well, something is short or does not balance, bad input or usage, fault of the program. */
export const exitStatus = { fine: 0, short: 1, badInput: 2, fault: 3 } as const;

interface Fault {
  readonly at: string;
  readonly value?: unknown;
  readonly says: string;
  readonly line?: number;
}

/** "day.json:12: orders[0].lines[2].count: Must be ... (got 3)". */
export function faultText(name: string, { at, value, says, line }: Fault): string {
  const place = line === undefined ? name : `${name}:${line}`;
  return `${place}: ${at}: ${says} (got ${JSON.stringify(value) ?? 'nothing'})`;
}

/** @throws RangeError that names the option, unless the text is a plain number between the bounds */
export function readNumber(name: string, text: string, min: number, max: number): number {
  const value = /^\d+(\.\d+)?$/.test(text) ? Number(text) : Number.NaN;
  if (!(value >= min && value <= max))
    throw new RangeError(`--${name} must be a number from ${min} to ${max}, got "${text}"`);
  return value;
}
