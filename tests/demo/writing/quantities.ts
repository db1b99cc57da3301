import { rounded } from '../ground/spot.ts';
import { GRAMS_PER_OUNCE } from '../log/bag-parts.ts';

const POINTS = ['N', 'NNE', 'NE', 'ENE', 'E', 'ESE', 'SE', 'SSE', 'S', 'SSW', 'SW', 'WSW', 'W', 'WNW', 'NW', 'NNW'];

/** Metres as a club writes them: `1.4 m`; nothing where there is no figure. */
export function metres(value: number | undefined): string | undefined {
  return value === undefined ? undefined : `${rounded(value, 2)} m`;
}

/** A weight as the trade writes it, in pounds and whole ounces: `23-08`. */
export function poundsAndOunces(grams: number): string {
  const ounces = Math.round(grams / GRAMS_PER_OUNCE);
  return `${Math.floor(ounces / 16)}-${String(ounces % 16).padStart(2, '0')}`;
}

/** A rise over run as `1 in 20`. */
export function oneIn(riseOverRun: number): string {
  return `1 in ${rounded(1 / riseOverRun, 1)}`;
}

/** A slope in degrees as `1 in 2`. */
export function slopeText(degrees: number | undefined): string | undefined {
  return degrees === undefined ? undefined : oneIn(Math.tan((degrees * Math.PI) / 180));
}

/** A bearing as one of sixteen compass points, where it is one. */
export function compassPoint(degrees: number | undefined): string | undefined {
  return degrees === undefined ? undefined : POINTS[Math.round(degrees / 22.5) % 16];
}
