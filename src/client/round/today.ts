import type { Day } from '../../domain/day.ts';

/** The day on this phone's calendar. */
export function localDay(now = new Date()): Day {
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
