import { getPosition, getTimes } from 'suncalc';
import type { Day, Month } from '../domain/day.ts';
import { MONTHS } from '../domain/day.ts';
import type { LatLng } from '../domain/place.ts';
import { halfTurnDegrees } from './geodesy/ellipsoid.ts';
import type { SunAtPeg } from './survey.ts';
import { minutesOfDay, startOfDay, wallTime } from './wall-time.ts';

/** The sun blinds when it stands within this angle of the line to the float (common practice, no source). */
const SUN_WITHIN_DEGREES = 30;
/** … and no higher than this above the horizon: higher, the peak of a cap deals with it (common practice, no source). */
const SUN_BELOW_DEGREES = 25;

const MINUTE = 60_000;

/** Where the sun stands in one minute of a day. */
interface SunMinute {
  readonly instant: number;
  readonly bearingDegrees: number;
}

/** The low sun's way through one day over one place, as it can be held against many pegs. */
export interface SunDay {
  readonly day: Day;
  readonly timeZone: string;
  /** On the clock of the zone; null where the sun does not rise or set that day. */
  readonly sunrise: string | null;
  readonly sunset: string | null;
  /** The minutes in which the sun is up and low enough to blind, in order. */
  readonly lowMinutes: readonly SunMinute[];
}

/** Where the sun stands: bearing clockwise from true north, altitude as seen, refraction included. */
export function sunPosition(
  instant: number,
  { lat, lng }: LatLng,
): { bearingDegrees: number; altitudeDegrees: number } {
  const { azimuth, altitude } = getPosition(new Date(instant), lat, lng);
  return { bearingDegrees: azimuth, altitudeDegrees: altitude };
}

/** Follows the sun through a day at a place. Over a venue of 2 km the sun's place differs by 0.02°, so one day does for all its pegs. */
export function sunDay(day: Day, at: LatLng, timeZone: string): SunDay {
  const noon = startOfDay(day, timeZone) + 12 * 60 * MINUTE;
  const { sunrise, sunset } = getTimes(new Date(noon), at.lat, at.lng);
  const shown = (time: Date | null) =>
    time === null ? null : wallTime(Math.round(time.getTime() / MINUTE) * MINUTE, timeZone);
  const lowMinutes = minutesOfDay(day, timeZone).flatMap((instant) => {
    const { bearingDegrees, altitudeDegrees } = sunPosition(instant, at);
    return altitudeDegrees >= 0 && altitudeDegrees <= SUN_BELOW_DEGREES ? [{ instant, bearingDegrees }] : [];
  });
  return { day, timeZone, sunrise: shown(sunrise), sunset: shown(sunset), lowMinutes };
}

/** The spells of a day in which the sun blinds an angler facing that way, on the zone's clock, from the first such minute to the last. */
export function sunInFace(
  facingDegrees: number,
  { lowMinutes, timeZone }: SunDay,
): readonly (readonly [string, string])[] {
  const blinding = lowMinutes.filter(
    ({ bearingDegrees }) => Math.abs(halfTurnDegrees(bearingDegrees - facingDegrees)) <= SUN_WITHIN_DEGREES,
  );
  const spells: [number, number][] = [];
  for (const { instant } of blinding) {
    const last = spells[spells.length - 1];
    if (last !== undefined && instant - last[1] <= MINUTE) last[1] = instant;
    else spells.push([instant, instant]);
  }
  return spells.map(([from, to]) => [wallTime(from, timeZone), wallTime(to, timeZone)]);
}

/** The sun's days on the fifteenth of each month of a year. */
export function sunYear(year: number, at: LatLng, timeZone: string): ReadonlyMap<Month, SunDay> {
  const dayOf = (month: Month) => `${year}-${String(month).padStart(2, '0')}-15`;
  return new Map(MONTHS.map((month) => [month, sunDay(dayOf(month), at, timeZone)]));
}

/** The table of a peg's sun by month. */
export function sunByMonth(facingDegrees: number, year: ReadonlyMap<Month, SunDay>): readonly SunAtPeg[] {
  return [...year].map(([month, day]) => ({
    month,
    sunrise: day.sunrise,
    sunset: day.sunset,
    inFace: sunInFace(facingDegrees, day),
  }));
}
