import type { LatLng } from '../../../src/domain/place.ts';

/** A position on the flat drawing of a venue: metres east and north of its origin. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Axes of WGS 84: equatorial radius in metres, and the square of the first eccentricity. */
const EQUATORIAL_RADIUS_METRES = 6_378_137;
const ECCENTRICITY_SQUARED = 0.00669437999014;
const DEGREE = Math.PI / 180;

/** Turns spots of a drawing into positions, by the ellipsoid's two radii of curvature at the origin. */
export function placedAt(origin: LatLng): (spot: Spot) => LatLng {
  const sine = Math.sin(origin.lat * DEGREE);
  const flatter = 1 - ECCENTRICITY_SQUARED * sine * sine;
  const meridianMetres = (EQUATORIAL_RADIUS_METRES * (1 - ECCENTRICITY_SQUARED)) / flatter ** 1.5;
  const parallelMetres = (EQUATORIAL_RADIUS_METRES / Math.sqrt(flatter)) * Math.cos(origin.lat * DEGREE);
  return (spot) => ({
    lat: rounded(origin.lat + spot.y / (meridianMetres * DEGREE), 6),
    lng: rounded(origin.lng + spot.x / (parallelMetres * DEGREE), 6),
  });
}

/** A number rounded to so many decimals, as it will stand in a file. */
export function rounded(value: number, decimals: number): number {
  const scale = 10 ** decimals;
  // Adding zero turns a negative zero into zero.
  return Math.round(value * scale) / scale + 0;
}

export function distanceBetween(a: Spot, b: Spot): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

/** The spot at a distance along a bearing (degrees clockwise from north). */
export function spotAt(from: Spot, bearingDegrees: number, metres: number): Spot {
  return {
    x: from.x + metres * Math.sin(bearingDegrees * DEGREE),
    y: from.y + metres * Math.cos(bearingDegrees * DEGREE),
  };
}

/** Bearing in degrees clockwise from north, 0 to under 360. */
export function bearingTo(from: Spot, to: Spot): number {
  const degrees = Math.atan2(to.x - from.x, to.y - from.y) / DEGREE;
  return (degrees + 360) % 360;
}

/** Distance from a spot to the stretch between two others. */
export function distanceToStretch(spot: Spot, a: Spot, b: Spot): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const length = dx * dx + dy * dy;
  const share = length === 0 ? 0 : Math.max(0, Math.min(1, ((spot.x - a.x) * dx + (spot.y - a.y) * dy) / length));
  return Math.hypot(spot.x - a.x - share * dx, spot.y - a.y - share * dy);
}

/** Distance from a spot to a line of spots. */
export function distanceToLine(spot: Spot, line: readonly Spot[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < line.length; i++) least = Math.min(least, distanceToStretch(spot, line[i - 1]!, line[i]!));
  return least;
}
