import type { LatLng } from '../../domain/place.ts';
import { AIRY_1830, DEGREE } from './ellipsoid.ts';

/** A place on the National Grid. */
export interface GridPosition {
  readonly eastingMetres: number;
  readonly northingMetres: number;
}

// The National Grid's projection (Ordnance Survey, A Guide to Coordinate Systems in Great Britain, annex A).
const SCALE = 0.9996012717;
const ORIGIN_LATITUDE = 49 * DEGREE;
const CENTRAL_MERIDIAN = -2 * DEGREE;
const FALSE_EASTING_METRES = 400_000;
const FALSE_NORTHING_METRES = -100_000;

const A = AIRY_1830.equatorialRadiusMetres * SCALE;
const B = A * (1 - AIRY_1830.flattening);
const E2 = AIRY_1830.flattening * (2 - AIRY_1830.flattening);
const N = AIRY_1830.flattening / (2 - AIRY_1830.flattening);
const SETTLED_METRES = 1e-5;

/** OSGB36 latitude and longitude to the National Grid (the guide's annex C.1, after Redfearn, 1948); good to 1 mm over Great Britain. */
export function positionToGrid({ lat, lng }: LatLng): GridPosition {
  const phi = lat * DEGREE;
  const p = lng * DEGREE - CENTRAL_MERIDIAN;
  const sin = Math.sin(phi);
  const cos = Math.cos(phi);
  const tan2 = Math.tan(phi) ** 2;
  const { nu, rho, eta2 } = radii(sin);
  const north =
    meridianArcMetres(phi) +
    FALSE_NORTHING_METRES +
    (nu / 2) * sin * cos * p ** 2 +
    (nu / 24) * sin * cos ** 3 * (5 - tan2 + 9 * eta2) * p ** 4 +
    (nu / 720) * sin * cos ** 5 * (61 - 58 * tan2 + tan2 ** 2) * p ** 6;
  const east =
    FALSE_EASTING_METRES +
    nu * cos * p +
    (nu / 6) * cos ** 3 * (nu / rho - tan2) * p ** 3 +
    (nu / 120) * cos ** 5 * (5 - 18 * tan2 + tan2 ** 2 + 14 * eta2 - 58 * tan2 * eta2) * p ** 5;
  return { eastingMetres: east, northingMetres: north };
}

/** National Grid to OSGB36 latitude and longitude (the guide's annex C.2); good to 1 mm, on St Kilda to 5 mm. */
export function gridToPosition({ eastingMetres, northingMetres }: GridPosition): LatLng {
  let phi = ORIGIN_LATITUDE;
  let rest = northingMetres - FALSE_NORTHING_METRES;
  // A dozen rounds settle anywhere on the grid; a hundred end the loop on any number at all.
  for (let round = 0; round < 100 && Math.abs(rest) >= SETTLED_METRES; round++) {
    phi += rest / A;
    rest = northingMetres - FALSE_NORTHING_METRES - meridianArcMetres(phi);
  }
  const { nu, rho, eta2 } = radii(Math.sin(phi));
  const tan = Math.tan(phi);
  const tan2 = tan * tan;
  const secant = 1 / Math.cos(phi);
  const x = eastingMetres - FALSE_EASTING_METRES;
  const lat =
    phi -
    (tan / (2 * rho * nu)) * x ** 2 +
    (tan / (24 * rho * nu ** 3)) * (5 + 3 * tan2 + eta2 - 9 * tan2 * eta2) * x ** 4 -
    (tan / (720 * rho * nu ** 5)) * (61 + 90 * tan2 + 45 * tan2 ** 2) * x ** 6;
  const lng =
    CENTRAL_MERIDIAN +
    (secant / nu) * x -
    (secant / (6 * nu ** 3)) * (nu / rho + 2 * tan2) * x ** 3 +
    (secant / (120 * nu ** 5)) * (5 + 28 * tan2 + 24 * tan2 ** 2) * x ** 5 -
    (secant / (5040 * nu ** 7)) * (61 + 662 * tan2 + 1320 * tan2 ** 2 + 720 * tan2 ** 3) * x ** 7;
  return { lat: lat / DEGREE, lng: lng / DEGREE };
}

/** Radii of curvature across and along the meridian, scaled, and η². */
function radii(sin: number): { readonly nu: number; readonly rho: number; readonly eta2: number } {
  const flatter = 1 - E2 * sin * sin;
  const nu = A / Math.sqrt(flatter);
  const rho = (A * (1 - E2)) / flatter ** 1.5;
  return { nu, rho, eta2: nu / rho - 1 };
}

/** Length of the meridian from the true origin, scaled. */
function meridianArcMetres(phi: number): number {
  const less = phi - ORIGIN_LATITUDE;
  const more = phi + ORIGIN_LATITUDE;
  return (
    B *
    ((1 + N + (5 / 4) * N ** 2 + (5 / 4) * N ** 3) * less -
      (3 * N + 3 * N ** 2 + (21 / 8) * N ** 3) * Math.sin(less) * Math.cos(more) +
      ((15 / 8) * N ** 2 + (15 / 8) * N ** 3) * Math.sin(2 * less) * Math.cos(2 * more) -
      (35 / 24) * N ** 3 * Math.sin(3 * less) * Math.cos(3 * more))
  );
}
