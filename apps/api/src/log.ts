/** One event as data. No names, addresses, notes, passwords or tokens: ids, counts and codes only. */
interface LogLine {
  readonly level: 'info' | 'warning' | 'error';
  readonly event: string;
  readonly [fact: string]: string | number | boolean | null | undefined;
}

export type Log = (line: LogLine) => void;

/** Writes each event as one line of JSON with the time first. Line breaks in values are escaped by JSON itself. */
export const jsonLog =
  (write: (text: string) => void, clock: () => Date): Log =>
  (line) =>
    write(`${JSON.stringify({ at: clock().toISOString(), ...line })}\n`);

/** The kind of an unknown error, its code and where it was thrown: its text may carry values of a query. */
export function errorFacts(error: unknown): { error: string; code?: string; thrownAt?: string } {
  if (!(error instanceof Error)) return { error: typeof error };
  const cause = error.cause instanceof Error ? error.cause : error;
  const code = (cause as { code?: unknown }).code;
  const frame = error.stack?.split('\n').find((line) => line.trimStart().startsWith('at '));
  return {
    error: cause.constructor.name,
    ...(typeof code === 'string' ? { code } : {}),
    ...(frame === undefined ? {} : { thrownAt: frame.trim() }),
  };
}
