import { type Day, daysBetween } from '../domain/day.ts';

/**
 * The years of a log, counted back from its last day in twelvemonths, so that each holds every season and the last of them
 * is now. Calendar years would begin and end with half a season.
 */
export interface Twelvemonths {
  readonly count: number;
  /** 0 for the first, `count` − 1 for the last; days outside are taken at the nearest. */
  readonly positionOf: (day: Day) => number;
}

const YEAR_DAYS = 365.25;

/** The twelvemonths that these days span; one where there are no days. */
export function twelvemonths(days: readonly Day[]): Twelvemonths {
  const sorted = [...days].sort();
  const [first, last] = [sorted[0], sorted.at(-1)];
  if (first === undefined || last === undefined) return { count: 1, positionOf: () => 0 };
  const before = (day: Day) => Math.floor(Math.max(0, daysBetween(day, last)) / YEAR_DAYS);
  // A first stretch of less than half a year joins the one after it: too short to tell a year by.
  const count = Math.max(1, Math.round(daysBetween(first, last) / YEAR_DAYS));
  return { count, positionOf: (day) => Math.max(0, count - 1 - before(day)) };
}
