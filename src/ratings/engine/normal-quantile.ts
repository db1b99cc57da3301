import { normalCdf, normalDensity } from './normal-cdf.ts';

/**
 * Quantile of the standard normal: the z with Φ(z) = p. Relative accuracy about 1e-15 for p from 1e-300 to 1 − 1e-16; 0 gives
 * −Infinity and 1 Infinity.
 *
 * A rough start (Abramowitz and Stegun, 26.2.23, error below 4.5e-4), then three of Halley's steps on Φ, each of which
 * triples the correct digits.
 *
 * @throws {RangeError} for p outside 0 to 1
 */
export function normalQuantile(p: number): number {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`normalQuantile needs a probability from 0 to 1, found ${p}`);
  if (p === 0) return Number.NEGATIVE_INFINITY;
  if (p === 1) return Number.POSITIVE_INFINITY;
  // The lower tail keeps relative accuracy; 1 − p is exact for p of at least one half.
  if (p > 0.5) return -normalQuantile(1 - p);
  const t = Math.sqrt(-2 * Math.log(p));
  let z = -(t - (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308))));
  for (let i = 0; i < 3; i++) {
    const step = (normalCdf(z) - p) / normalDensity(z);
    z -= step / (1 + 0.5 * step * z);
  }
  return z;
}
