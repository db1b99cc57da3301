import type { Observations } from './latent-model.ts';
import { LOG_ROOT_TWO_PI } from './normal-cdf.ts';
import { type TruncatedNormal, truncatedNormalInPlace } from './truncated-normal.ts';

/**
 * What each row says, at a linear predictor η and a residual sd σ: the derivatives of its log-likelihood ℓ. Rows that are
 * known exactly have a weight that does not depend on η; only the others fill `weightSlope`.
 */
export interface RowLikelihood {
  /** Sum of ℓ over the rows. */
  total: number;
  /** dℓ/dη. */
  readonly slope: Float64Array;
  /** −d²ℓ/dη², never negative: ℓ is concave (Prékopa, 1973), which is why Newton's method finds the one mode. */
  readonly weight: Float64Array;
  /** d weight / dη. */
  readonly weightSlope: Float64Array;
  /** Sum over rows of dℓ / d log σ. */
  totalBySpread: number;
  /** d slope / d log σ. */
  readonly slopeBySpread: Float64Array;
  /** d weight / d log σ. */
  readonly weightBySpread: Float64Array;
}

export function emptyRowLikelihood(rows: number): RowLikelihood {
  return {
    total: 0,
    slope: new Float64Array(rows),
    weight: new Float64Array(rows),
    weightSlope: new Float64Array(rows),
    totalBySpread: 0,
    slopeBySpread: new Float64Array(rows),
    weightBySpread: new Float64Array(rows),
  };
}

const cut: TruncatedNormal = { logProbability: 0, mean: 0, information: 0, thirdMoment: 0, fourthMoment: 0 };

/**
 * Fills `into` for all rows. For a censored row ℓ = log of the normal chance of its interval; its derivatives are the
 * cumulants of the normal cut to that interval (the exponential family's identity, with the interval's bounds fixed in y).
 */
export function rowLikelihoodInPlace(
  into: RowLikelihood,
  observations: Observations,
  predictor: Float64Array,
  residualSd: number,
): void {
  const { lower, upper, blur } = observations;
  const logSd = Math.log(residualSd);
  const perSd = 1 / residualSd;
  const perVariance = perSd * perSd;
  let total = 0;
  let totalBySpread = 0;
  for (let i = 0; i < predictor.length; i++) {
    if (lower[i] === upper[i]) {
      const z = (lower[i]! - predictor[i]!) * perSd;
      total -= 0.5 * z * z + logSd + LOG_ROOT_TWO_PI;
      totalBySpread += z * z - 1;
      into.slope[i] = z * perSd;
      into.weight[i] = perVariance;
      into.weightSlope[i] = 0;
      into.slopeBySpread[i] = -2 * z * perSd;
      into.weightBySpread[i] = -2 * perVariance;
    } else {
      const perOwn = blur === undefined || blur[i] === 0 ? perSd : 1 / Math.hypot(residualSd, blur[i]!);
      // d log of the row's own sd / d log σ.
      const share = (perOwn * residualSd) ** 2;
      const perOwnVariance = perOwn * perOwn;
      truncatedNormalInPlace(cut, (lower[i]! - predictor[i]!) * perOwn, (upper[i]! - predictor[i]!) * perOwn);
      const { mean, information, thirdMoment, fourthMoment } = cut;
      const variance = 1 - information;
      total += cut.logProbability;
      totalBySpread += share * (mean * mean - information);
      into.slope[i] = mean * perOwn;
      into.weight[i] = Math.max(0, information) * perOwnVariance;
      into.weightSlope[i] = -thirdMoment * perOwnVariance * perOwn;
      into.slopeBySpread[i] = share * (thirdMoment - 2 * mean * information) * perOwn;
      into.weightBySpread[i] =
        share * (4 * variance - 2 - (fourthMoment - variance * variance + 2 * mean * thirdMoment)) * perOwnVariance;
    }
  }
  into.total = total;
  into.totalBySpread = totalBySpread;
}

/** The log-likelihood alone, for the guard of Newton's step. */
export function totalLogLikelihood(observations: Observations, predictor: Float64Array, residualSd: number): number {
  const { lower, upper, blur } = observations;
  const exact = Math.log(residualSd) + LOG_ROOT_TWO_PI;
  const perSd = 1 / residualSd;
  let total = 0;
  for (let i = 0; i < predictor.length; i++) {
    if (lower[i] === upper[i]) {
      const z = (lower[i]! - predictor[i]!) * perSd;
      total -= 0.5 * z * z + exact;
    } else {
      const perOwn = blur === undefined || blur[i] === 0 ? perSd : 1 / Math.hypot(residualSd, blur[i]!);
      truncatedNormalInPlace(cut, (lower[i]! - predictor[i]!) * perOwn, (upper[i]! - predictor[i]!) * perOwn);
      total += cut.logProbability;
    }
  }
  return total;
}
