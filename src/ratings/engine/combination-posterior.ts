import type { CombinationWeights } from './combination-weights.ts';
import type { EffectPosterior } from './effect-posterior.ts';
import type { CombinationPosterior } from './latent-model.ts';

/** A combination at given sds, with the eliminated levels solved away: weights on the columns, and variance of its own. */
interface OnColumns {
  readonly columns: Int32Array;
  readonly weights: Float64Array;
  readonly ownVariance: number;
  /** Weights on eliminated levels, which two combinations may share. */
  readonly levels: ReadonlyMap<number, number>;
  readonly mean: number;
}

/** A combination that others are compared with: solved for once. */
interface Shared extends OnColumns {
  /** S⁻¹ × weights. */
  readonly product: Float64Array;
  readonly variance: number;
}

/**
 * Means and variances of combinations under one normal posterior: cᵀ H⁻¹ c by block elimination. A return is a few effects less
 * the mean of many: Var(a − m) = Var a − 2 Cov(a, m) + Var m, and the product for m is shared by all that use it.
 * `sd` holds variances here, so that they can be averaged; `fixedOnQ` are the maximised fixed effects.
 */
export function combinationMoments(
  posterior: EffectPosterior,
  combinations: readonly CombinationWeights[],
  fixedOnQ: Float64Array,
): { readonly mean: Float64Array; readonly variance: Float64Array } {
  const mean = new Float64Array(combinations.length);
  const variance = new Float64Array(combinations.length);
  const known = new Map<CombinationWeights, Shared>();
  const sharedOf = (weights: CombinationWeights): Shared => {
    const made = known.get(weights) ?? share(posterior, flattened(weights), fixedOnQ);
    known.set(weights, made);
    return made;
  };
  combinations.forEach((combination, index) => {
    const own = onColumns(posterior, combination, fixedOnQ);
    mean[index] = own.mean;
    variance[index] = own.ownVariance + quadratic(posterior, own);
    if (combination.less === null) return;
    const less = sharedOf(combination.less);
    mean[index] = mean[index]! - less.mean;
    variance[index] = variance[index]! + less.variance - 2 * covariance(posterior, own, less);
  });
  return { mean, variance: variance.map((value) => Math.max(0, value)) };
}

/** Means and sds at one set of parameters. */
export function combinationsAt(
  posterior: EffectPosterior,
  combinations: readonly CombinationWeights[],
  fixedOnQ: Float64Array,
): CombinationPosterior {
  const { mean, variance } = combinationMoments(posterior, combinations, fixedOnQ);
  return {
    mean,
    sd: variance.map((value, i) => (isKnown(combinations[i]!) ? Math.sqrt(value) : Number.POSITIVE_INFINITY)),
  };
}

export function isKnown({ isKnown: own, less }: CombinationWeights): boolean {
  return own && (less === null || isKnown(less));
}

/** A combination with its chain of `less` written out. */
function flattened(combination: CombinationWeights): CombinationWeights {
  if (combination.less === null) return combination;
  const rest = flattened(combination.less);
  const sums = new Map<number, number>();
  combination.effects.forEach((effect, k) => {
    sums.set(effect, combination.weights[k]!);
  });
  rest.effects.forEach((effect, k) => {
    sums.set(effect, (sums.get(effect) ?? 0) - rest.weights[k]!);
  });
  return {
    effects: Int32Array.from(sums.keys()),
    weights: Float64Array.from(sums.values()),
    less: null,
    onFixed: combination.onFixed.map((weight, k) => weight - rest.onFixed[k]!),
    isKnown: isKnown(combination),
  };
}

function onColumns(posterior: EffectPosterior, combination: CombinationWeights, fixedOnQ: Float64Array): OnColumns {
  const { prepared, x, scale, eliminatedSd, diagonal, cross } = posterior;
  const { levels, crossStart, crossColumn } = prepared;
  const { effects, weights, onFixed } = combination;
  let mean =
    onFixed.length > 0 && prepared.fixedOffset < 0 ? onFixed.reduce((sum, w, k) => sum + w * fixedOnQ[k]!, 0) : 0;
  let ownVariance = 0;
  const onLevels = new Map<number, number>();
  const sums = new Map<number, number>();
  effects.forEach((effect, k) => {
    const weight = weights[k]! * (effect < levels ? eliminatedSd : scale[effect - levels]!);
    mean += weight * x[effect]!;
    if (effect >= levels) {
      sums.set(effect - levels, (sums.get(effect - levels) ?? 0) + weight);
      return;
    }
    onLevels.set(effect, weight);
    const part = weight / diagonal[effect]!;
    ownVariance += part * weight;
    for (let at = crossStart[effect]!; at < crossStart[effect + 1]!; at++) {
      const column = crossColumn[at]!;
      sums.set(column, (sums.get(column) ?? 0) - part * cross[at]!);
    }
  });
  return {
    columns: Int32Array.from(sums.keys()),
    weights: Float64Array.from(sums.values()),
    ownVariance,
    levels: onLevels,
    mean,
  };
}

function quadratic({ prepared, inverse }: EffectPosterior, { columns, weights }: OnColumns): number {
  let sum = 0;
  for (let k = 0; k < columns.length; k++) {
    const row = columns[k]! * prepared.size;
    const own = weights[k]!;
    let others = 0;
    for (let j = 0; j < k; j++) others += weights[j]! * inverse[row + columns[j]!]!;
    sum += own * (own * inverse[row + columns[k]!]! + 2 * others);
  }
  return sum;
}

function share(posterior: EffectPosterior, combination: CombinationWeights, fixedOnQ: Float64Array): Shared {
  const own = onColumns(posterior, combination, fixedOnQ);
  const { size, columns } = posterior.prepared;
  const product = new Float64Array(columns);
  own.columns.forEach((column, k) => {
    const row = column * size;
    const weight = own.weights[k]!;
    for (let i = 0; i < columns; i++) product[i] = product[i]! + weight * posterior.inverse[row + i]!;
  });
  let variance = own.ownVariance;
  own.columns.forEach((column, k) => {
    variance += own.weights[k]! * product[column]!;
  });
  return { ...own, product, variance };
}

function covariance({ diagonal }: EffectPosterior, own: OnColumns, less: Shared): number {
  let sum = 0;
  own.columns.forEach((column, k) => {
    sum += own.weights[k]! * less.product[column]!;
  });
  for (const [level, weight] of own.levels) sum += (weight * (less.levels.get(level) ?? 0)) / diagonal[level]!;
  return sum;
}
