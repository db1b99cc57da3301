import type { EffectPrior, LatentFit, LatentModel, LinearCombination } from './engine/latent-model.ts';

/** Net weights of a combination's effects, by term and column. */
type Weights = ReadonlyMap<string, { readonly weight: number; readonly variance: number }>;

/**
 * Standard deviation of combinations before any session was seen, at the fit's own standard deviations of the terms. Of
 * a walk it takes combinations that touch one position a group, as worths do. What many combinations are compared with
 * is worked out once.
 */
export function priorSds(model: LatentModel, fit: LatentFit): (combination: LinearCombination) => number {
  const terms = new Map(model.terms.map((term) => [term.name, term]));
  const compared = new Map<LinearCombination, { readonly weights: Weights; readonly variance: number }>();
  const weightsOf = (combination: LinearCombination): Weights => {
    const weights = new Map<string, { weight: number; variance: number }>();
    for (const { term, column, weight } of combination.effects) {
      const prior = terms.get(term)?.prior;
      if (prior === undefined) continue;
      const key = `${term} ${column}`;
      const before = weights.get(key)?.weight ?? 0;
      weights.set(key, { weight: before + weight, variance: fit.sd[term]! ** 2 * unitVariance(prior, column) });
    }
    return weights;
  };
  const comparedWith = (minus: LinearCombination) => {
    const known = compared.get(minus);
    if (known !== undefined) return known;
    const weights = weightsOf(minus);
    const found = { weights, variance: varianceOf(weights) };
    compared.set(minus, found);
    return found;
  };
  return (combination) => {
    const own = weightsOf(combination);
    if (combination.minus === undefined) return Math.sqrt(varianceOf(own));
    const minus = comparedWith(combination.minus);
    let variance = varianceOf(own) + minus.variance;
    for (const [key, effect] of own) {
      variance -= 2 * effect.weight * (minus.weights.get(key)?.weight ?? 0) * effect.variance;
    }
    // A combination compared with itself leaves rounding and no more.
    return Math.sqrt(Math.max(0, variance));
  };
}

function varianceOf(weights: Weights): number {
  let variance = 0;
  for (const effect of weights.values()) variance += effect.weight ** 2 * effect.variance;
  return variance;
}

/** Prior variance of one effect of a term whose standard deviation is 1: the diagonal of the walk's pseudo-inverse. */
export function unitVariance(prior: EffectPrior, column: number): number {
  if (prior.kind === 'independent') return 1;
  const n = prior.positions;
  // Closed forms of the Green's functions of the circle and of the path (Rue and Held, 2005, ch. 3, for the structures).
  if (prior.kind === 'cyclic-walk') return (n * n - 1) / (12 * n);
  const i = column % n;
  return ((n - 1) * (2 * n - 1)) / (6 * n) - (i * (n - 1 - i)) / n;
}
