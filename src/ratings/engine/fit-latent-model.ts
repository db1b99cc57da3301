import { isInformative } from './bounds.ts';
import { combinationsAt, crossCombinations, jointCombinations } from './combination-posterior.ts';
import { type CombinationWeights, combinationTranslator } from './combination-weights.ts';
import { effectPosterior, posteriorHere } from './effect-posterior.ts';
import { type ParameterSpace, parameterSpace } from './free-parameters.ts';
import { integrateVariances } from './integrate-variances.ts';
import type { CombinationPosterior, FitOptions, LatentFit, LatentModel, StopReason } from './latent-model.ts';
import { latentState, setParametersInPlace } from './latent-state.ts';
import { covarianceInPlace } from './latent-system.ts';
import type { Search } from './marginal-search.ts';
import { freeCount } from './marginal-slope.ts';
import { type Maximum, maximiseMarginal } from './maximise-marginal.ts';
import { modeStartOf, startAtModeInPlace } from './mode-start.ts';
import { observedInformation } from './observed-information.ts';
import { logSdErrors, maximisedFixed } from './parameter-errors.ts';
import { findModeInPlace, type ModeTolerance } from './posterior-mode.ts';
import { type PreparedModel, prepareModel } from './prepared-model.ts';
import { subsampledModel } from './subsampled-model.ts';
import { dataSpread } from './typical-values.ts';

/** Columns beyond which a fit starts from a thinned model, and spares inverses until it is close. */
const LARGE = 1200;
/** A mode to all digits, and one good enough for variances that are averaged over or known to a twentieth of their sd. */
const FINE: ModeTolerance = { gain: 1e-15, staleGain: 0 };
const COARSE: ModeTolerance = { gain: 1e-10, staleGain: 1e-7 };
/** Whoever stops this far from the best variances asks for no finer modes. */
const COARSE_FROM = 1e-3;
/** Levels that the thinned term keeps, or nearly. */
const SUBSAMPLED_LEVELS = 500;

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
  if (options.start?.mode !== undefined) startAtModeInPlace(state, model, options.start.mode);
  const isLarge = prepared.columns > LARGE;
  const space = parameterSpace(model, prepared, isLarge ? startedNearby(model, prepared, options) : options);
  const search: Search = {
    state,
    space,
    options,
    isByLog: isIntegrated,
    isLarge,
    modeTolerance: isLarge || isIntegrated || (options.tolerance ?? 0) >= COARSE_FROM ? COARSE : FINE,
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
    findModeInPlace(state, search.modeTolerance);
    covarianceInPlace(state.system);
  } else if (!found.hasCovariance) covarianceInPlace(state.system);
  const { logMarginal } = state;
  const isAveraged = isIntegrated && isSearched;
  // A copy only where the state moves on.
  const atMode = isAveraged ? effectPosterior(state) : posteriorHere(state);
  const mode = modeStartOf(state, model);
  const moments: (combinations: readonly CombinationWeights[]) => CombinationPosterior = isAveraged
    ? integrateVariances(search, found, atMode)
    : (combinations) => combinationsAt(atMode, combinations, parameters.fixed);

  const translate = combinationTranslator(model, prepared);
  const posterior: LatentFit['posterior'] = (combinations) => moments(combinations.map(translate));
  let errors: LatentFit['logSdError'] | null = null;
  let known = observed === null ? null : maximisedFixed(model, prepared, parameters, observed);
  return {
    sd: Object.fromEntries(model.terms.map(({ name }, t) => [name, parameters.sds[t]!])),
    residualSd: parameters.residualSd,
    get logSdError() {
      errors ??= logSdErrors(model, space, observed ?? found.information(), parameters);
      return errors;
    },
    logMarginal,
    get fixed() {
      // Averaged over the variances they cost as much as all worths together, and few ask for them.
      known ??= ofFixed(model, posterior);
      return known;
    },
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
    mode,
    posterior,
    jointAtMode: (combinations) => jointCombinations(atMode, combinations.map(translate)),
    crossAtMode: (combinations, others) =>
      crossCombinations(atMode, combinations.map(translate), others.map(translate)),
  };

  function stopReason(): StopReason {
    if (!hasData) return 'no data';
    return found.stopped === 'converged' && isAtZero ? 'boundary' : found.stopped;
  }
}

/** Fixed effects that are integrated, or held: combinations like any other. */
function ofFixed({ fixed }: LatentModel, posterior: LatentFit['posterior']): LatentFit['fixed'] {
  const { mean, sd } = posterior(fixed.map(({ name }) => ({ fixed: [{ name, weight: 1 }], effects: [] })));
  return Object.fromEntries(fixed.map(({ name }, k) => [name, { value: mean[k]!, sd: sd[k]! }]));
}

function notSearched({ start: point }: ParameterSpace): Maximum {
  const information = new Float64Array(point.length ** 2);
  return {
    point,
    objective: 0,
    information: () => information,
    iterations: 0,
    stopped: 'held',
    isSettled: false,
    hasCovariance: false,
  };
}

/** Options with a start from the same model with fewer levels of its largest term, where the caller gave none. */
function startedNearby(model: LatentModel, { blocks, eliminated }: PreparedModel, options: FitOptions): FitOptions {
  if (options.start !== undefined) return options;
  let largest = -1;
  blocks.forEach(({ basis, effects }, term) => {
    if (term === eliminated || basis !== null) return;
    if (largest < 0 || effects > blocks[largest]!.effects) largest = term;
  });
  const share = largest < 0 ? 1 : Math.floor(blocks[largest]!.effects / SUBSAMPLED_LEVELS);
  if (share < 2) return options;
  const { sd, residualSd } = fitLatentModel(subsampledModel(model, largest, share), {
    ...options,
    variances: 'mode',
    tolerance: 0.1,
  });
  return { ...options, start: { sd, residualSd } };
}
