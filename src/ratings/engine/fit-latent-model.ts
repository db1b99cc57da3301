import { combinationsAt } from './combination-posterior.ts';
import { type CombinationWeights, combinationTranslator } from './combination-weights.ts';
import { statedEffects } from './effect-columns.ts';
import { effectPosterior } from './effect-posterior.ts';
import { parameterSpace } from './free-parameters.ts';
import { integrateVariances } from './integrate-variances.ts';
import { inverseFromCholesky } from './inverse.ts';
import type { CombinationPosterior, FitOptions, LatentFit, LatentModel, StopReason } from './latent-model.ts';
import { latentState, setParametersInPlace } from './latent-state.ts';
import { freeCount } from './marginal-slope.ts';
import { maximiseMarginal, type Search, slopeAt } from './maximise-marginal.ts';
import { observedInformation } from './observed-information.ts';
import { solveUpperSmall, solveUpperTransposedSmall } from './orthonormal-columns.ts';
import { findModeInPlace } from './posterior-mode.ts';
import { prepareModel } from './prepared-model.ts';
import { solveSmall } from './small-symmetric.ts';
import { dataSpread, isInformative } from './typical-values.ts';

/**
 * Fits a latent Gaussian mixed model: the sds by maximising the (Laplace) marginal likelihood, the effects by their posterior
 * given them, or averaged over them. Deterministic: the same model, options and seed give the same numbers to the last bit.
 *
 * Never NaN: with no informative row the fit stands at its priors, an effect no row touches keeps its prior, a fixed effect no row
 * can tell is 0 with sd Infinity.
 *
 * @throws {RangeError} where the model is not consistent in itself (lengths, crossed bounds, columns out of range), or variances
 *   are to be integrated without weak priors or with maximised fixed effects
 */
export function fitLatentModel(model: LatentModel, options: FitOptions = {}): LatentFit {
  const isFixedIntegrated = (options.fixedEffects ?? 'integrated') === 'integrated';
  const isIntegrated = options.variances === 'integrated';
  if (isIntegrated && (options.weakPriors === undefined || !isFixedIntegrated)) {
    throw new RangeError('integrating over the variances needs weak priors and integrated fixed effects');
  }
  const prepared = prepareModel(model, isFixedIntegrated);
  const state = latentState(prepared, dataSpread(prepared), options.weakPriors);
  const space = parameterSpace(model, prepared, options);
  const search: Search = {
    state,
    space,
    options,
    isByLog: isIntegrated,
    modeTolerance: 1e-15,
    inverse: new Float64Array(prepared.size * prepared.size),
    variances: {
      trace: new Float64Array(model.terms.length),
      fixedTrace: 0,
      leverage: new Float64Array(prepared.rows),
    },
  };
  const { lower, upper } = model.observations;
  const hasData = lower.some((bound, i) => isInformative(bound, upper[i]!));
  const isSearched = freeCount(space.free) > 0 && (hasData || options.weakPriors !== undefined);
  const found = isSearched ? maximiseMarginal(search) : { point: space.start, iterations: 0, stopped: 'held' as const };

  const parameters = space.at(found.point, !isIntegrated);
  const isAtZero = space.free.terms.some((t) => parameters.sds[t] === 0);
  const observed =
    isSearched && (isIntegrated || space.free.fixed.length > 0)
      ? observedInformation(search, found.point, slopeAt(search, found.point).information)
      : null;
  setParametersInPlace(state, parameters);
  const logMarginal = findModeInPlace(state, search.modeTolerance);
  const x = state.x.slice();
  inverseFromCholesky(search.inverse, state.system.factor, prepared.size);
  const atMode = effectPosterior(state, search.inverse.slice());
  const moments: (combinations: readonly CombinationWeights[]) => CombinationPosterior =
    isIntegrated && observed !== null
      ? integrateVariances(search, found.point, observed)
      : (combinations) => combinationsAt(atMode, combinations, parameters.fixed);

  const translate = combinationTranslator(model, prepared);
  const posterior: LatentFit['posterior'] = (combinations) => moments(combinations.map(translate));
  return {
    sd: Object.fromEntries(model.terms.map(({ name }, t) => [name, parameters.sds[t]!])),
    residualSd: parameters.residualSd,
    logMarginal,
    fixed: fixedResult(),
    iterations: found.iterations,
    factorisations: state.system.factorisations,
    stopped: stopReason(),
    effects(term) {
      const index = model.terms.findIndex(({ name }) => name === term);
      const block = prepared.blocks[index];
      if (block === undefined) throw new RangeError(`no term ${term}`);
      const from = block.offset < 0 ? 0 : prepared.levels + block.offset;
      return statedEffects(block, x.subarray(from, from + block.count)).map((u) => u * parameters.sds[index]!);
    },
    posterior,
  };

  function stopReason(): StopReason {
    if (!hasData) return 'no data';
    return found.stopped === 'converged' && isAtZero ? 'boundary' : found.stopped;
  }

  function fixedResult(): LatentFit['fixed'] {
    const each = model.fixed.map(({ name }) => ({ fixed: [{ name, weight: 1 }], effects: [] }));
    const { mean, sd } = posterior(each);
    if (isFixedIntegrated || observed === null) {
      return Object.fromEntries(model.fixed.map(({ name }, k) => [name, { value: mean[k]!, sd: sd[k]! }]));
    }
    // Maximised: sd from the observed information of β together with the variances.
    const beta = solveUpperSmall(prepared.fixed.r, parameters.fixed);
    return Object.fromEntries(
      model.fixed.map(({ name }, k) => {
        const at = prepared.fixed.kept.indexOf(k);
        if (at < 0) return [name, { value: 0, sd: Number.POSITIVE_INFINITY }];
        const unit = solveUpperTransposedSmall(
          prepared.fixed.r,
          beta.map((_, j) => (j === at ? 1 : 0)),
        );
        const weights = new Float64Array(found.point.length);
        weights.set(unit, found.point.length - unit.length);
        const solved = solveSmall({ count: weights.length, values: observed }, weights);
        return [name, { value: beta[at]!, sd: Math.sqrt(weights.reduce((sum, w, i) => sum + w * solved[i]!, 0)) }];
      }),
    );
  }
}
