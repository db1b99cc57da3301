import { addDays, type Day } from '../../domain/day.ts';

/** The day it is where the day begins first (UTC+14): a phone in another zone than this machine is not in the future. */
export function latestDayOnEarth(): Day {
  const now = new Date();
  return now.getUTCHours() >= 10 ? addDays(now.toISOString().slice(0, 10), 1) : now.toISOString().slice(0, 10);
}
