import { addDays, type Day } from '../domain/day.ts';

const MINUTE = 60_000;
const formats = new Map<string, Intl.DateTimeFormat>();

/** The clock on the wall of a zone at an instant (milliseconds since 1970): `08:05`. */
export function wallTime(instant: number, timeZone: string): string {
  return wallDayAndTime(instant, timeZone).slice(11);
}

/** The instant at which a day begins in a zone, in milliseconds since 1970. */
export function startOfDay(day: Day, timeZone: string): number {
  let instant = Date.parse(`${day}T00:00:00Z`);
  // Zones are off by whole minutes and the clocks may change near midnight: two corrections settle it.
  for (let round = 0; round < 2; round++) {
    const shown = Date.parse(`${wallDayAndTime(instant, timeZone).replace(' ', 'T')}:00Z`);
    instant += Date.parse(`${day}T00:00:00Z`) - shown;
  }
  return instant;
}

/** Instants one minute apart through a day of a zone: 1440, an hour fewer or more where the clocks change. */
export function minutesOfDay(day: Day, timeZone: string): number[] {
  const start = startOfDay(day, timeZone);
  const count = Math.round((startOfDay(addDays(day, 1), timeZone) - start) / MINUTE);
  return Array.from({ length: count }, (_, minute) => start + minute * MINUTE);
}

/** `2025-06-21 08:05`. */
function wallDayAndTime(instant: number, timeZone: string): string {
  let format = formats.get(timeZone);
  if (format === undefined) {
    format = new Intl.DateTimeFormat('en-GB', {
      timeZone,
      year: 'numeric',
      month: '2-digit',
      day: '2-digit',
      hour: '2-digit',
      minute: '2-digit',
      hourCycle: 'h23',
    });
    formats.set(timeZone, format);
  }
  const parts = new Map(format.formatToParts(instant).map(({ type, value }) => [type, value]));
  return `${parts.get('year')}-${parts.get('month')}-${parts.get('day')} ${parts.get('hour')}:${parts.get('minute')}`;
}
