import { addDays, type Day } from '../../domain/day.ts';

/** One all-day entry of a calendar. */
export interface CalendarEntry {
  /** Stable from build to build and without a day in it, so that an entry that falls due later moves in a calendar. */
  readonly uid: string;
  readonly day: Day;
  readonly summary: string;
  readonly description: string;
  readonly url?: string;
}

const MAXIMUM_OCTETS = 75;

/**
 * An iCalendar file (RFC 5545) of all-day entries. `stampDay` is the day of the data: a build has no clock.
 */
export function iCalendar(name: string, stampDay: Day, entries: readonly CalendarEntry[]): string {
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Peg Atlas//Inspection rounds//EN',
    'CALSCALE:GREGORIAN',
    `X-WR-CALNAME:${escapeText(name)}`,
    ...entries.flatMap((entry) => [
      'BEGIN:VEVENT',
      `UID:${escapeText(entry.uid)}`,
      `DTSTAMP:${basicDay(stampDay)}T000000Z`,
      `DTSTART;VALUE=DATE:${basicDay(entry.day)}`,
      `DTEND;VALUE=DATE:${basicDay(addDays(entry.day, 1))}`,
      `SUMMARY:${escapeText(entry.summary)}`,
      `DESCRIPTION:${escapeText(entry.description)}`,
      ...(entry.url === undefined ? [] : [`URL:${entry.url}`]),
      'TRANSP:TRANSPARENT',
      // At nine in the morning of the day before.
      'BEGIN:VALARM',
      'ACTION:DISPLAY',
      'TRIGGER:-PT15H',
      `DESCRIPTION:${escapeText(entry.summary)}`,
      'END:VALARM',
      'END:VEVENT',
    ]),
    'END:VCALENDAR',
  ];
  return `${lines.map(foldLine).join('\r\n')}\r\n`;
}

function basicDay(day: Day): string {
  return day.replaceAll('-', '');
}

function escapeText(text: string): string {
  return text
    .replaceAll('\\', '\\\\')
    .replaceAll(';', '\\;')
    .replaceAll(',', '\\,')
    .replace(/\r\n?|\n/g, '\\n');
}

/** Folds at 75 octets, never inside a character (RFC 5545, 3.1). */
function foldLine(line: string): string {
  const parts: string[] = [];
  let part = '';
  let octets = 0;
  for (const character of line) {
    const size = Buffer.byteLength(character);
    if (octets + size > MAXIMUM_OCTETS) {
      parts.push(part);
      part = ' ';
      octets = 1;
    }
    part += character;
    octets += size;
  }
  return [...parts, part].join('\r\n');
}
