import { millsRatio } from './tail-moments.ts';

export const LOG_ROOT_TWO_PI = 0.9189385332046727;

/** Density of the standard normal distribution. */
export function normalDensity(z: number): number {
  return Math.exp(-0.5 * z * z - LOG_ROOT_TWO_PI);
}

/**
 * Distribution function of the standard normal, Φ(z), full relative accuracy in the lower tail until it underflows
 * (z = −38.5).
 *
 * Middle: Φ(z) = 1/2 + φ(z) (z + z³/3 + z⁵/(3·5) + …), Abramowitz and Stegun, 26.2.11. Tails: Laplace's fraction.
 */
export function normalCdf(z: number): number {
  if (z <= -2) return normalDensity(z) * millsRatio(-z);
  // What is left of 1 there is less than half its last digit.
  if (z >= 8.5) return 1;
  if (z >= 2) return 1 - normalDensity(z) * millsRatio(z);
  let term = z;
  let sum = z;
  for (let k = 3; Math.abs(term) > 1e-17 * Math.abs(sum); k += 2) {
    term *= (z * z) / k;
    sum += term;
  }
  return 0.5 + normalDensity(z) * sum;
}

/** Natural logarithm of Φ(z), of full relative accuracy in both tails at any distance. */
export function logNormalCdf(z: number): number {
  if (z <= -2) return -0.5 * z * z - LOG_ROOT_TWO_PI + Math.log(millsRatio(-z));
  if (z >= 2) return Math.log1p(-normalDensity(z) * millsRatio(z));
  return Math.log(normalCdf(z));
}
