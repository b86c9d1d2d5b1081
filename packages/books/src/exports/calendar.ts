import type { Span } from '../hand-over/windows.ts';

/** A pick-up in a calendar. */
export interface CalendarEntry extends Span {
  readonly id: string;
  readonly title: string;
  readonly place: string;
  /** ISO instant of the last change */
  readonly changedAt: string;
}

/** 2026-11-26T15:00:00Z as 20261126T150000Z. */
const stamp = (instant: string): string => `${instant.slice(0, 19).replace(/[-:]/g, '')}Z`;

/** RFC 5545, 3.3.11. */
const escaped = (text: string): string =>
  text
    .replace(/[\\;,]/g, (mark) => `\\${mark}`)
    .replace(/\r?\n|\r/g, '\\n')
    .replace(/\p{Cc}/gu, '');

/** Lines of 75 octets at most, broken between characters (RFC 5545, 3.1). */
function folded(line: string): string {
  const size = new TextEncoder();
  const parts: string[] = [];
  let part = '';
  let octets = 0;
  for (const character of line) {
    const more = size.encode(character).length;
    if (octets + more > 75) {
      parts.push(part);
      part = ' ';
      octets = 1;
    }
    part += character;
    octets += more;
  }
  return [...parts, part].join('\r\n');
}

/** An iCalendar feed (RFC 5545). Instants are in UTC, so that no reader has to know the shop's clock. */
export function calendarFeed(name: string, entries: readonly CalendarEntry[]): string {
  const events = entries.flatMap(({ id, title, place, startsAt, endsAt, changedAt }) => [
    'BEGIN:VEVENT',
    `UID:${escaped(id)}`,
    `DTSTAMP:${stamp(changedAt)}`,
    `DTSTART:${stamp(startsAt)}`,
    `DTEND:${stamp(endsAt)}`,
    `SUMMARY:${escaped(title)}`,
    `LOCATION:${escaped(place)}`,
    'END:VEVENT',
  ]);
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Flitchbook//pick-ups//EN',
    `NAME:${escaped(name)}`,
    ...events,
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}
