import type { Ellipsoid } from './ellipsoid.ts';

/** The terms both of Vincenty's formulas share. */
export interface GeodesicSeries {
  /** b·A: metres for a radian of arc on the auxiliary sphere, before the correction. */
  readonly radiusMetres: number;
  /** Δσ, radians. */
  readonly sigmaCorrection: number;
  /** (1 − C)·f. */
  readonly longitudeFactor: number;
  /** C sin σ [cos 2σm + C cos σ (−1 + 2 cos² 2σm)]. */
  readonly longitudeTerm: number;
}

/** Vincenty's equations 3, 4, 6, 10 and 11 (Survey Review XXIII(176), 1975), for an arc σ whose azimuth at the equator is α. */
export function geodesicSeries(
  { equatorialRadiusMetres, flattening }: Ellipsoid,
  cosSquaredAlpha: number,
  sinSigma: number,
  cosSigma: number,
  cosTwiceMiddle: number,
): GeodesicSeries {
  const polarRadiusMetres = equatorialRadiusMetres * (1 - flattening);
  const u = (cosSquaredAlpha * (equatorialRadiusMetres ** 2 - polarRadiusMetres ** 2)) / polarRadiusMetres ** 2;
  const a = 1 + (u / 16_384) * (4096 + u * (-768 + u * (320 - 175 * u)));
  const b = (u / 1024) * (256 + u * (-128 + u * (74 - 47 * u)));
  const c = (flattening / 16) * cosSquaredAlpha * (4 + flattening * (4 - 3 * cosSquaredAlpha));
  const middleSquared = cosTwiceMiddle * cosTwiceMiddle;
  return {
    radiusMetres: polarRadiusMetres * a,
    sigmaCorrection:
      b *
      sinSigma *
      (cosTwiceMiddle +
        (b / 4) *
          (cosSigma * (2 * middleSquared - 1) -
            (b / 6) * cosTwiceMiddle * (4 * sinSigma * sinSigma - 3) * (4 * middleSquared - 3))),
    longitudeFactor: (1 - c) * flattening,
    longitudeTerm: c * sinSigma * (cosTwiceMiddle + c * cosSigma * (2 * middleSquared - 1)),
  };
}
