import { combinationMoments, isKnown } from './combination-posterior.ts';
import type { CombinationWeights } from './combination-weights.ts';
import { type EffectPosterior, effectPosterior } from './effect-posterior.ts';
import { inverseFromCholesky } from './inverse.ts';
import type { CombinationPosterior } from './latent-model.ts';
import { objectiveAt, type Search } from './maximise-marginal.ts';
import { eigenSmall } from './small-symmetric.ts';

/** How far out each axis is looked at, in sds of the variances' posterior: the outer nodes of the 3-point Gauss–Hermite rule. */
const REACH = Math.sqrt(3);
/** No axis is longer than this in log sd: where the data say nothing, the prior does. */
const LONGEST_SD = 1;
/** Together no more than this many numbers of stored inverses, 64 MB; a larger model works them out again when asked. */
const MOST_STORED = 8e6;

/** One axis of the variances' posterior, looked at on both sides of the mode. */
interface Axis {
  readonly points: readonly [Float64Array, Float64Array];
  /** Share of the axis at the mode and on both sides; they sum to 1. */
  readonly centre: number;
  readonly sides: readonly [number, number];
}

/**
 * The effects' posterior averaged over that of the variances. In log sds, about their mode, along the principal axes of the
 * observed information: on each axis three Gauss–Hermite nodes, reweighted by the true objective there, which takes in its
 * skewness. The axes' contributions add up (an expansion about the mode, as integrated nested Laplace approximation does with
 * its central composite design: Rue, Martino and Chopin, J. R. Statist. Soc. B 71, 2009, section 6.5, here cut to its star):
 *
 *   mean = m₀ + Σ (Eₐ m − m₀),   variance = v₀ + Σ (Eₐ v − v₀) + Σ Varₐ m.
 */
export function integrateVariances(
  search: Search,
  mode: Float64Array,
  observed: Float64Array,
): (combinations: readonly CombinationWeights[]) => CombinationPosterior {
  const axes = axesOf(search, mode, observed);
  const { size } = search.state.prepared;
  const isStored = (1 + 2 * axes.length) * size * size <= MOST_STORED;
  const stored = new Map<Float64Array, EffectPosterior>();
  const posteriorAt = (point: Float64Array): EffectPosterior => {
    const known = stored.get(point);
    if (known !== undefined) return known;
    objectiveAt(search, point);
    const inverse = isStored ? new Float64Array(size * size) : search.inverse;
    inverseFromCholesky(inverse, search.state.system.factor, size);
    const made = effectPosterior(search.state, inverse);
    if (isStored) stored.set(point, made);
    return made;
  };
  const noFixed = new Float64Array(0);

  return (combinations) => {
    const middle = combinationMoments(posteriorAt(mode), combinations, noFixed);
    const mean = middle.mean.slice();
    const variance = middle.variance.slice();
    for (const { points, centre, sides } of axes) {
      const [low, high] = points.map((point) => combinationMoments(posteriorAt(point), combinations, noFixed));
      for (let i = 0; i < mean.length; i++) {
        const toLow = low!.mean[i]! - middle.mean[i]!;
        const toHigh = high!.mean[i]! - middle.mean[i]!;
        const shift = sides[0] * toLow + sides[1] * toHigh;
        mean[i] = mean[i]! + shift;
        variance[i] =
          variance[i]! +
          sides[0] * (low!.variance[i]! + toLow * toLow) +
          sides[1] * (high!.variance[i]! + toHigh * toHigh) +
          (centre - 1) * middle.variance[i]! -
          shift * shift;
      }
    }
    const sd = variance.map((value, i) =>
      // The expansion may undershoot where the axes interact; less than the mode's own variance would claim to know more.
      isKnown(combinations[i]!) ? Math.sqrt(Math.max(value, 0.5 * middle.variance[i]!)) : Number.POSITIVE_INFINITY,
    );
    return { mean, sd };
  };
}

function axesOf(search: Search, mode: Float64Array, observed: Float64Array): Axis[] {
  const atMode = objectiveAt(search, mode).objective;
  const { values, vectors } = eigenSmall({ count: mode.length, values: observed });
  return vectors.map((vector, k) => {
    const sd = Math.min(LONGEST_SD, 1 / Math.sqrt(Math.max(values[k]!, 1e-12)));
    const sides = [-REACH, REACH].map((reach) => {
      const point = mode.map((value, i) =>
        Math.min(search.space.upper[i]!, Math.max(search.space.lower[i]!, value + reach * sd * vector[i]!)),
      );
      const fall = objectiveAt(search, point).objective - atMode;
      // Weight 1/6 of a side where the fall is a normal density's, −3/2.
      return { point, weight: Math.exp(Math.min(0, fall) + 0.5 * REACH * REACH) / 6 };
    });
    const total = 2 / 3 + sides[0]!.weight + sides[1]!.weight;
    return {
      points: [sides[0]!.point, sides[1]!.point],
      centre: 2 / 3 / total,
      sides: [sides[0]!.weight / total, sides[1]!.weight / total],
    };
  });
}
