import type { Day } from '../domain/day.ts';
import type { Peg } from '../domain/peg.ts';
import type { LatLng } from '../domain/place.ts';
import type { Sounding } from '../domain/venue.ts';
import { destination } from '../ground/geodesy/destination.ts';

/**
 * Where a depth was taken that is written as a distance from a peg: from where the platform stood that day, so that a peg
 * moved later does not move it. `as-today` where the platform stands as it did, and null where the record does not say
 * where it stood.
 */
export function soundingPlace(
  { at, facingDegrees, moved = [], retired }: Peg,
  { bearingDegrees, distanceMetres }: NonNullable<Sounding['fromPeg']>,
  day: Day,
): LatLng | 'as-today' | null {
  const nextMove = moved.find(({ on }) => day < on);
  if (nextMove === undefined && retired === undefined) return 'as-today';
  const from = nextMove === undefined ? at : nextMove.wasAt;
  if (from === undefined) return null;
  const facing = moved.find(({ on, wasFacingDegrees }) => day < on && wasFacingDegrees !== undefined)?.wasFacingDegrees;
  return destination(from, bearingDegrees ?? facing ?? facingDegrees, distanceMetres);
}
