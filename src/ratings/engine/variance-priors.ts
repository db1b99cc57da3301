import type { WeakPriors } from './latent-model.ts';
import type { FreeParameters } from './marginal-slope.ts';

/** Log density of the free parameters before the data, with its first derivatives and minus its second ones (diagonal). */
interface PriorAt {
  value: number;
  readonly slope: Float64Array;
  readonly curvature: Float64Array;
}

/**
 * Weak priors of the sds at a point (log sds, log σ, β): half-normal for terms, log-normal for the residual, flat for β.
 * With `isByLog` it is the density of the log sds, which integration works in, rather than of the sds, whose mode is
 * reported without it: the two differ by the sds themselves.
 */
export function priorAt(
  point: Float64Array,
  free: FreeParameters,
  priors: WeakPriors | undefined,
  sdScales: readonly number[],
  isByLog: boolean,
): PriorAt {
  const slope = new Float64Array(point.length);
  const curvature = new Float64Array(point.length);
  if (priors === undefined) return { value: 0, slope, curvature };
  let value = 0;
  free.terms.forEach((_, i) => {
    const square = Math.exp(2 * point[i]!) / sdScales[i]! ** 2;
    value -= 0.5 * square;
    slope[i] = -square;
    curvature[i] = 2 * square;
    if (isByLog) {
      value += point[i]!;
      slope[i] = slope[i]! + 1;
    }
  });
  if (free.isResidualFree) {
    const i = free.terms.length;
    const apart = (point[i]! - Math.log(priors.residualMedian)) / priors.residualLogSd;
    value -= 0.5 * apart * apart;
    slope[i] = -apart / priors.residualLogSd;
    curvature[i] = 1 / priors.residualLogSd ** 2;
  }
  return { value, slope, curvature };
}
