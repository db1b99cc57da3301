import { boundedNewtonStep, secantInPlace } from './bounded-newton-step.ts';
import type { StopReason } from './latent-model.ts';
import { objectiveAt, type Search, slopeAt } from './marginal-search.ts';
import { modeShift } from './mode-shift.ts';

/** No step changes an sd by more than a factor of e²: far from the best point the information misleads. Fixed effects go as far as they must. */
const LONGEST_STEP = 2;

/** Of a large fit: a twentieth of the variances' own sd change nothing that is published. */
const LARGE_TOLERANCE = 0.05;
/** Of a search for the middle of what is then averaged over. */
const AVERAGED_TOLERANCE = 1e-4;
/** Within this distance the next step is the last but for what the probes blurred. */
const CLOSE = 0.3;
/**
 * Along a fall of an sd by more than this, in its logarithm, the objective is nearly linear in the variance, which is next to nothing at
 * its end: no curvature by log sds to learn from. A large fit learns none there, which halves its factors where an sd goes to zero; a
 * small one, which is cheap, keeps to the way on which its published digits were found.
 */
const LONG_FALL = 0.5;

export interface Maximum {
  readonly point: Float64Array;
  /** Log marginal likelihood and log priors there. */
  readonly objective: number;
  /** Minus the second derivatives of the objective there, nearly: positive semidefinite, by rows. To be asked while the state stands there. */
  readonly information: () => Float64Array;
  readonly iterations: number;
  readonly stopped: StopReason;
  /** Whether the state still stands there, and whether the effects' covariance is in its system. */
  readonly isSettled: boolean;
  readonly hasCovariance: boolean;
}

/**
 * Maximises the log marginal by the variances (and β where it is not integrated): average-information steps (Gilmour, Thompson
 * and Cullis, 1995), corrected along the last step by the secant condition (the update of Broyden, Fletcher, Goldfarb and
 * Shanno, 1970), since with censored rows the information is only near the second derivative. A step that does not gain is
 * halved, unless its slope was estimated, which is then made exact; an sd that reaches its lower bound and wants to go on is left there.
 */
export function maximiseMarginal(search: Search): Maximum {
  const { state, space, options } = search;
  const { free } = space;
  const tolerance =
    options.tolerance ?? (search.isLarge ? LARGE_TOLERANCE : search.isByLog ? AVERAGED_TOLERANCE : 1e-6);
  const limit = options.maximumIterations ?? 60;
  let point = space.start.slice();
  let here = objectiveAt(search, point);
  // No finer than the modes: a determinant that is old by a gain g is wrong by up to its root or so. The slope decides where to stop.
  const slack = Math.max(0.5 * Math.sqrt(search.modeTolerance.staleGain), 1e-11 * Math.abs(here.objective));
  let last: { step: Float64Array; gradient: Float64Array } | null = null;
  let isProbed = search.isLarge;
  for (let iteration = 1; iteration <= limit; iteration++) {
    const { gradient, information } = slopeAt(search, point, isProbed);
    // What is made of it later must not depend on the way here.
    const ofPoint = information.slice();
    if (last !== null) secantInPlace(information, last.step, subtract(last.gradient, gradient));
    const longest = point.map((_, i) =>
      i < point.length - free.fixed.length ? LONGEST_STEP : Number.POSITIVE_INFINITY,
    );
    const least = point.map((value, i) => Math.max(space.lower[i]! - value, -longest[i]!));
    const most = point.map((value, i) => Math.min(space.upper[i]! - value, longest[i]!));
    const { step, gain } = boundedNewtonStep(gradient, information, least, most);
    const distance = Math.sqrt(Math.max(0, gain));
    options.progress?.({ iteration, logMarginal: here.logMarginal, distance });
    if (distance <= tolerance && !isProbed) {
      return {
        point,
        objective: here.objective,
        information: () => ofPoint,
        iterations: iteration,
        stopped: 'converged',
        isSettled: true,
        hasCovariance: true,
      };
    }
    // Exact traces from here on; a change of kind is no curvature to learn from.
    const wasProbed = isProbed;
    if (distance <= CLOSE) isProbed = false;
    const x = state.x.slice();
    const shift = modeShift(state, free, step);
    let share = 1;
    let next = point;
    let there = here;
    let isMisled = false;
    for (; share > 1e-8 && !isMisled; share /= 2) {
      next = point.map((value, i) => Math.min(space.upper[i]!, Math.max(space.lower[i]!, value + share * step[i]!)));
      for (let i = 0; i < x.length; i++) state.x[i] = x[i]! + share * shift[i]!;
      there = objectiveAt(search, next);
      if (there.objective >= here.objective - slack) break;
      isMisled = wasProbed;
    }
    if (isMisled) {
      // No shorter step is sure to gain along a slope that was estimated: the true one costs less than to find that out.
      state.x.set(x);
      here = objectiveAt(search, point);
      isProbed = false;
      last = null;
      continue;
    }
    if (!(share > 1e-8)) {
      state.x.set(x);
      objectiveAt(search, point);
      return {
        point,
        objective: here.objective,
        information: () => ofPoint,
        iterations: iteration,
        stopped: 'no further gain',
        isSettled: false,
        hasCovariance: false,
      };
    }
    const moved = subtract(next, point);
    const isLongFall = search.isLarge && free.terms.some((_, i) => moved[i]! < -LONG_FALL);
    last = wasProbed === isProbed && !isLongFall ? { step: moved, gradient } : null;
    point = next;
    here = there;
  }
  // Who limits the search mostly goes on from where it ends, and asks for no slope there.
  let information: Float64Array | null = null;
  return {
    point,
    objective: here.objective,
    information: () => {
      information ??= slopeAt(search, point).information;
      return information;
    },
    iterations: limit,
    stopped: 'iteration limit',
    isSettled: true,
    hasCovariance: false,
  };
}

function subtract(a: Float64Array, b: Float64Array): Float64Array {
  return a.map((value, i) => value - b[i]!);
}
