import { type Day, daysBetween } from '../../domain/day.ts';
import type { GaugeReading } from '../../domain/venue.ts';

/** A reading of the gauge's level counts for days up to this far from it, before or after. */
const LEVEL_HOLDS_DAYS = 7;

/** A level above datum, and the day it was read. */
export interface LevelReading {
  readonly metres: number;
  readonly day: Day;
}

/** The readings of one water that give a level, in order of time. */
export function levelReadings(gauge: readonly GaugeReading[], water: string): readonly LevelReading[] {
  return gauge
    .flatMap((reading) =>
      reading.water === water && reading.levelMetres !== undefined
        ? [{ metres: reading.levelMetres, day: reading.day }]
        : [],
    )
    .sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0));
}

/** The reading nearest in time to a day, the earlier of two as near; null where none lies within seven days. */
export function levelOnDay(readings: readonly LevelReading[], day: Day): LevelReading | null {
  let low = 0;
  let high = readings.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (readings[middle]!.day <= day) low = middle + 1;
    else high = middle;
  }
  const [before, after] = [readings[low - 1], readings[low]];
  const gap = (reading: LevelReading | undefined) =>
    reading === undefined ? Number.POSITIVE_INFINITY : Math.abs(daysBetween(reading.day, day));
  const nearest = gap(before) <= gap(after) ? before : after;
  return nearest !== undefined && gap(nearest) <= LEVEL_HOLDS_DAYS ? nearest : null;
}

/** The latest reading up to a day, however old; null where there is none. */
export function latestLevel(readings: readonly LevelReading[], day: Day): LevelReading | null {
  return readings.findLast((reading) => reading.day <= day) ?? null;
}
