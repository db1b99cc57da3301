import { isInformative } from './bounds.ts';
import { combinationsAt } from './combination-posterior.ts';
import { type CombinationWeights, combinationTranslator } from './combination-weights.ts';
import { effectPosterior } from './effect-posterior.ts';
import { type ParameterSpace, parameterSpace } from './free-parameters.ts';
import { integrateVariances } from './integrate-variances.ts';
import type { CombinationPosterior, FitOptions, LatentFit, LatentModel, StopReason } from './latent-model.ts';
import { latentState, setParametersInPlace } from './latent-state.ts';
import { covarianceInPlace } from './latent-system.ts';
import { freeCount } from './marginal-slope.ts';
import { type Maximum, maximiseMarginal, type Search } from './maximise-marginal.ts';
import { observedInformation } from './observed-information.ts';
import { solveUpperSmall, solveUpperTransposedSmall } from './orthonormal-columns.ts';
import { findModeInPlace, type ModeTolerance } from './posterior-mode.ts';
import { type PreparedModel, prepareModel } from './prepared-model.ts';
import { solveSmall } from './small-symmetric.ts';
import { thinnedModel } from './thinned-model.ts';
import { dataSpread } from './typical-values.ts';

/** Columns beyond which a fit starts from a thinned model, and spares inverses until it is close. */
const LARGE = 1200;
/** A mode to all digits, and one good enough for variances that are averaged over or known to a twentieth of their sd. */
const FINE: ModeTolerance = { gain: 1e-15, staleGain: 0 };
const COARSE: ModeTolerance = { gain: 1e-8, staleGain: 1e-5 };
/** Levels that the thinned term keeps, or nearly. */
const THINNED_LEVELS = 500;

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
  const isLarge = prepared.columns > LARGE;
  const space = parameterSpace(model, prepared, isLarge ? startedNearby(model, prepared, options) : options);
  const search: Search = {
    state,
    space,
    options,
    isByLog: isIntegrated,
    isLarge,
    modeTolerance: isLarge || isIntegrated ? COARSE : FINE,
    variances: {
      trace: new Float64Array(model.terms.length),
      fixedTrace: 0,
      leverage: new Float64Array(prepared.rows),
    },
  };
  const { lower, upper } = model.observations;
  const hasData = lower.some((bound, i) => isInformative(bound, upper[i]!));
  const isSearched = freeCount(space.free) > 0 && (hasData || options.weakPriors !== undefined);
  const found = isSearched ? maximiseMarginal(search) : notSearched(space);

  const parameters = space.at(found.point, !isIntegrated);
  const isAtZero = space.free.terms.some((t) => parameters.sds[t] === 0);
  const observed = isSearched && space.free.fixed.length > 0 ? observedInformation(search, found) : null;
  if (observed !== null || isAtZero || !found.isSettled) {
    setParametersInPlace(state, parameters);
    findModeInPlace(state, FINE);
    covarianceInPlace(state.system);
  }
  const { logMarginal } = state;
  const atMode = effectPosterior(state);
  const moments: (combinations: readonly CombinationWeights[]) => CombinationPosterior =
    isIntegrated && isSearched
      ? integrateVariances(search, found, atMode)
      : (combinations) => combinationsAt(atMode, combinations, parameters.fixed);

  const translate = combinationTranslator(model, prepared);
  const posterior: LatentFit['posterior'] = (combinations) => moments(combinations.map(translate));
  return {
    sd: Object.fromEntries(model.terms.map(({ name }, t) => [name, parameters.sds[t]!])),
    residualSd: parameters.residualSd,
    logSdError: logSdError(),
    logMarginal,
    fixed: fixedResult(),
    iterations: found.iterations,
    factorisations: state.system.factorisations,
    stopped: stopReason(),
    effects(term) {
      const index = model.terms.findIndex(({ name }) => name === term);
      const block = prepared.blocks[index];
      if (block === undefined) throw new RangeError(`no term ${term}`);
      const from = block.effectFrom < 0 ? 0 : prepared.levels + block.effectFrom;
      return atMode.effects.slice(from, from + block.effects);
    },
    posterior,
  };

  function stopReason(): StopReason {
    if (!hasData) return 'no data';
    return found.stopped === 'converged' && isAtZero ? 'boundary' : found.stopped;
  }

  function logSdError(): LatentFit['logSdError'] {
    const count = found.point.length;
    const { terms: free, isResidualFree } = space.free;
    const errorAt = (index: number): number => {
      const unit = new Float64Array(count);
      unit[index] = 1;
      return Math.sqrt(solveSmall({ count, values: observed ?? found.information }, unit)[index]!);
    };
    const terms = model.terms.map(({ name }, t) => {
      const index = free.indexOf(t);
      const error = index < 0 || !isSearched ? 0 : errorAt(index);
      return [name, index >= 0 && parameters.sds[t] === 0 ? Number.POSITIVE_INFINITY : error] as const;
    });
    const residual = isResidualFree && isSearched ? errorAt(free.length) : 0;
    return { terms: Object.fromEntries(terms), residual };
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

function notSearched({ start: point }: ParameterSpace): Maximum {
  const information = new Float64Array(point.length ** 2);
  return { point, objective: 0, information, iterations: 0, stopped: 'held', isSettled: false };
}

/** Options with a start from the same model with fewer levels of its largest term, where the caller gave none. */
function startedNearby(model: LatentModel, { blocks, eliminated }: PreparedModel, options: FitOptions): FitOptions {
  if (options.start !== undefined) return options;
  let largest = -1;
  blocks.forEach(({ basis, effects }, term) => {
    if (term === eliminated || basis !== null) return;
    if (largest < 0 || effects > blocks[largest]!.effects) largest = term;
  });
  const share = largest < 0 ? 1 : Math.floor(blocks[largest]!.effects / THINNED_LEVELS);
  if (share < 2) return options;
  const { sd, residualSd } = fitLatentModel(thinnedModel(model, largest, share), {
    ...options,
    variances: 'mode',
    tolerance: 0.05,
  });
  return { ...options, start: { sd, residualSd } };
}
