import type { LatLng } from '../../domain/place.ts';
import type { PlanePoint } from '../plane/plane-point.ts';
import { destination } from './destination.ts';
import { DEGREE } from './ellipsoid.ts';
import { geodesicBetween } from './geodesic-between.ts';

/** A flat map around one position, metres east and north of it. */
export interface LocalPlane {
  readonly centre: LatLng;
  readonly toPlane: (position: LatLng) => PlanePoint;
  readonly toPosition: (point: PlanePoint) => LatLng;
}

/**
 * The azimuthal equidistant map of the ellipsoid around `centre`: distances and bearings from the centre are the
 * geodesic's own. Between two other points a length is out by at most one part in 6R²/r², r being their distance from
 * the centre: 4 parts in 10⁹ at 1 km, 4 in 10⁷ at 10 km. Poles and the date line are places like others; at a pole
 * "north" is the direction the longitude given for it names.
 */
export function localPlane(centre: LatLng): LocalPlane {
  return {
    centre,
    toPlane: (position) => {
      const { distanceMetres, bearingDegrees } = geodesicBetween(centre, position);
      return {
        x: distanceMetres * Math.sin(bearingDegrees * DEGREE),
        y: distanceMetres * Math.cos(bearingDegrees * DEGREE),
      };
    },
    toPosition: ({ x, y }) => destination(centre, Math.atan2(x, y) / DEGREE, Math.hypot(x, y)),
  };
}
