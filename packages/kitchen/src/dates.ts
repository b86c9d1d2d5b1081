const dayMs = 86_400_000;

function instant(date: string): number | undefined {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date);
  if (!match) return undefined;
  const time = Date.UTC(Number(match[1]), Number(match[2]) - 1, Number(match[3]));
  return toDate(time) === date ? time : undefined;
}

const toDate = (time: number): string => new Date(time).toISOString().slice(0, 10);

/** Whether a local date exists: 2031-02-29 does not. */
export const isDate = (date: string): boolean => instant(date) !== undefined;

function known(date: string): number {
  const time = instant(date);
  if (time === undefined)
    throw new RangeError(`date must be a day that exists, as yyyy-mm-dd, got "${date}"`);
  return time;
}

/** @throws RangeError when there is no such day */
export const addDays = (date: string, days: number): string => toDate(known(date) + days * dayMs);

/** Days from one date to a later one; negative when it is earlier. @throws RangeError when there is no such day */
export const daysFromTo = (from: string, to: string): number => (known(to) - known(from)) / dayMs;
