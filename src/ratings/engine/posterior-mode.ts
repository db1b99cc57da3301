import type { LatentState } from './latent-state.ts';
import { factorInPlace, solveSystemInPlace } from './latent-system.ts';
import { allEffectsInPlace, predictorInPlace, transposedProductInPlace } from './linear-predictor.ts';
import { rowLikelihoodInPlace, totalLogLikelihood } from './row-likelihood.ts';

const MAXIMUM_STEPS = 100;
const LOG_TWO_PI = Math.log(2 * Math.PI);

/** How nearly a mode is found, in units of log posterior. */
export interface ModeTolerance {
  /** The gain still to be had. */
  readonly gain: number;
  /**
   * The gain since H was factored beyond which it is factored again at the mode: censored rows change their weights as the mode
   * moves. 0 for figures that must not depend on where the search came from.
   */
  readonly staleGain: number;
}

/**
 * Finds the mode of the effects at the state's parameters, from where they stand, by Newton's method with a guard: the
 * log posterior is concave, and a step that does not gain at least a ten-thousandth of what its slope promises is halved
 * (Armijo, 1966), so the search cannot diverge. A factor is kept for as long as its steps still shrink tenfold: with few
 * censored rows one or two factorisations are enough.
 *
 * @returns Laplace approximation of the log marginal likelihood, exact where no row is censored: log posterior at the mode +
 *   d/2 log 2π − ½ log |H| (Tierney and Kadane, JASA 81, 1986), with flat fixed effects as in restricted maximum likelihood
 */
export function findModeInPlace(state: LatentState, tolerance: ModeTolerance): number {
  const { prepared, system, likelihood, x, effects, predictor, offset } = state;
  const isLinear = prepared.censored.length === 0;
  allEffectsInPlace(effects, system, x);
  predictorInPlace(predictor, system, effects, offset);
  rowLikelihoodInPlace(likelihood, prepared.observations, predictor, state.residualSd);
  let value = likelihood.total - priorPenalty(state, x);
  let before = Number.POSITIVE_INFINITY;
  // How far the mode has come since H was factored, in the norm of H: half its square is a gain.
  let travelled: number | null = null;
  for (let count = 0; count < MAXIMUM_STEPS; count++) {
    let decrement = travelled === null ? Number.POSITIVE_INFINITY : newtonStepInPlace(state);
    if (travelled === null || isStale(decrement, before, travelled, tolerance)) {
      factorInPlace(system, likelihood.weight);
      travelled = 0;
      decrement = newtonStepInPlace(state);
    }
    const gained = guardedStepInPlace(state, value, decrement);
    if (gained === null) break;
    value = gained.value;
    if (decrement <= 2 * tolerance.gain) break;
    before = decrement;
    if (!isLinear) travelled += gained.share * Math.sqrt(Math.max(0, decrement));
  }
  state.logMarginal = value - 0.5 * system.logDeterminant + fixedConstant(state);
  return state.logMarginal;
}

/** True where a step made from an old factor shows that it serves no longer. */
function isStale(decrement: number, before: number, travelled: number, { gain, staleGain }: ModeTolerance): boolean {
  return decrement <= 2 * gain ? travelled * travelled > 2 * staleGain : decrement > 0.1 * before;
}

/** Takes the step, or as much of it as gains; null, with nothing changed, where rounding hides any gain. */
function guardedStepInPlace(
  state: LatentState,
  value: number,
  decrement: number,
): { readonly value: number; readonly share: number } | null {
  const { prepared, system, likelihood, x, effects, predictor, offset, effectScratch, rowScratch } = state;
  const [step, trial, trialEffects] = effectScratch;
  for (let share = 1; share > 1e-12; share /= 2) {
    for (let i = 0; i < x.length; i++) trial[i] = x[i]! + share * step[i]!;
    allEffectsInPlace(trialEffects, system, trial);
    predictorInPlace(rowScratch, system, trialEffects, offset);
    const reached =
      totalLogLikelihood(prepared.observations, rowScratch, state.residualSd) - priorPenalty(state, trial);
    if (reached < value + 1e-4 * share * decrement - 1e-13 * Math.abs(value)) continue;
    x.set(trial);
    effects.set(trialEffects);
    predictor.set(rowScratch);
    rowLikelihoodInPlace(likelihood, prepared.observations, predictor, state.residualSd);
    return { value: reached, share };
  }
  return null;
}

/** Newton's step H⁻¹ g into the first scratch; returns the decrement gᵀ H⁻¹ g. */
function newtonStepInPlace(state: LatentState): number {
  const { system, likelihood, x } = state;
  const [step, slope] = state.effectScratch;
  transposedProductInPlace(step, system, likelihood.slope);
  subtractPriorSlope(state, step);
  slope.set(step);
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
