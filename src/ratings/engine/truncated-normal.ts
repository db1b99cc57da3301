import { LOG_ROOT_TWO_PI, logNormalCdf, normalCdf, normalDensity } from './normal-cdf.ts';
import { tailRatiosInPlace } from './tail-moments.ts';

/** The standard normal x cut to an interval. Central moments, and the chance of the interval before the cut. */
export interface TruncatedNormal {
  logProbability: number;
  mean: number;
  /** 1 − variance: what a row known to lie in the interval tells about its mean, 0 to 1 of an exact row. */
  information: number;
  thirdMoment: number;
  fourthMoment: number;
}

const ratios = new Float64Array(4);

/**
 * Moments of the standard normal cut to (a, b), a < b, either bound infinite, written into `into` so that a fit of many
 * rows allocates nothing. Stable in the far tails and for narrow intervals: absolute accuracy about 1e-13 in each moment.
 *
 * Formulas: Johnson, Kotz and Balakrishnan, Continuous Univariate Distributions 1, 1994, 13.10; the tail by Laplace's
 * continued fraction, a short interval by Gauss–Legendre quadrature, since differences of Φ would cancel there.
 */
export function truncatedNormalInPlace(into: TruncatedNormal, a: number, b: number): void {
  if (a === Number.NEGATIVE_INFINITY && b === Number.POSITIVE_INFINITY) {
    Object.assign(into, { logProbability: 0, mean: 0, information: 0, thirdMoment: 0, fourthMoment: 3 });
    return;
  }
  // Work with the interval that leans to the right, and mirror the odd moments afterwards.
  if (a + b < 0) {
    truncatedNormalInPlace(into, -b, -a);
    into.mean = -into.mean;
    into.thirdMoment = -into.thirdMoment;
    return;
  }
  const width = b - a;
  if (width <= 2 && width * b <= 12) shortInterval(into, a, width);
  else if (a >= 2) tailInterval(into, a, b);
  else wideInterval(into, a, b);
}

/** a below 2 and a wide interval: the chance is no small difference, textbook formulas hold. */
function wideInterval(into: TruncatedNormal, a: number, b: number): void {
  const isOpen = b === Number.POSITIVE_INFINITY;
  const chance = isOpen ? normalCdf(-a) : normalCdf(b) - normalCdf(a);
  const p = a === Number.NEGATIVE_INFINITY ? 0 : normalDensity(a) / chance;
  const q = isOpen ? 0 : normalDensity(b) / chance;
  const ap = p === 0 ? 0 : a * p;
  const bq = q === 0 ? 0 : b * q;
  const mean = p - q;
  const second = 1 + ap - bq;
  const third = 2 * mean + (p === 0 ? 0 : a * ap) - (q === 0 ? 0 : b * bq);
  const fourth = 3 * second + (p === 0 ? 0 : a * a * ap) - (q === 0 ? 0 : b * b * bq);
  into.logProbability = isOpen ? logNormalCdf(-a) : Math.log(chance);
  into.information = mean * mean - ap + bq;
  centre(into, mean, second, third, fourth);
}

/** The whole interval in the upper tail: moments of the distance s = x − a beyond the near bound. */
function tailInterval(into: TruncatedNormal, a: number, b: number): void {
  tailRatiosInPlace(ratios, a);
  let zeroth = 1 / (a + ratios[0]!);
  let first = zeroth * ratios[0]!;
  let second = first * ratios[1]!;
  let third = second * ratios[2]!;
  let fourth = third * ratios[3]!;
  if (b !== Number.POSITIVE_INFINITY) {
    // Take away what lies beyond b, less than exp(−6) of the whole.
    const width = b - a;
    const beyond = Math.exp(-0.5 * width * (a + b));
    tailRatiosInPlace(ratios, b);
    const b0 = beyond / (b + ratios[0]!);
    const b1 = b0 * ratios[0]!;
    const b2 = b1 * ratios[1]!;
    const b3 = b2 * ratios[2]!;
    const b4 = b3 * ratios[3]!;
    zeroth -= b0;
    first -= b1 + width * b0;
    second -= b2 + width * (2 * b1 + width * b0);
    third -= b3 + width * (3 * b2 + width * (3 * b1 + width * b0));
    fourth -= b4 + width * (4 * b3 + width * (6 * b2 + width * (4 * b1 + width * b0)));
  }
  into.logProbability = -0.5 * a * a - LOG_ROOT_TWO_PI + Math.log(zeroth);
  fromDistances(into, a, first / zeroth, second / zeroth, third / zeroth, fourth / zeroth);
}

/** Positive nodes and weights of the 20-point Gauss–Legendre rule on (−1, 1), found once by Newton's method. */
const LEGENDRE = legendreRule(20);

function shortInterval(into: TruncatedNormal, a: number, width: number): void {
  let zeroth = 0;
  let first = 0;
  let second = 0;
  let third = 0;
  let fourth = 0;
  for (const { node, weight } of LEGENDRE) {
    const s = 0.5 * width * (1 + node);
    const mass = 0.5 * width * weight * Math.exp(-s * (a + 0.5 * s));
    zeroth += mass;
    first += mass * s;
    second += mass * s * s;
    third += mass * s * s * s;
    fourth += mass * s * s * s * s;
  }
  into.logProbability = -0.5 * a * a - LOG_ROOT_TWO_PI + Math.log(zeroth);
  fromDistances(into, a, first / zeroth, second / zeroth, third / zeroth, fourth / zeroth);
}

function fromDistances(into: TruncatedNormal, a: number, m1: number, m2: number, m3: number, m4: number): void {
  into.information = 1 - (m2 - m1 * m1);
  centre(into, m1, m2, m3, m4);
  into.mean = a + m1;
}

/** Central moments from raw ones; `information` is the caller's, who knows the form that does not cancel. */
function centre(into: TruncatedNormal, m1: number, m2: number, m3: number, m4: number): void {
  into.mean = m1;
  into.thirdMoment = m3 - 3 * m2 * m1 + 2 * m1 * m1 * m1;
  into.fourthMoment = m4 - 4 * m3 * m1 + 6 * m2 * m1 * m1 - 3 * m1 * m1 * m1 * m1;
}

function legendreRule(count: number): { node: number; weight: number }[] {
  return Array.from({ length: count }, (_, i) => {
    let x = Math.cos((Math.PI * (i + 0.75)) / (count + 0.5));
    let slope = 1;
    for (let step = 0; step < 8; step++) {
      let previous = 1;
      let value = x;
      for (let k = 2; k <= count; k++) [previous, value] = [value, ((2 * k - 1) * x * value - (k - 1) * previous) / k];
      slope = (count * (x * value - previous)) / (x * x - 1);
      x -= value / slope;
    }
    return { node: x, weight: 2 / ((1 - x * x) * slope * slope) };
  });
}
