import { Temporal } from 'temporal-polyfill';
import { type Made, made, slip } from '../slips.ts';

/** A time to come, in the shop's own clock: date yyyy-mm-dd, times hh:mm. */
export interface LocalWindow {
  readonly date: string;
  readonly from: string;
  readonly to: string;
}

/** The shop's usual week. Monday is 1 (ISO 8601). */
export interface WeeklyWindow {
  readonly weekday: number;
  readonly from: string;
  readonly to: string;
  /** orders that fit into it */
  readonly most: number;
}

export interface Span {
  /** ISO instants */
  readonly startsAt: string;
  readonly endsAt: string;
}

const clockTime = /^([01]\d|2[0-3]):[0-5]\d$/;

/** The instant of a local time: one that the clocks skip is refused; of one that comes twice, the first or the last. */
function instantOf(
  at: 'from' | 'to',
  { date, ...window }: LocalWindow,
  timeZone: string,
): Made<Temporal.Instant> {
  const time = window[at];
  if (!clockTime.test(time)) return slip(at, time, 'must be a time of day, hh:mm');
  try {
    const local = Temporal.PlainDateTime.from(`${date}T${time}`, { overflow: 'reject' });
    const zoned = local.toZonedDateTime(timeZone, { disambiguation: at === 'from' ? 'earlier' : 'later' });
    if (!zoned.toPlainDateTime().equals(local))
      return slip(at, time, `does not exist on ${date}: the clocks go forward over it`);
    return made(zoned.toInstant());
  } catch {
    return slip('date', date, `is not a day in ${timeZone}`);
  }
}

/** The instants of a window in the shop's time zone. */
export function spanOf(window: LocalWindow, timeZone: string): Made<Span> {
  const from = instantOf('from', window, timeZone);
  if (!from.ok) return from;
  const to = instantOf('to', window, timeZone);
  if (!to.ok) return to;
  if (window.to <= window.from) return slip('to', window.to, `must be after ${window.from}`);
  return made({ startsAt: from.value.toString(), endsAt: to.value.toString() });
}

/** The shop's windows of the days from `date` on. Those that a change of the clocks swallows are left out. */
export function windowsFrom(
  weekly: readonly WeeklyWindow[],
  { date, days, timeZone }: { readonly date: string; readonly days: number; readonly timeZone: string },
): (LocalWindow & { readonly most: number })[] {
  const first = Temporal.PlainDate.from(date);
  return Array.from({ length: days }, (_, ahead) => first.add({ days: ahead })).flatMap((day) =>
    weekly
      .filter(({ weekday }) => weekday === day.dayOfWeek)
      .map(({ from, to, most }) => ({ date: day.toString(), from, to, most }))
      .filter((window) => spanOf(window, timeZone).ok),
  );
}

/** The shop's date at an instant, yyyy-mm-dd. */
export const localDateAt = (instant: string, timeZone: string): string =>
  Temporal.Instant.from(instant).toZonedDateTimeISO(timeZone).toPlainDate().toString();

export const addDays = (date: string, days: number): string =>
  Temporal.PlainDate.from(date).add({ days }).toString();

/** Whole days from one local date to another. */
export const daysBetween = (from: string, to: string): number =>
  Temporal.PlainDate.from(from).until(Temporal.PlainDate.from(to), { largestUnit: 'day' }).days;
