import { combinationPosterior } from './combination-posterior.ts';
import { statedEffects } from './effect-columns.ts';
import { parameterSpace } from './free-parameters.ts';
import type { FitOptions, LatentFit, LatentModel, StopReason } from './latent-model.ts';
import { latentState, type Parameters, setParametersInPlace } from './latent-state.ts';
import { freeCount } from './marginal-slope.ts';
import { maximiseMarginal, type Search } from './maximise-marginal.ts';
import { findModeInPlace } from './posterior-mode.ts';
import { prepareModel } from './prepared-model.ts';
import { dataSpread, isInformative } from './typical-values.ts';

/**
 * Fits a latent Gaussian mixed model: the sds by maximising the (Laplace) marginal likelihood, the effects by their posterior
 * given them. Deterministic: the same model, options and seed give the same numbers to the last bit.
 *
 * Never NaN: with no informative row the fit stands at its priors, an effect no row touches keeps its prior, a fixed effect no row
 * can tell is 0 with sd Infinity.
 *
 * @throws {RangeError} where the model is not consistent in itself (lengths, crossed bounds, columns out of range)
 */
export function fitLatentModel(model: LatentModel, options: FitOptions = {}): LatentFit {
  const prepared = prepareModel(model, (options.fixedEffects ?? 'integrated') === 'integrated');
  const state = latentState(prepared, dataSpread(prepared), options.weakPriors);
  const space = parameterSpace(model, prepared, options);
  const search: Search = {
    state,
    space,
    options,
    isByLog: options.variances === 'integrated' && options.weakPriors !== undefined,
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
  let point = space.start;
  let iterations = 0;
  let stopped: StopReason = hasData ? 'held' : 'no data';
  if (freeCount(space.free) > 0 && hasData) {
    const maximum = maximiseMarginal(search);
    ({ point, iterations, stopped } = maximum);
  }
  const parameters: Parameters = space.at(point, true);
  if (stopped === 'converged' && space.free.terms.some((t) => parameters.sds[t] === 0)) stopped = 'boundary';
  setParametersInPlace(state, parameters);
  const logMarginal = findModeInPlace(state, search.modeTolerance);
  const sd = Object.fromEntries(model.terms.map(({ name }, t) => [name, parameters.sds[t]!]));
  const posterior: LatentFit['posterior'] = (combinations) =>
    combinationPosterior(model, state, parameters.fixed, combinations);
  const ofFixed = posterior(model.fixed.map(({ name }) => ({ fixed: [{ name, weight: 1 }], effects: [] })));
  return {
    sd,
    residualSd: parameters.residualSd,
    logMarginal,
    fixed: Object.fromEntries(
      model.fixed.map(({ name }, k) => [name, { value: ofFixed.mean[k]!, sd: ofFixed.sd[k]! }]),
    ),
    iterations,
    factorisations: state.system.factorisations,
    stopped,
    effects(term) {
      const index = model.terms.findIndex(({ name }) => name === term);
      const block = prepared.blocks[index];
      if (block === undefined) throw new RangeError(`no term ${term}`);
      const from = block.offset < 0 ? 0 : prepared.levels + block.offset;
      return statedEffects(block, state.x.subarray(from, from + block.count)).map((u) => u * parameters.sds[index]!);
    },
    posterior,
  };
}
