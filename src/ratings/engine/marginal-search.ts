import { type EffectVariances, exactVariancesInPlace } from './effect-variances.ts';
import type { ParameterSpace } from './free-parameters.ts';
import type { FitOptions } from './latent-model.ts';
import { type LatentState, setParametersInPlace } from './latent-state.ts';
import { type MarginalSlope, marginalSlope } from './marginal-slope.ts';
import { findModeInPlace, type ModeTolerance } from './posterior-mode.ts';
import { probedVariancesInPlace } from './probe-variances.ts';
import { priorAt } from './variance-priors.ts';

/** What a search over the variances works with. */
export interface Search {
  readonly state: LatentState;
  readonly space: ParameterSpace;
  readonly options: FitOptions;
  /** True where the priors are those of the log sds, which are averaged over afterwards. */
  readonly isByLog: boolean;
  readonly modeTolerance: ModeTolerance;
  readonly variances: EffectVariances;
  /** Traces are estimated from random probes until the search is close: an inverse costs two factorisations. */
  readonly isLarge: boolean;
}

/** Objective at a point, its mode looked for from where the effects stand; the state is left there. */
export function objectiveAt(
  search: Search,
  point: Float64Array,
  tolerance: ModeTolerance = search.modeTolerance,
): { logMarginal: number; objective: number } {
  const { state } = search;
  setParametersInPlace(state, search.space.at(point));
  const logMarginal = findModeInPlace(state, tolerance);
  const prior = priorAt(point, search.space.free, search.options.weakPriors, search.space.sdScales, search.isByLog);
  return { logMarginal, objective: logMarginal + prior.value };
}

/** Derivatives at the point where the state stands; exact ones leave the effects' covariance in the system. */
export function slopeAt(search: Search, point: Float64Array, isProbed = false): MarginalSlope {
  const { state, space, options, isByLog, variances } = search;
  if (isProbed) probedVariancesInPlace(variances, state.system, options.seed ?? 1);
  else exactVariancesInPlace(variances, state.system);
  const { gradient, information } = marginalSlope(state, space.free, variances);
  const prior = priorAt(point, space.free, options.weakPriors, space.sdScales, isByLog);
  for (let i = 0; i < point.length; i++) {
    // By log sds, minus the second derivative is the information by variances less twice the slope. Where the prior holds an sd
    // that the data would rather see at zero, this is all the curvature there is.
    const isSd = i < space.free.terms.length;
    if (isByLog && isSd) information[i * point.length + i]! += 2 * Math.max(0, -gradient[i]!);
    gradient[i] = gradient[i]! + prior.slope[i]!;
    information[i * point.length + i] = information[i * point.length + i]! + prior.curvature[i]!;
  }
  return { gradient, information };
}
