import type { LatentState } from './latent-state.ts';
import { factorInPlace, solveSystemInPlace } from './latent-system.ts';
import { allEffectsInPlace, predictorInPlace, transposedProductInPlace } from './linear-predictor.ts';
import { rowLikelihoodInPlace, totalLogLikelihood } from './row-likelihood.ts';

const MAXIMUM_STEPS = 100;
const LOG_TWO_PI = Math.log(2 * Math.PI);

/**
 * Finds the mode of the effects at the state's parameters, from where they stand, by Newton's method with a guard: the
 * log posterior is concave, and a step that does not gain at least a ten-thousandth of what its slope promises is halved
 * (Armijo, 1966), so the search cannot diverge. The factor of the last step is kept while it still serves: with few
 * censored rows two factorisations are enough.
 *
 * @param tolerance of the gain still to be had, in units of log posterior (half of Newton's decrement)
 * @returns Laplace approximation of the log marginal likelihood, exact where no row is censored: log posterior at the mode +
 *   d/2 log 2π − ½ log |H| (Tierney and Kadane, JASA 81, 1986), with flat fixed effects as in restricted maximum likelihood
 */
export function findModeInPlace(state: LatentState, tolerance: number): number {
  const { prepared, system, likelihood, x, effects, predictor, offset, effectScratch, rowScratch } = state;
  const [step, trial, trialEffects] = effectScratch;
  const isLinear = prepared.censored.length === 0;
  let isFactorCurrent = false;
  let isFactorThere = false;
  let before = Number.POSITIVE_INFINITY;
  allEffectsInPlace(effects, system, x);
  predictorInPlace(predictor, system, effects, offset);
  rowLikelihoodInPlace(likelihood, prepared.observations, predictor, state.residualSd);
  let value = likelihood.total - priorPenalty(state, x);
  for (let count = 0; count < MAXIMUM_STEPS; count++) {
    if (!isFactorThere) {
      factorInPlace(system, likelihood.weight);
      isFactorThere = true;
      isFactorCurrent = true;
    }
    let decrement = newtonStepInPlace(state, step);
    if (!isFactorCurrent && (decrement > 0.1 * before || decrement <= 2 * tolerance)) {
      factorInPlace(system, likelihood.weight);
      isFactorCurrent = true;
      decrement = newtonStepInPlace(state, step);
    }
    before = decrement;
    const isLast = decrement <= 2 * tolerance;
    let share = 1;
    let reached = Number.NEGATIVE_INFINITY;
    for (; share > 1e-12; share /= 2) {
      for (let i = 0; i < x.length; i++) trial[i] = x[i]! + share * step[i]!;
      allEffectsInPlace(trialEffects, system, trial);
      predictorInPlace(rowScratch, system, trialEffects, offset);
      reached = totalLogLikelihood(prepared.observations, rowScratch, state.residualSd) - priorPenalty(state, trial);
      if (reached >= value + 1e-4 * share * decrement - 1e-13 * Math.abs(value)) break;
    }
    if (!(share > 1e-12)) break;
    x.set(trial);
    effects.set(trialEffects);
    predictor.set(rowScratch);
    rowLikelihoodInPlace(likelihood, prepared.observations, predictor, state.residualSd);
    value = reached;
    if (isLast) break;
    isFactorCurrent = isLinear;
  }
  state.logMarginal = value - 0.5 * system.logDeterminant + fixedConstant(state);
  return state.logMarginal;
}

/** Newton's step H⁻¹ g into `step`; returns the decrement gᵀ H⁻¹ g. */
function newtonStepInPlace(state: LatentState, step: Float64Array): number {
  const { system, likelihood, x } = state;
  transposedProductInPlace(step, system, likelihood.slope);
  subtractPriorSlope(state, step);
  const slope = step.slice();
  solveSystemInPlace(system, step);
  let decrement = 0;
  for (let i = 0; i < x.length; i++) decrement += slope[i]! * step[i]!;
  return decrement;
}

function subtractPriorSlope({ prepared, system, x, fixedCentre }: LatentState, slope: Float64Array): void {
  const { levels, fixedFrom } = prepared;
  const firstFixed = fixedFrom < 0 ? x.length : levels + fixedFrom;
  for (let i = 0; i < firstFixed; i++) slope[i] = slope[i]! - x[i]!;
  for (let i = firstFixed; i < x.length; i++) {
    slope[i] = slope[i]! - system.fixedPrecision * (x[i]! - fixedCentre[i - firstFixed]!);
  }
}

function priorPenalty({ prepared, system, fixedCentre }: LatentState, x: Float64Array): number {
  const { levels, fixedFrom } = prepared;
  const firstFixed = fixedFrom < 0 ? x.length : levels + fixedFrom;
  let sum = 0;
  for (let i = 0; i < firstFixed; i++) sum += x[i]! * x[i]!;
  for (let i = firstFixed; i < x.length; i++) {
    const apart = x[i]! - fixedCentre[i - firstFixed]!;
    sum += system.fixedPrecision * apart * apart;
  }
  return 0.5 * sum;
}

/** Constants of integrated fixed effects: a flat density of β (not of its coefficients on Q), or the weak prior's. */
function fixedConstant({ prepared, system, hasFixedPrior }: LatentState): number {
  const { fixed, fixedFrom } = prepared;
  if (fixedFrom < 0) return 0;
  if (hasFixedPrior) return 0.5 * fixed.q.length * Math.log(system.fixedPrecision);
  return fixed.r.reduce((sum, row, i) => sum + 0.5 * LOG_TWO_PI - Math.log(Math.abs(row[i]!)), 0);
}
