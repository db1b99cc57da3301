import type { Day } from '../domain/day.ts';

/** The day on the wall of whoever reads, not the one in Greenwich. */
export function localDay(now: Date): Day {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
