import { type CombinationWeights, flattened, isKnown } from './combination-weights.ts';
import type { EffectPosterior } from './effect-posterior.ts';
import type { CombinationPosterior } from './latent-model.ts';

/** Means and variances of combinations, in their order. */
interface CombinationMoments {
  readonly mean: Float64Array;
  readonly variance: Float64Array;
}

/** A combination with the eliminated levels solved away: weights on the columns, ascending, and a variance of its own. */
interface OnColumns {
  /** Each with `from` added. */
  readonly columns: Int32Array;
  readonly from: number;
  readonly weights: Float64Array;
  /** Weights on eliminated levels, which two combinations may share. */
  readonly levels: ReadonlyMap<number, number>;
  readonly mean: number;
  readonly variance: number;
}

/** A combination that others are compared with, solved for once: `product` is the columns' covariance × its weights. */
interface Shared extends OnColumns {
  readonly product: Float64Array;
}

/**
 * Means and variances of combinations under one normal posterior, cᵀ H⁻¹ c by block elimination. A worth is a few effects less
 * the mean of many: Var(a − m) = Var a − 2 Cov(a, m) + Var m, and the product for m is shared by all that use it.
 *
 * @param fixedOnQ coefficients of the maximised fixed effects; empty where they are integrated
 */
export function combinationMoments(
  posterior: EffectPosterior,
  combinations: readonly CombinationWeights[],
  fixedOnQ: Float64Array,
): CombinationMoments {
  const mean = new Float64Array(combinations.length);
  const variance = new Float64Array(combinations.length);
  const made = new Map<CombinationWeights, Shared>();
  const sharedOf = (weights: CombinationWeights): Shared => {
    const known = made.get(weights) ?? share(posterior, onColumns(posterior, flattened(weights), fixedOnQ));
    made.set(weights, known);
    return known;
  };
  combinations.forEach((combination, index) => {
    const own = onColumns(posterior, combination, fixedOnQ);
    mean[index] = own.mean;
    variance[index] = own.variance;
    if (combination.minus === null) return;
    const minus = sharedOf(combination.minus);
    mean[index] = own.mean - minus.mean;
    variance[index] = Math.max(0, own.variance + minus.variance - 2 * covariance(posterior, own, minus));
  });
  return { mean, variance };
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

/** Means and the whole covariance, by rows, of combinations at one set of parameters, fixed effects integrated. */
export function jointCombinations(
  posterior: EffectPosterior,
  combinations: readonly CombinationWeights[],
): { readonly mean: Float64Array; readonly covariance: Float64Array } {
  const own = combinations.map((each) => share(posterior, onColumns(posterior, flattened(each), new Float64Array(0))));
  const together = new Float64Array(own.length ** 2);
  own.forEach((a, i) => {
    together[i * own.length + i] = a.variance;
    for (let j = 0; j < i; j++) {
      together[i * own.length + j] = covariance(posterior, a, own[j]!);
      together[j * own.length + i] = together[i * own.length + j]!;
    }
  });
  return { mean: Float64Array.from(own, ({ mean }) => mean), covariance: together };
}

/** Covariances of combinations with others at one set of parameters: a row for each combination, in their order. */
export function crossCombinations(
  posterior: EffectPosterior,
  combinations: readonly CombinationWeights[],
  others: readonly CombinationWeights[],
): Float64Array[] {
  const none = new Float64Array(0);
  const shared = others.map((each) => share(posterior, onColumns(posterior, flattened(each), none)));
  return combinations.map((each) => {
    const own = onColumns(posterior, flattened(each), none);
    return Float64Array.from(shared, (other) => covariance(posterior, own, other));
  });
}

function onColumns(posterior: EffectPosterior, combination: CombinationWeights, fixedOnQ: Float64Array): OnColumns {
  const { levels } = posterior.prepared;
  const { effects, weights, onFixed } = combination;
  let mean = 0;
  for (let k = 0; k < onFixed.length; k++) mean += onFixed[k]! * fixedOnQ[k]!;
  for (let k = 0; k < effects.length; k++) mean += weights[k]! * posterior.effects[effects[k]!]!;
  if (effects.length === 0 || effects[0]! >= levels) {
    const variance = quadratic(posterior, effects, levels, weights);
    return { columns: effects, from: levels, weights, levels: NO_LEVELS, mean, variance };
  }
  return withoutLevels(posterior, combination, mean);
}

const NO_LEVELS: ReadonlyMap<number, number> = new Map();

/** (e, a) on levels and columns: eᵀ D⁻¹ e + (a − Fᵀ D⁻¹ e)ᵀ S⁻¹ (a − Fᵀ D⁻¹ e), in terms of effects. */
function withoutLevels(posterior: EffectPosterior, { effects, weights }: CombinationWeights, mean: number): OnColumns {
  const { prepared, eliminatedSd, diagonal, cross } = posterior;
  const { levels, crossStart, crossColumn } = prepared;
  const square = eliminatedSd * eliminatedSd;
  const onLevels = new Map<number, number>();
  const sums = new Float64Array(prepared.effects);
  const isMet = new Uint8Array(prepared.effects);
  let ownVariance = 0;
  for (let k = 0; k < effects.length; k++) {
    const effect = effects[k]!;
    const weight = weights[k]!;
    if (effect >= levels) {
      sums[effect - levels] = sums[effect - levels]! + weight;
      isMet[effect - levels] = 1;
      continue;
    }
    onLevels.set(effect, weight);
    const part = (square * weight) / diagonal[effect]!;
    ownVariance += part * weight;
    for (let at = crossStart[effect]!; at < crossStart[effect + 1]!; at++) {
      const column = crossColumn[at]!;
      sums[column] = sums[column]! - part * cross[at]!;
      isMet[column] = 1;
    }
  }
  let count = 0;
  for (let column = 0; column < isMet.length; column++) count += isMet[column]!;
  const columns = new Int32Array(count);
  const onThem = new Float64Array(count);
  for (let column = isMet.length - 1; column >= 0; column--) {
    if (isMet[column] === 0) continue;
    columns[--count] = column;
    onThem[count] = sums[column]!;
  }
  const variance = ownVariance + quadratic(posterior, columns, 0, onThem);
  return { columns, from: 0, weights: onThem, levels: onLevels, mean, variance };
}

function quadratic(
  { prepared, covariance: v }: EffectPosterior,
  columns: Int32Array,
  from: number,
  weights: Float64Array,
): number {
  let sum = 0;
  for (let k = 0; k < columns.length; k++) {
    const row = (columns[k]! - from) * prepared.effects - from;
    let others = 0;
    for (let j = 0; j < k; j++) others += weights[j]! * v[row + columns[j]!]!;
    sum += weights[k]! * (weights[k]! * v[row + columns[k]!]! + 2 * others);
  }
  return Math.max(0, sum);
}

function share({ prepared, covariance: v }: EffectPosterior, own: OnColumns): Shared {
  const product = new Float64Array(prepared.effects);
  own.columns.forEach((column, k) => {
    const row = (column - own.from) * prepared.effects;
    const weight = own.weights[k]!;
    for (let i = 0; i < product.length; i++) product[i] = product[i]! + weight * v[row + i]!;
  });
  return { ...own, product };
}

function covariance({ diagonal, eliminatedSd }: EffectPosterior, own: OnColumns, minus: Shared): number {
  let sum = 0;
  for (let k = 0; k < own.columns.length; k++) sum += own.weights[k]! * minus.product[own.columns[k]! - own.from]!;
  for (const [level, weight] of own.levels) {
    sum += (eliminatedSd * eliminatedSd * weight * (minus.levels.get(level) ?? 0)) / diagonal[level]!;
  }
  return sum;
}
