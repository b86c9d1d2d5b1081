/** A local date of the shop, yyyy-mm-dd, said in full. A date has no time zone to shift it. */
export function dateText(date: string, length: 'long' | 'short' = 'long'): string {
  const options = { weekday: length, day: 'numeric', month: length, timeZone: 'UTC' } as const;
  return new Intl.DateTimeFormat('en', options).format(new Date(`${date}T00:00:00Z`));
}

/** Local time of day in the shop of an instant, as "6:02 am". */
export const timeText = (instant: string, timeZone: string): string =>
  new Intl.DateTimeFormat('en', { hour: 'numeric', minute: '2-digit', timeZone }).format(new Date(instant));
