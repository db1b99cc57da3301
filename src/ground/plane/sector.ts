import { DEGREE, halfTurnDegrees } from '../geodesy/ellipsoid.ts';
import type { PlanePoint } from './plane-point.ts';
import { distanceBetweenSegments, footOnSegment } from './segment-distance.ts';

/** A slice of a disc. */
export interface Sector {
  readonly apex: PlanePoint;
  /** The direction of its middle, degrees clockwise from the plane's north. */
  readonly bearingDegrees: number;
  /** Full angle; 360 or more is the whole disc. */
  readonly angleDegrees: number;
  readonly radiusMetres: number;
}

/** The point at a distance along a bearing of the plane. */
export function pointAlong(from: PlanePoint, bearingDegrees: number, metres: number): PlanePoint {
  return {
    x: from.x + metres * Math.sin(bearingDegrees * DEGREE),
    y: from.y + metres * Math.cos(bearingDegrees * DEGREE),
  };
}

/** The bearing of the plane from one point to another, −180 to 180. */
export function planeBearingDegrees(from: PlanePoint, to: PlanePoint): number {
  return Math.atan2(to.x - from.x, to.y - from.y) / DEGREE;
}

/** Whether a point lies in the directions a sector covers, however far off; its apex does. */
export function isWithinAngle({ apex, bearingDegrees, angleDegrees }: Sector, p: PlanePoint): boolean {
  if (angleDegrees >= 360 || (p.x === apex.x && p.y === apex.y)) return true;
  return Math.abs(halfTurnDegrees(planeBearingDegrees(apex, p) - bearingDegrees)) <= angleDegrees / 2;
}

/**
 * Distance from a sector to the segment from `a` to `b`, 0 where they meet. Exact: the nearest point of the sector lies
 * on a straight edge (segment to segment), or on the arc. On the arc it is in line with the apex and either an end of
 * the segment or the foot of the apex on it. A segment that enters and leaves through the arc has that foot inside.
 */
export function sectorToSegmentMetres(sector: Sector, a: PlanePoint, b: PlanePoint): number {
  const { apex, radiusMetres, bearingDegrees, angleDegrees } = sector;
  let least = Number.POSITIVE_INFINITY;
  for (const p of [a, b, footOnSegment(apex, a, b)]) {
    if (!isWithinAngle(sector, p)) continue;
    least = Math.min(least, Math.max(0, Math.hypot(p.x - apex.x, p.y - apex.y) - radiusMetres));
  }
  for (const turn of [-angleDegrees / 2, angleDegrees / 2]) {
    const corner = pointAlong(apex, bearingDegrees + turn, radiusMetres);
    least = Math.min(least, distanceBetweenSegments(apex, corner, a, b));
  }
  return least;
}
