import { combinationMoments } from './combination-posterior.ts';
import { type CombinationWeights, isKnown } from './combination-weights.ts';
import { type EffectPosterior, posteriorHere } from './effect-posterior.ts';
import { OUTER_NODE, OUTER_WEIGHT } from './gauss-hermite.ts';
import type { CombinationPosterior } from './latent-model.ts';
import { covarianceInPlace } from './latent-system.ts';
import { objectiveAt, type Search } from './marginal-search.ts';
import type { Maximum } from './maximise-marginal.ts';
import { modeShift } from './mode-shift.ts';
import type { ModeTolerance } from './posterior-mode.ts';
import { eigenSmall } from './small-symmetric.ts';

/** No side of an axis is longer than this in log sd: where the data say nothing, the prior does. */
const LONGEST_SD = 1;
/** An axis shorter than this, in log sd, changes no sd of an effect by more than a fortieth: the mode stands for it. */
const SHORTEST_SD = 0.1;
/** Objectives are compared at falls of 3/2; covariances are taken there as well, so weights must not be old. */
const ROUGH: ModeTolerance = { gain: 1e-8, staleGain: 1e-5 };
/** A length misjudged by less than this, in its logarithm, is believed; by twice as much, not at all. */
const BELIEVED = 0.25;
/** One side of an axis: its outer node, how long it is, and where the effects lie there. */
interface Side {
  readonly point: Float64Array;
  readonly sd: number;
  readonly x: Float64Array;
}

/**
 * The effects' posterior averaged over that of the variances: in log sds, about their mode, along the principal axes of the
 * information. Each side of an axis is taken as half a normal density whose length is set by how far the objective truly falls
 * there, so that skewness is kept (the split normal of integrated nested Laplace approximation: Martins, Simpson, Lindgren and
 * Rue, Computational Statistics and Data Analysis 67, 2013, section 3). Three Gauss–Hermite nodes an axis; the axes add up:
 *
 *   mean = m₀ + Σ (Eₐ m − m₀),   variance = v₀ + Σ (Eₐ v − v₀) + Σ Varₐ m.
 */
export function integrateVariances(
  search: Search,
  found: Maximum,
  middle: EffectPosterior,
): (combinations: readonly CombinationWeights[]) => CombinationPosterior {
  const noFixed = new Float64Array(0);
  const axes = axesOf(search, found);
  const sides = axes.map((): (Side | null)[] => [null, null]);

  return (combinations) => {
    const there = combinationMoments(middle, combinations, noFixed);
    const mean = there.mean.slice();
    const variance = there.variance.slice();
    axes.forEach((lookAt, axis) => {
      const moments = lookAt.map((look, k) => {
        const known = sides[axis]![k]!;
        const side = known ?? look();
        sides[axis]![k] = side;
        // The first time round the state stands there already: what is wanted is taken before it moves on. Few ask twice, and all the
        // covariances would take more time to keep than to make.
        if (known !== null) returnTo(search, side);
        return { ...combinationMoments(posteriorHere(search.state), combinations, noFixed), sd: side.sd };
      });
      const length = moments.reduce((sum, { sd }) => sum + sd, 0);
      const shift = new Float64Array(mean.length);
      for (const here of moments) {
        // A side is half a density: its node weighs twice what it weighs in a whole one.
        const weight = (2 * OUTER_WEIGHT * here.sd) / length;
        for (let i = 0; i < mean.length; i++) {
          const apart = here.mean[i]! - there.mean[i]!;
          shift[i] = shift[i]! + weight * apart;
          variance[i] = variance[i]! + weight * (here.variance[i]! - there.variance[i]! + apart * apart);
        }
      }
      for (let i = 0; i < mean.length; i++) {
        mean[i] = mean[i]! + shift[i]!;
        variance[i] = variance[i]! - shift[i]! * shift[i]!;
      }
    });
    const sd = variance.map((value, i) =>
      // Where axes interact the sum may undershoot; half the variance at the mode is the least that is believed.
      isKnown(combinations[i]!) ? Math.sqrt(Math.max(value, 0.5 * there.variance[i]!)) : Number.POSITIVE_INFINITY,
    );
    return { mean, sd };
  };
}

/** How to look at both sides of every axis that is long enough to matter. A look leaves the state there, its covariance up to date. */
function axesOf(search: Search, { point: mode, objective, information }: Maximum): (() => Side)[][] {
  const { values, vectors } = eigenSmall({ count: mode.length, values: information() });
  const middle = search.state.x.slice();
  return vectors.flatMap((vector, k) => {
    const sd = Math.min(LONGEST_SD, 1 / Math.sqrt(Math.max(values[k]!, 1e-12)));
    if (sd < SHORTEST_SD) return [];
    const shift = modeShift(search.state, search.space.free, vector);
    const axis = { mode, objective, vector, effectsAt: effectsAlong(middle, shift) };
    return [[() => sideOf(search, axis, -sd), () => sideOf(search, axis, sd)]];
  });
}

/** An axis through the best variances. */
interface Axis {
  readonly mode: Float64Array;
  readonly objective: number;
  readonly vector: Float64Array;
  readonly effectsAt: EffectsAlong;
}

/** Where the effects are likely to lie along an axis. */
interface EffectsAlong {
  readonly lookFromInPlace: (x: Float64Array, reach: number) => void;
  /** Tells where they were found to lie. */
  readonly learn: (x: Float64Array, reach: number) => void;
}

/** By a parabola: through the middle, as they move there, and through the last place that was looked at. */
function effectsAlong(middle: Float64Array, shift: Float64Array): EffectsAlong {
  const bend = new Float64Array(middle.length);
  return {
    lookFromInPlace: (x, reach) => {
      for (let i = 0; i < x.length; i++) x[i] = middle[i]! + reach * (shift[i]! + reach * bend[i]!);
    },
    learn: (x, reach) => {
      for (let i = 0; i < x.length; i++) bend[i] = ((x[i]! - middle[i]!) / reach - shift[i]!) / reach;
    },
  };
}

/**
 * Looks at one side, and once more where the first look shows that its length was misjudged. The second look moves out from the place
 * of the first as the misjudgement grows, so that a length just short of a second look and one just past it give the same.
 */
function sideOf(search: Search, { mode, objective, vector, effectsAt }: Axis, signedSd: number): Side {
  const first = Math.abs(signedSd);
  const { x } = search.state;
  const look = (sd: number): { point: Float64Array; sd: number } => {
    const reach = OUTER_NODE * sd * Math.sign(signedSd);
    const point = mode.map((value, i) =>
      Math.min(search.space.upper[i]!, Math.max(search.space.lower[i]!, value + reach * vector[i]!)),
    );
    effectsAt.lookFromInPlace(x, reach);
    const fall = objective - objectiveAt(search, point, ROUGH).objective;
    effectsAt.learn(x, reach);
    return { point, sd: Math.min(LONGEST_SD, sd * Math.sqrt((0.5 * OUTER_NODE * OUTER_NODE) / Math.max(fall, 0.15))) };
  };
  let seen = look(first);
  const misjudged = Math.log(seen.sd / first);
  const share = Math.min(1, Math.max(0, Math.abs(misjudged) - BELIEVED) / BELIEVED);
  if (share > 0) seen = look(first * Math.exp(share * misjudged));
  covarianceInPlace(search.state.system);
  return { ...seen, x: x.slice() };
}

/** Stands at a side again, from the same start whenever it is asked for. */
function returnTo(search: Search, { point, x }: Side): void {
  const { state } = search;
  state.x.set(x);
  objectiveAt(search, point, ROUGH);
  covarianceInPlace(state.system);
}
