import { type EffectVariances, exactVariancesInPlace } from './effect-variances.ts';
import type { ParameterSpace } from './free-parameters.ts';
import type { FitOptions, StopReason } from './latent-model.ts';
import { type LatentState, setParametersInPlace } from './latent-state.ts';
import { marginalSlope } from './marginal-slope.ts';
import { findModeInPlace, type ModeTolerance } from './posterior-mode.ts';
import { probedVariancesInPlace } from './probe-variances.ts';
import { solveSmall } from './small-symmetric.ts';
import { priorAt } from './variance-priors.ts';

/** No step changes an sd by more than this factor of e squared: far from the best point the information misleads. */
const LONGEST_STEP = 2;

/** Of a large fit: a twentieth of the variances' own sd change nothing that is published. */
const LARGE_TOLERANCE = 0.05;
/** Of a search for the middle of what is then averaged over. */
const AVERAGED_TOLERANCE = 1e-3;
/** Within this distance the next step is the last but for what the probes blurred. */
const CLOSE = 0.3;

export interface Maximum {
  readonly point: Float64Array;
  /** Log marginal likelihood and log priors there. */
  readonly objective: number;
  /** Minus the second derivatives of the objective there, nearly: positive semidefinite, by rows. */
  readonly information: Float64Array;
  readonly iterations: number;
  readonly stopped: StopReason;
  /** True where the state still stands there, with the effects' covariance in its system. */
  readonly isSettled: boolean;
}

export interface Search {
  readonly state: LatentState;
  readonly space: ParameterSpace;
  readonly options: FitOptions;
  readonly isByLog: boolean;
  readonly modeTolerance: ModeTolerance;
  readonly variances: EffectVariances;
  /** Traces are estimated from random probes until the search is close: an inverse costs two factorisations. */
  readonly isLarge: boolean;
}

/** Objective at a point; the state is left at its mode. */
export function objectiveAt(
  search: Search,
  point: Float64Array,
  tolerance: ModeTolerance = search.modeTolerance,
): { logMarginal: number; objective: number } {
  const { state, variances } = search;
  const narrowed = state.prepared.blocks.map(({ count }, t) => (count === 0 ? 1 : variances.trace[t]! / count));
  setParametersInPlace(state, search.space.at(point), narrowed.includes(0) ? undefined : narrowed);
  const logMarginal = findModeInPlace(state, tolerance);
  const prior = priorAt(point, search.space.free, search.options.weakPriors, search.space.sdScales, search.isByLog);
  return { logMarginal, objective: logMarginal + prior.value };
}

/** Derivatives at the point where the state stands; exact ones leave the effects' covariance in the system. */
export function slopeAt(
  search: Search,
  point: Float64Array,
  isProbed = false,
): { gradient: Float64Array; information: Float64Array } {
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

/**
 * Maximises the log marginal by the variances (and β where it is not integrated): average-information steps (Gilmour, Thompson
 * and Cullis, 1995), corrected along the last step by the secant condition (the update of Broyden, Fletcher, Goldfarb and
 * Shanno, 1970), since with censored rows the information is only near the second derivative. A step that does not gain is
 * halved; an sd that reaches its lower bound and wants to go on is left there.
 */
export function maximiseMarginal(search: Search): Maximum {
  const { space, options } = search;
  const tolerance =
    options.tolerance ?? (search.isLarge ? LARGE_TOLERANCE : search.isByLog ? AVERAGED_TOLERANCE : 1e-6);
  const limit = options.maximumIterations ?? 60;
  let point = space.start.slice();
  let here = objectiveAt(search, point);
  let last: { step: Float64Array; gradient: Float64Array } | null = null;
  let isProbed = search.isLarge;
  for (let iteration = 1; iteration <= limit; iteration++) {
    const { gradient, information } = slopeAt(search, point, isProbed);
    if (last !== null) secantInPlace(information, last.step, subtract(last.gradient, gradient));
    const least = point.map((value, i) => Math.max(space.lower[i]! - value, -LONGEST_STEP));
    const most = point.map((value, i) => Math.min(space.upper[i]! - value, LONGEST_STEP));
    const { step, gain } = guardedDirection(gradient, information, least, most);
    const distance = Math.sqrt(Math.max(0, gain));
    options.progress?.({ iteration, logMarginal: here.logMarginal, distance });
    if (distance <= tolerance && !isProbed) {
      return {
        point,
        objective: here.objective,
        information,
        iterations: iteration,
        stopped: 'converged',
        isSettled: true,
      };
    }
    // Exact traces from here on; a change of kind is no curvature to learn from.
    const wasProbed = isProbed;
    if (distance <= CLOSE) isProbed = false;
    let share = 1;
    let next = point;
    let there = here;
    for (; share > 1e-8; share /= 2) {
      next = point.map((value, i) => Math.min(space.upper[i]!, Math.max(space.lower[i]!, value + share * step[i]!)));
      there = objectiveAt(search, next);
      if (there.objective >= here.objective - (search.isLarge ? 1e-3 : 1e-11 * Math.abs(here.objective))) break;
    }
    if (!(share > 1e-8)) {
      objectiveAt(search, point);
      return {
        point,
        objective: here.objective,
        information,
        iterations: iteration,
        stopped: 'no further gain',
        isSettled: false,
      };
    }
    last = wasProbed === isProbed ? { step: subtract(next, point), gradient } : null;
    point = next;
    here = there;
  }
  const { information } = slopeAt(search, point);
  return {
    point,
    objective: here.objective,
    information,
    iterations: limit,
    stopped: 'iteration limit',
    isSettled: true,
  };
}

/**
 * The step within its bounds, and the gain the whole slope promises. A parameter whose step is cut keeps the cut one, and the
 * others are solved for again with it, so that cutting one does not send the rest astray.
 */
function guardedDirection(
  gradient: Float64Array,
  information: Float64Array,
  least: Float64Array,
  most: Float64Array,
): { step: Float64Array; gain: number } {
  const count = gradient.length;
  const step = new Float64Array(count);
  const isCut = gradient.map((g, i) => ((most[i] === 0 && g >= 0) || (least[i] === 0 && g <= 0) ? 1 : 0));
  let gain = -1;
  for (let round = 0; round <= count; round++) {
    const matrix = information.map((value, k) => {
      const i = Math.floor(k / count);
      const j = k % count;
      return isCut[i] || isCut[j] ? (i === j ? 1 : 0) : value;
    });
    const rhs = gradient.map((g, i) =>
      isCut[i] ? 0 : step.reduce((sum, s, j) => sum - (isCut[j] ? information[i * count + j]! * s : 0), g),
    );
    const solved = solveSmall({ count, values: matrix }, rhs);
    if (gain < 0) gain = dot(solved, rhs);
    let isInside = true;
    for (let i = 0; i < count; i++) {
      if (isCut[i]) continue;
      step[i] = Math.min(most[i]!, Math.max(least[i]!, solved[i]!));
      if (step[i] !== solved[i]) {
        isCut[i] = 1;
        isInside = false;
      }
    }
    if (isInside) break;
  }
  if (dot(step, gradient) > 0) return { step, gain };
  // The cuts have spoilt the direction: each parameter by itself.
  const alone = gradient.map((g, i) => Math.min(most[i]!, Math.max(least[i]!, g / (information[i * count + i]! || 1))));
  return { step: alone, gain };
}

/** Makes the information agree with how the gradient changed along the last step. */
function secantInPlace(information: Float64Array, step: Float64Array, change: Float64Array): void {
  const count = step.length;
  const image = step.map((_, i) => step.reduce((sum, s, j) => sum + information[i * count + j]! * s, 0));
  const curved = dot(step, image);
  const wanted = dot(step, change);
  if (!(curved > 0) || !(wanted > 0.05 * curved) || !(wanted < 20 * curved)) return;
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < count; j++) {
      const at = i * count + j;
      information[at] = information[at]! + (change[i]! * change[j]!) / wanted - (image[i]! * image[j]!) / curved;
    }
  }
}

function dot(a: Float64Array, b: Float64Array): number {
  return a.reduce((sum, value, i) => sum + value * b[i]!, 0);
}

function subtract(a: Float64Array, b: Float64Array): Float64Array {
  return a.map((value, i) => value - b[i]!);
}
