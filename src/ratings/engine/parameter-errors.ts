import type { ParameterSpace } from './free-parameters.ts';
import type { LatentFit, LatentModel } from './latent-model.ts';
import type { Parameters } from './latent-state.ts';
import { solveUpperSmall, solveUpperTransposedSmall } from './orthonormal-columns.ts';
import type { PreparedModel } from './prepared-model.ts';
import { solveSmall } from './small-symmetric.ts';

/** Standard error of the sum of parameters with these weights: the root of wᵀ (information)⁻¹ w. */
function errorOf(information: Float64Array, weights: Float64Array): number {
  const solved = solveSmall({ count: weights.length, values: information }, weights);
  return Math.sqrt(weights.reduce((sum, weight, i) => sum + weight * solved[i]!, 0));
}

/** Standard errors of the log sds: 0 where held, Infinity at the boundary and where the search learned nothing. */
export function logSdErrors(
  model: LatentModel,
  { free, start }: ParameterSpace,
  information: Float64Array,
  { sds }: Parameters,
): LatentFit['logSdError'] {
  const errorAt = (index: number): number => {
    if (!(information[index * start.length + index]! > 0)) return Number.POSITIVE_INFINITY;
    return errorOf(
      information,
      start.map((_, i) => (i === index ? 1 : 0)),
    );
  };
  const terms = model.terms.map(({ name }, term) => {
    const index = free.terms.indexOf(term);
    if (index < 0) return [name, 0] as const;
    return [name, sds[term] === 0 ? Number.POSITIVE_INFINITY : errorAt(index)] as const;
  });
  return { terms: Object.fromEntries(terms), residual: free.isResidualFree ? errorAt(free.terms.length) : 0 };
}

/** Maximised fixed effects with sds from the observed information of β together with the variances. */
export function maximisedFixed(
  model: LatentModel,
  { fixed }: PreparedModel,
  parameters: Parameters,
  observed: Float64Array,
): LatentFit['fixed'] {
  const beta = solveUpperSmall(fixed.r, parameters.fixed);
  const count = Math.round(Math.sqrt(observed.length));
  return Object.fromEntries(
    model.fixed.map(({ name }, k) => {
      const at = fixed.kept.indexOf(k);
      if (at < 0) return [name, { value: 0, sd: Number.POSITIVE_INFINITY }];
      const onQ = solveUpperTransposedSmall(
        fixed.r,
        beta.map((_, j) => (j === at ? 1 : 0)),
      );
      const weights = new Float64Array(count);
      weights.set(onQ, count - onQ.length);
      return [name, { value: beta[at]!, sd: errorOf(observed, weights) }];
    }),
  );
}
