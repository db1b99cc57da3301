import { type CutNormal, cutNormalInPlace } from './cut-normal.ts';
import type { Observations } from './latent-model.ts';
import { LOG_ROOT_TWO_PI } from './normal-cdf.ts';

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

const cut: CutNormal = { logChance: 0, mean: 0, information: 0, thirdMoment: 0, fourthMoment: 0 };

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
  const { lower, upper } = observations;
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
      cutNormalInPlace(cut, (lower[i]! - predictor[i]!) * perSd, (upper[i]! - predictor[i]!) * perSd);
      const { mean, information, thirdMoment, fourthMoment } = cut;
      const variance = 1 - information;
      total += cut.logChance;
      totalBySpread += mean * mean - information;
      into.slope[i] = mean * perSd;
      into.weight[i] = Math.max(0, information) * perVariance;
      into.weightSlope[i] = -thirdMoment * perVariance * perSd;
      into.slopeBySpread[i] = (thirdMoment - 2 * mean * information) * perSd;
      into.weightBySpread[i] =
        (4 * variance - 2 - (fourthMoment - variance * variance + 2 * mean * thirdMoment)) * perVariance;
    }
  }
  into.total = total;
  into.totalBySpread = totalBySpread;
}

/** The log-likelihood alone, for the guard of Newton's step. */
export function totalLogLikelihood(observations: Observations, predictor: Float64Array, residualSd: number): number {
  const { lower, upper } = observations;
  const exact = Math.log(residualSd) + LOG_ROOT_TWO_PI;
  const perSd = 1 / residualSd;
  let total = 0;
  for (let i = 0; i < predictor.length; i++) {
    const z = (lower[i]! - predictor[i]!) * perSd;
    if (lower[i] === upper[i]) {
      total -= 0.5 * z * z + exact;
    } else {
      cutNormalInPlace(cut, z, (upper[i]! - predictor[i]!) * perSd);
      total += cut.logChance;
    }
  }
  return total;
}
