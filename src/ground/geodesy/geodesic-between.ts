import type { LatLng } from '../../domain/place.ts';
import { DEGREE, type Ellipsoid, WGS84, wholeTurnDegrees } from './ellipsoid.ts';
import { geodesicSeries } from './geodesic-series.ts';

/** The shortest line over the ellipsoid from one position to another. */
export interface Geodesic {
  readonly distanceMetres: number;
  /** At the start, clockwise from true north, 0 to under 360; 0 where both positions are one. */
  readonly bearingDegrees: number;
  /** The direction of travel on arrival. */
  readonly arrivalBearingDegrees: number;
}

const MAX_ROUNDS = 200;
/** A tenth of a micrometre on the ground. */
const SETTLED_RADIANS = 1e-14;

/**
 * The geodesic between two positions in degrees, on WGS 84 unless told (Vincenty, Survey Review XXIII(176), 1975,
 * inverse formula). Good to 0.1 mm over the globe and to micrometres over a venue; the date line and the poles are
 * places like others. Only for positions nearly opposite on the globe does the iteration not settle: then the mean
 * sphere answers, within 0.6 %, which is enough to say that a map is wrong.
 */
export function geodesicBetween(from: LatLng, to: LatLng, ellipsoid: Ellipsoid = WGS84): Geodesic {
  const squash = 1 - ellipsoid.flattening;
  const [sinFrom, cosFrom] = reducedLatitude(from.lat, squash);
  const [sinTo, cosTo] = reducedLatitude(to.lat, squash);
  const northward = sineOfRise(from.lat, to.lat, cosFrom * cosTo * squash);
  const difference = (((to.lng - from.lng + 540) % 360) - 180) * DEGREE;

  let lambda = difference;
  for (let round = 0; round < MAX_ROUNDS; round++) {
    const sinLambda = Math.sin(lambda);
    const cosLambda = Math.cos(lambda);
    const across = cosTo * sinLambda;
    // cos U₁ sin U₂ − sin U₁ cos U₂ cos λ, written so that short lines lose no digits.
    const along = northward + 2 * sinFrom * cosTo * Math.sin(lambda / 2) ** 2;
    const sinSigma = Math.hypot(across, along);
    if (sinSigma === 0) return { distanceMetres: 0, bearingDegrees: 0, arrivalBearingDegrees: 0 };
    const cosSigma = sinFrom * sinTo + cosFrom * cosTo * cosLambda;
    const sigma = Math.atan2(sinSigma, cosSigma);
    const sinAlpha = (cosFrom * cosTo * sinLambda) / sinSigma;
    const cosSquaredAlpha = 1 - sinAlpha * sinAlpha;
    // Along the equator the middle of the arc has no latitude to speak of.
    const cosTwiceMiddle = cosSquaredAlpha < 1e-15 ? 0 : cosSigma - (2 * sinFrom * sinTo) / cosSquaredAlpha;
    const series = geodesicSeries(ellipsoid, cosSquaredAlpha, sinSigma, cosSigma, cosTwiceMiddle);
    const next = difference + series.longitudeFactor * sinAlpha * (sigma + series.longitudeTerm);
    if (Math.abs(next) > Math.PI) break;
    if (Math.abs(next - lambda) < SETTLED_RADIANS) {
      return {
        distanceMetres: series.radiusMetres * (sigma - series.sigmaCorrection),
        bearingDegrees: wholeTurnDegrees(Math.atan2(across, along) / DEGREE),
        arrivalBearingDegrees: wholeTurnDegrees(
          Math.atan2(cosFrom * sinLambda, -sinFrom * cosTo + cosFrom * sinTo * cosLambda) / DEGREE,
        ),
      };
    }
    lambda = next;
  }
  return onMeanSphere(from, to, difference, ellipsoid);
}

/** Distance over the ellipsoid in metres. */
export function distanceMetres(from: LatLng, to: LatLng): number {
  return geodesicBetween(from, to).distanceMetres;
}

/** The sine of the difference of two reduced latitudes, from the sine of the difference of the latitudes. */
function sineOfRise(fromDegrees: number, toDegrees: number, scale: number): number {
  const cosines = Math.cos(fromDegrees * DEGREE) * Math.cos(toDegrees * DEGREE);
  return (scale * Math.sin((toDegrees - fromDegrees) * DEGREE)) / cosines;
}

/** Sine and cosine of the reduced latitude. */
function reducedLatitude(latitudeDegrees: number, squash: number): readonly [number, number] {
  const tangent = squash * Math.tan(latitudeDegrees * DEGREE);
  const cosine = 1 / Math.hypot(1, tangent);
  return [tangent * cosine, cosine];
}

function onMeanSphere(from: LatLng, to: LatLng, difference: number, ellipsoid: Ellipsoid): Geodesic {
  const [sinFrom, cosFrom] = reducedLatitude(from.lat, 1);
  const [sinTo, cosTo] = reducedLatitude(to.lat, 1);
  const across = cosTo * Math.sin(difference);
  const along = cosFrom * sinTo - sinFrom * cosTo * Math.cos(difference);
  const sigma = Math.atan2(Math.hypot(across, along), sinFrom * sinTo + cosFrom * cosTo * Math.cos(difference));
  return {
    distanceMetres: ellipsoid.equatorialRadiusMetres * (1 - ellipsoid.flattening / 3) * sigma,
    bearingDegrees: wholeTurnDegrees(Math.atan2(across, along) / DEGREE),
    arrivalBearingDegrees: wholeTurnDegrees(
      Math.atan2(cosFrom * Math.sin(difference), -sinFrom * cosTo + cosFrom * sinTo * Math.cos(difference)) / DEGREE,
    ),
  };
}
