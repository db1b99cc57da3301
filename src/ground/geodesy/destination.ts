import type { LatLng } from '../../domain/place.ts';
import { DEGREE, type Ellipsoid, halfTurnDegrees, WGS84 } from './ellipsoid.ts';
import { geodesicSeries } from './geodesic-series.ts';

const MAX_ROUNDS = 100;
const SETTLED_RADIANS = 1e-14;

/**
 * The position `metres` from another along a bearing (degrees clockwise from true north), on WGS 84 unless told
 * (Vincenty, Survey Review XXIII(176), 1975, direct formula). Longitude comes back within −180 to 180.
 */
export function destination(
  from: LatLng,
  bearingDegrees: number,
  metres: number,
  ellipsoid: Ellipsoid = WGS84,
): LatLng {
  if (metres === 0) return { lat: from.lat, lng: from.lng };
  const squash = 1 - ellipsoid.flattening;
  const tanFrom = squash * Math.tan(from.lat * DEGREE);
  const cosFrom = 1 / Math.hypot(1, tanFrom);
  const sinFrom = tanFrom * cosFrom;
  const sinBearing = Math.sin(bearingDegrees * DEGREE);
  const cosBearing = Math.cos(bearingDegrees * DEGREE);
  const start = Math.atan2(tanFrom, cosBearing);
  const sinAlpha = cosFrom * sinBearing;
  const cosSquaredAlpha = 1 - sinAlpha * sinAlpha;

  const seriesAt = (sigma: number) =>
    geodesicSeries(ellipsoid, cosSquaredAlpha, Math.sin(sigma), Math.cos(sigma), Math.cos(2 * start + sigma));
  let sigma = metres / seriesAt(0).radiusMetres;
  let series = seriesAt(sigma);
  for (let round = 0; round < MAX_ROUNDS; round++) {
    const next = metres / series.radiusMetres + series.sigmaCorrection;
    const settled = Math.abs(next - sigma) < SETTLED_RADIANS;
    sigma = next;
    series = seriesAt(sigma);
    if (settled) break;
  }

  const sinSigma = Math.sin(sigma);
  const cosSigma = Math.cos(sigma);
  const inward = sinFrom * sinSigma - cosFrom * cosSigma * cosBearing;
  const lat = Math.atan2(sinFrom * cosSigma + cosFrom * sinSigma * cosBearing, squash * Math.hypot(sinAlpha, inward));
  const lambda = Math.atan2(sinSigma * sinBearing, cosFrom * cosSigma - sinFrom * sinSigma * cosBearing);
  const eastward = lambda - series.longitudeFactor * sinAlpha * (sigma + series.longitudeTerm);
  return { lat: lat / DEGREE, lng: halfTurnDegrees(from.lng + eastward / DEGREE) };
}
