/**
 * Whole days on the proleptic Gregorian calendar, written `YYYY-MM-DD`. A day has no zone and no clock, so no `Date`
 * crosses a room. Strings of this form sort in order of time.
 */
export type Day = string;

/** A month of the year, 1 for January to 12 for December. */
export type Month = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9 | 10 | 11 | 12;

export const MONTHS: readonly Month[] = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];

export const MONTH_NAMES: readonly string[] = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

const MILLISECONDS_PER_DAY = 86_400_000;
const PATTERN = /^(\d{4})-(\d{2})-(\d{2})$/;

/** Whether the text is a day that exists: `2025-02-29` is not one. */
export function isDay(text: string): text is Day {
  const match = PATTERN.exec(text);
  if (match === null) return false;
  const time = Date.parse(`${text}T00:00:00Z`);
  return !Number.isNaN(time) && new Date(time).toISOString().startsWith(text);
}

/** The month a day lies in. */
export function monthOf(day: Day): Month {
  return Number(day.slice(5, 7)) as Month;
}

/** The year a day lies in. */
export function yearOf(day: Day): number {
  return Number(day.slice(0, 4));
}

/** The English name of a month. */
export function monthName(month: Month): string {
  return MONTH_NAMES[month - 1] as string;
}

/** Days from `from` to `to`, negative where `to` is the earlier. */
export function daysBetween(from: Day, to: Day): number {
  return Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / MILLISECONDS_PER_DAY);
}

/** The day `days` after `day` (before it, where negative). */
export function addDays(day: Day, days: number): Day {
  return new Date(Date.parse(`${day}T00:00:00Z`) + days * MILLISECONDS_PER_DAY).toISOString().slice(0, 10);
}

/** A day as a person writes it: `12 Nov 2026`. */
export function formatDay(day: Day): string {
  return `${Number(day.slice(8, 10))} ${monthName(monthOf(day)).slice(0, 3)} ${day.slice(0, 4)}`;
}
